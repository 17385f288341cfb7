/**
 * The image as a fan before the head: a ray for each octave in the head's own level plane, whole
 * with the channels' delays and gains and dashed without, and an arc with a tick every 10°.
 */
import { radians, type Seat, type SeatImage, type Vec3 } from '../../geometry';
import type { Stroke } from '../meshes/ink';
import { type OctaveGroup, octaveGroups } from './octave-groups';

/** How far before the head the arc lies, mm: about where a wheel or a dash is. */
const ARC = 700;
const RAY_FROM = 150;
const TICK = 10;
const LONG_TICK = 30;

/** Seen by the listener, the fan lies on the dash as a scale with pins: level it would be a line. */
const DASH = { arc: 900, below: 215, on: 80, off: -60 } as const;

export type FanView = 'above' | 'own eyes';

export interface FanLabel {
  kind: 'on' | 'off' | 'degrees';
  group?: OctaveGroup;
  deg: number;
  at: Vec3;
  /** What the label points away from. */
  from: Vec3;
  /** Farther out the same way. */
  also: readonly Vec3[];
}

export interface Fan {
  strokes: Stroke[];
  labels: FanLabel[];
}

/**
 * @param faded the image of an earlier place, drawn pale until the new one is there
 */
export function imageFan(image: SeatImage, seat: Seat, view: FanView, faded: boolean): Fan {
  const own = view === 'own eyes';
  const radius = own ? DASH.arc : ARC;
  const height = own ? seat.eye[2] - DASH.below : seat.head[2];
  const [cos, sin] = [Math.cos(radians(seat.facingDeg)), Math.sin(radians(seat.facingDeg))];
  /** Degrees to the right of straight ahead, mm from the head, mm above the fan. */
  const at = (deg: number, far: number, up = 0): Vec3 => {
    const [ahead, right] = [far * Math.cos(radians(deg)), far * Math.sin(radians(deg))];
    return [
      seat.head[0] - cos * ahead + sin * right,
      seat.head[1] + sin * ahead + cos * right,
      height + up,
    ];
  };
  const fade = faded ? 0.4 : 1;
  const sets = [
    { kind: 'off', bands: image.off },
    { kind: 'on', bands: image.on },
  ] as const;
  const widest = Math.max(
    ...sets.flatMap(({ bands }) => bands.map(({ lateralDeg }) => Math.abs(lateralDeg ?? 0))),
  );
  const reach = Math.min(90, Math.max(LONG_TICK, Math.ceil(widest / LONG_TICK) * LONG_TICK));
  const strokes = scaleStrokes(at, radius, reach, own, fade);
  const labels: FanLabel[] = [];
  for (const { kind, bands } of sets) {
    bands.forEach(({ lateralDeg }, i) => {
      if (lateralDeg === null) return;
      const low = 1 - i / Math.max(1, bands.length - 1);
      strokes.push({
        ...(own
          ? { start: at(lateralDeg, radius), end: at(lateralDeg, radius, DASH[kind]) }
          : { start: at(lateralDeg, RAY_FROM), end: at(lateralDeg, radius) }),
        tone: kind === 'on' ? 'ink' : 'quiet-ink',
        // The lower the octave, the broader the pen.
        width: (kind === 'on' ? 1.1 : 0.9) + 1.3 * low,
        strength: fade * (kind === 'on' ? 0.95 : 0.8),
        dash: kind === 'on' ? 0 : 5,
      });
    });
    for (const group of octaveGroups(bands)) {
      const { deg } = group;
      labels.push({
        kind,
        group,
        deg,
        at: own ? at(deg, radius, DASH[kind]) : at(deg, radius + 40),
        from: own ? at(deg, radius) : seat.head,
        also: [1, 2, 3, 4].map((n) =>
          own
            ? at(deg, radius, DASH[kind] + Math.sign(DASH[kind]) * 34 * n)
            : at(deg, radius + 40 + 65 * n),
        ),
      });
    }
  }
  for (const deg of [...new Set([-reach, 0, reach])]) {
    labels.push({
      kind: 'degrees',
      deg,
      at: own ? at(deg, radius, -18) : at(deg, radius - 20),
      from: at(deg, own ? radius : radius + 40),
      also: [],
    });
  }
  return { strokes: [...strokes.map(halo), ...strokes], labels };
}

/** Paper left free round a stroke, so that it reads on a dark floor as well. */
const halo = ({ dash: _, ...stroke }: Stroke): Stroke => ({
  ...stroke,
  tone: 'paper',
  width: stroke.width + 2.6,
  strength: 0.6 * (stroke.strength ?? 1),
});

function scaleStrokes(
  at: (deg: number, far: number, up?: number) => Vec3,
  radius: number,
  reach: number,
  own: boolean,
  fade: number,
): Stroke[] {
  const pen = { tone: 'ink', width: 1.1, strength: 0.8 * fade } as const;
  const strokes: Stroke[] = [];
  const step = 3;
  for (let deg = -reach; deg < reach; deg += step) {
    strokes.push({ start: at(deg, radius), end: at(deg + step, radius), blunt: true, ...pen });
  }
  for (let deg = -reach; deg <= reach; deg += TICK) {
    const size = deg % LONG_TICK === 0 ? 36 : 18;
    const end = own ? at(deg, radius, -size / 2) : at(deg, radius + size);
    strokes.push({ start: at(deg, radius), end, ...pen });
  }
  return strokes;
}
