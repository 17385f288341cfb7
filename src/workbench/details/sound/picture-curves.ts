/** The responses as lines to draw: level against the axis over the logarithm of frequency. */
import { measuredDirectivity, type OffAxisResponse } from '../../../geometry';

/** In units of the drawing. */
export const PICTURE = {
  width: 600,
  height: 220,
  left: 40,
  right: 48,
  top: 10,
  bottom: 26,
} as const;

export interface Curve {
  offAxisDeg: number;
  /** As `points` of a polyline. */
  points: string;
  /** Where its label stands, so that none covers another. */
  labelY: number;
}

export interface PictureCurves {
  curves: Curve[];
  xAt: (hz: number) => number;
  yAt: (db: number) => number;
  frequencies: { hz: number; label: string | null }[];
  levels: number[];
}

/** As many as a line of this width can show. */
const STEPS = 200;
const LABEL_HEIGHT = 14;
/** Lower than this is a notch, not a slope, dB: drawn cut off. */
const LOWEST_DB = -40;

/** `null` where the responses do not make a directivity yet (no axis, nothing in common). */
export function curvesOf(
  responses: readonly OffAxisResponse[],
  bandHz: readonly [number, number] | undefined,
): PictureCurves | null {
  const answer = measuredDirectivity(responses);
  if (!answer.ok) return null;
  const { anglesDeg, rangeHz, levelDbAt } = answer.directivity;
  const [from, to] = [
    Math.min(rangeHz[0], bandHz?.[0] ?? Infinity),
    Math.max(rangeHz[1], bandHz?.[1] ?? 0),
  ];
  const { width, height, left, right, top, bottom } = PICTURE;
  const xAt = (hz: number) =>
    left + (Math.log(hz / from) / Math.log(to / from)) * (width - left - right);

  const values = anglesDeg.map((angle) =>
    Array.from({ length: STEPS + 1 }, (_, i) => {
      const hz = Math.min(rangeHz[1], rangeHz[0] * (rangeHz[1] / rangeHz[0]) ** (i / STEPS));
      return { hz, db: Math.max(LOWEST_DB, levelDbAt(angle, hz) ?? LOWEST_DB) };
    }),
  );
  const all = values.flat().map(({ db }) => db);
  const high = Math.max(0, Math.ceil(Math.max(...all) / 5) * 5);
  const low = Math.min(high - 10, Math.floor(Math.min(...all) / 5) * 5);
  const yAt = (db: number) => top + ((high - db) / (high - low)) * (height - top - bottom);
  const step = high - low > 25 ? 10 : 5;
  const levels: number[] = [];
  for (let db = Math.floor(high / step) * step; db >= low; db -= step) levels.push(db);

  const curves = anglesDeg.map((offAxisDeg, a): Curve => {
    const points = values[a] as { hz: number; db: number }[];
    return {
      offAxisDeg,
      points: points.map(({ hz, db }) => `${xAt(hz).toFixed(1)},${yAt(db).toFixed(1)}`).join(' '),
      labelY: yAt(points.at(-1)?.db ?? 0),
    };
  });
  return {
    curves: apart(curves, height - bottom),
    xAt,
    yAt,
    frequencies: decades(from, to),
    levels,
  };
}

/** Labels from the top down, each moved below the one before; pushed up again from the bottom. */
function apart(curves: readonly Curve[], lowest: number): Curve[] {
  const order = [...curves].sort((a, b) => a.labelY - b.labelY);
  let last = -Infinity;
  const down = order.map((curve) => {
    last = Math.max(curve.labelY, last + LABEL_HEIGHT);
    return { ...curve, labelY: last };
  });
  let next = lowest + LABEL_HEIGHT;
  for (const curve of [...down].reverse()) {
    next = Math.min(curve.labelY, next - LABEL_HEIGHT);
    curve.labelY = next;
  }
  return down;
}

/** 1, 2 and 5 of every decade, with words at each. */
function decades(from: number, to: number): { hz: number; label: string | null }[] {
  const marks: { hz: number; label: string | null }[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.log10(to); power++) {
    for (const digit of [1, 2, 5]) {
      const hz = digit * 10 ** power;
      if (hz < from || hz > to) continue;
      marks.push({ hz, label: hz >= 1000 ? `${hz / 1000}k` : String(hz) });
    }
  }
  return marks;
}
