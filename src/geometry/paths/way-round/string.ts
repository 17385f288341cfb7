/** A string between two points over the edges of bodies, and pulling it taut. */
import { distance, dot, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { pullTaut, STILL } from './pull-taut';

export interface Bend {
  body: Body;
  /** Number of the edge in its body. */
  edge: number;
  /** From the edge's first corner to its second, 0 to 1; outside only for a string let slip. */
  part: number;
  point: Vec3;
}

export function cornerOf(body: Body, corner: number): Vec3 {
  const c = body.corners;
  return [c[3 * corner] as number, c[3 * corner + 1] as number, c[3 * corner + 2] as number];
}

export function edgeOf(body: Body, edge: number): [Vec3, Vec3] {
  return [
    cornerOf(body, body.edges[2 * edge] as number),
    cornerOf(body, body.edges[2 * edge + 1] as number),
  ];
}

export function outwardAt({ body, edge }: Bend): Vec3 {
  const o = body.outward;
  return [o[3 * edge] as number, o[3 * edge + 1] as number, o[3 * edge + 2] as number];
}

export function stringLength(from: Vec3, bends: readonly Bend[], to: Vec3): number {
  let sum = 0;
  let last = from;
  for (const { point } of bends) {
    sum += distance(last, point);
    last = point;
  }
  return sum + distance(last, to);
}

/** The way the string pulls at a bend: the sum of the unit vectors to its neighbours. */
export function pullAt(before: Vec3, at: Vec3, after: Vec3): Vec3 {
  const p = sub(before, at);
  const q = sub(after, at);
  const a = Math.sqrt(dot(p, p)) || 1;
  const b = Math.sqrt(dot(q, q)) || 1;
  return [p[0] / a + q[0] / b, p[1] / a + q[1] / b, p[2] / a + q[2] / b];
}

/**
 * Takes out the bends at which the string would rise off its body, and those two in one place, and
 * pulls the rest taut again.
 * @param letGo takes out all bends that meet in one place: at a corner the string may belong over an
 * edge that is not among them
 */
export function dropIdle(from: Vec3, bends: readonly Bend[], to: Vec3, letGo = false): Bend[] {
  let taut = pullTaut(from, bends, to);
  for (;;) {
    const kept: Bend[] = [];
    for (let i = 0; i < taut.length; i++) {
      const bend = taut[i] as Bend;
      if (i > 0 && distance((taut[i - 1] as Bend).point, bend.point) < STILL) continue;
      if (letGo && i + 1 < taut.length && distance((taut[i + 1] as Bend).point, bend.point) < STILL)
        continue;
      // Where edges meet in a corner, bends lie in one place and what is between them has no
      // direction: the string pulls towards the next places off it.
      const before = offPlace(from, taut, to, i, -1);
      const after = offPlace(from, taut, to, i, 1);
      if (dot(pullAt(before, bend.point, after), outwardAt(bend)) <= RISE) kept.push(bend);
    }
    if (kept.length === taut.length) return taut;
    taut = pullTaut(from, kept, to);
  }
}

/** A pull off the body below this is rounding. */
const RISE = 1e-9;

/** The nearest point of the string, one way or the other, that is not in the place of a bend. */
function offPlace(from: Vec3, bends: readonly Bend[], to: Vec3, at: number, step: 1 | -1): Vec3 {
  const { point } = bends[at] as Bend;
  for (let i = at + step; i >= 0 && i < bends.length; i += step) {
    const other = (bends[i] as Bend).point;
    if (distance(other, point) >= STILL) return other;
  }
  return step < 0 ? from : to;
}
