/**
 * The colours of painted maps: cividis, dark blue to yellow, lightness rising evenly, told apart
 * alike by people who do not see red and green (Nuñez, Anderton & Renslow, "Optimizing colormaps
 * with consideration for color vision deficiency", PLoS ONE 13(7), 2018, e0199239).
 *
 * Our own table, an approximation: ten colours of the published map, a ninth apart (from memory),
 * and between them straight lines in CIELAB, where equal steps look about equally large.
 */
const NINTHS = [
  [0, 32, 77],
  [0, 51, 111],
  [57, 72, 107],
  [87, 92, 109],
  [112, 113, 115],
  [138, 135, 121],
  [166, 157, 117],
  [196, 181, 108],
  [228, 207, 91],
  [255, 234, 70],
] as const;

export type Rgb = readonly [red: number, green: number, blue: number];

/** Entries of the table. */
const COUNT = 256;

/** White of daylight D65 (CIE 15), and sRGB's primaries (IEC 61966-2-1). */
const WHITE = [0.95047, 1, 1.08883] as const;

/** sRGB bytes, three for each of 256 colours from the lowest value to the highest. */
export const CIVIDIS: Uint8Array = table();

/** The colour at a share of the way from the lowest value to the highest, sRGB bytes. */
export function cividisAt(share: number): Rgb {
  const entry = Math.round(Math.min(1, Math.max(0, share)) * (COUNT - 1));
  return [CIVIDIS[3 * entry], CIVIDIS[3 * entry + 1], CIVIDIS[3 * entry + 2]] as unknown as Rgb;
}

function table(): Uint8Array {
  const labs = NINTHS.map(toLab);
  const bytes = new Uint8Array(3 * COUNT);
  for (let k = 0; k < COUNT; k++) {
    const place = (k / (COUNT - 1)) * (labs.length - 1);
    const i = Math.min(labs.length - 2, Math.floor(place));
    const [a, b] = [labs[i] as Lab, labs[i + 1] as Lab];
    const t = place - i;
    bytes.set(fromLab(a.map((from, c) => from + ((b[c] as number) - from) * t) as Lab), 3 * k);
  }
  return bytes;
}

type Lab = [number, number, number];

/** CIELAB (by daylight D65) of an sRGB colour: lightness L* first, 0 to 100 (CIE 15). */
export function toLab([red, green, blue]: Rgb): Lab {
  const [r, g, b] = [red, green, blue].map((byte) => {
    const c = byte / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as Lab;
  const [x, y, z] = [
    0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
    0.2126729 * r + 0.7151522 * g + 0.072175 * b,
    0.0193339 * r + 0.119192 * g + 0.9503041 * b,
  ].map((v, i) => {
    const t = v / (WHITE[i] as number);
    return t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27) * (t / 116) + 16 / 116;
  }) as Lab;
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function fromLab([l, a, b]: Lab): Lab {
  const fy = (l + 16) / 116;
  const [x, y, z] = [fy + a / 500, fy, fy - b / 200].map((f, i) => {
    const t = f ** 3 > 216 / 24389 ? f ** 3 : (116 * f - 16) / (24389 / 27);
    return t * (WHITE[i] as number);
  }) as Lab;
  return [
    3.2404542 * x - 1.5371385 * y - 0.4985314 * z,
    -0.969266 * x + 1.8760108 * y + 0.041556 * z,
    0.0556434 * x - 0.2040259 * y + 1.0572252 * z,
  ].map((c) => {
    const k = Math.min(1, Math.max(0, c));
    return Math.round(255 * (k <= 0.0031308 ? 12.92 * k : 1.055 * k ** (1 / 2.4) - 0.055));
  }) as Lab;
}
