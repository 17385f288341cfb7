/** A string between two points over the edges of bodies, and pulling it taut. */
import { along, distance, dot, sub, type Vec3 } from '../../vector';
import type { Body } from './body';

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

/** The string stops moving below this, mm. */
const STILL = 1e-5;
const SWEEPS = 120;

/**
 * Slides every bend along its edge until the string is as short as it gets over these edges. The
 * length is convex in where the bends lie, so there is one answer; each step is exact: seen along
 * the edge, the two neighbours fold into one plane, where the string is straight (Heron).
 * @param slip how far beyond an edge's ends a bend may go, as a part of its length
 */
export function pullTaut(from: Vec3, bends: readonly Bend[], to: Vec3, slip = 0): Bend[] {
  const n = bends.length;
  const tracks = bends.map(({ body, edge }) => {
    const [a, b] = edgeOf(body, edge);
    const reach = distance(a, b);
    const d = sub(b, a);
    return { a, reach, unit: [d[0] / reach, d[1] / reach, d[2] / reach] as Vec3 };
  });
  const points = bends.map((bend) => bend.point);
  const parts = bends.map((bend) => bend.part);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let moved = 0;
    for (let k = 0; k < n; k++) {
      // There and back, so that neither end is favoured.
      const i = sweep % 2 ? n - 1 - k : k;
      const { a, reach, unit } = tracks[i] as (typeof tracks)[number];
      if (!(reach > 0)) continue;
      const before = sub(i === 0 ? from : (points[i - 1] as Vec3), a);
      const after = sub(i === n - 1 ? to : (points[i + 1] as Vec3), a);
      const s0 = dot(before, unit);
      const s1 = dot(after, unit);
      const d0 = Math.sqrt(Math.max(0, dot(before, before) - s0 * s0));
      const d1 = Math.sqrt(Math.max(0, dot(after, after) - s1 * s1));
      let s = d0 + d1 > 0 ? (s0 * d1 + s1 * d0) / (d0 + d1) : (s0 + s1) / 2;
      s = Math.min((1 + slip) * reach, Math.max(-slip * reach, s));
      moved = Math.max(moved, Math.abs(s - (parts[i] as number) * reach));
      parts[i] = s / reach;
      points[i] = along(a, unit, s);
    }
    if (moved < STILL) break;
  }
  return bends.map((bend, i) => ({
    ...bend,
    part: parts[i] as number,
    point: points[i] as Vec3,
  }));
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
 */
export function dropIdle(from: Vec3, bends: readonly Bend[], to: Vec3): Bend[] {
  let taut = pullTaut(from, bends, to);
  for (;;) {
    const kept = taut.filter((bend, i) => {
      const before = i === 0 ? from : (taut[i - 1] as Bend).point;
      const after = i === taut.length - 1 ? to : (taut[i + 1] as Bend).point;
      if (distance(before, bend.point) < STILL && i > 0) return false;
      return dot(pullAt(before, bend.point, after), outwardAt(bend)) <= 1e-9;
    });
    if (kept.length === taut.length) return taut;
    taut = pullTaut(from, kept, to);
  }
}
