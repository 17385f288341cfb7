import type { SeatImage } from '../../../geometry';

/** One octave of the fan: where its rays end. */
export interface FanRay {
  octaveHz: number;
  /** Distance of its ring from the head, px. */
  radius: number;
  /** What the ears go by in this octave. */
  cue: 'time' | 'level';
  onDeg: number | null;
  offDeg: number | null;
}

export interface FanSize {
  /** From the head's middle to the outer arc, px. */
  outer: number;
  /** Radius of the head. */
  head: number;
}

/** Larger than this it only takes room, px. */
const MOST_OUTER = 216;

/** The head and the outer arc of a fan so many pixels wide, `edge` of them for labels either side. */
export function fanSize(width: number, edge: number): FanSize {
  const outer = Math.max(60, Math.min(MOST_OUTER, width / 2 - edge));
  return { outer, head: Math.max(8, Math.min(22, outer * 0.11)) };
}

/**
 * Each octave on a ring of its own, low ones near the head, so that octaves which seem to come from
 * one direction still stand apart.
 */
export function fanRays({ octavesHz, on, off }: SeatImage, { outer, head }: FanSize): FanRay[] {
  const first = head * 2;
  const last = outer - 8;
  const step = octavesHz.length > 1 ? (last - first) / (octavesHz.length - 1) : 0;
  return octavesHz.map((octaveHz, i) => {
    const onDeg = on[i]?.lateralDeg ?? null;
    const offDeg = off[i]?.lateralDeg ?? null;
    return {
      octaveHz,
      radius: first + i * step,
      cue: on[i]?.cue ?? 'level',
      onDeg,
      offDeg,
    };
  });
}

/** Where an angle stands on a ring, the head at the origin, straight ahead up the page. */
export function onRing(deg: number, radius: number): { x: number; y: number } {
  const angle = (deg * Math.PI) / 180;
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

/** Directions nearer to one another than this share one mark, degrees. */
const APART_DEG = 7;

/** Speakers by direction, those in nearly the same one together, from left to right. */
export function gatherDirections<T extends { deg: number; side: string }>(
  all: readonly T[],
): T[][] {
  const groups: T[][] = [];
  for (const one of [...all].sort((a, b) => a.deg - b.deg)) {
    const group = groups.find(
      ([first]) => first && first.side === one.side && one.deg - first.deg < APART_DEG,
    );
    if (group) group.push(one);
    else groups.push([one]);
  }
  return groups;
}
