/** A string between two points over the edges of bodies, and pulling it taut. */
import { distance, dot, sub, type Vec3 } from '../../vector';
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

/** The string stops moving below this, mm: what is left in its length is far below a micrometre. */
const STILL = 1e-4;
const SWEEPS = 80;

/** Nine numbers a bend: its edge's first corner, unit vector and length, its place, a spare. */
let tracks = new Float64Array(9 * 64);
/** Three numbers a point: the start, the bends, the end. */
let points = new Float64Array(3 * 66);

/**
 * Slides every bend along its edge until the string is as short as it gets over these edges. The
 * length is convex in where the bends lie, so there is one answer; each step is exact: seen along
 * the edge, the two neighbours fold into one plane, where the string is straight (Heron).
 * Written out in numbers, since it runs some thousand times for one drag.
 * @param slip how far beyond an edge's ends a bend may go, as a part of its length
 */
export function pullTaut(from: Vec3, bends: readonly Bend[], to: Vec3, slip = 0): Bend[] {
  const n = bends.length;
  layTracks(from, bends, to);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let moved = 0;
    for (let k = 0; k < n; k++) {
      // There and back, so that neither end is favoured.
      const i = sweep % 2 ? n - 1 - k : k;
      const t = 9 * i;
      const reach = tracks[t + 6] as number;
      if (!(reach > 0)) continue;
      const ax = tracks[t] as number;
      const ay = tracks[t + 1] as number;
      const az = tracks[t + 2] as number;
      const ux = tracks[t + 3] as number;
      const uy = tracks[t + 4] as number;
      const uz = tracks[t + 5] as number;
      const p = 3 * i;
      let x = (points[p] as number) - ax;
      let y = (points[p + 1] as number) - ay;
      let z = (points[p + 2] as number) - az;
      const s0 = x * ux + y * uy + z * uz;
      const d0 = Math.sqrt(Math.max(0, x * x + y * y + z * z - s0 * s0));
      x = (points[p + 6] as number) - ax;
      y = (points[p + 7] as number) - ay;
      z = (points[p + 8] as number) - az;
      const s1 = x * ux + y * uy + z * uz;
      const d1 = Math.sqrt(Math.max(0, x * x + y * y + z * z - s1 * s1));
      let s = d0 + d1 > 0 ? (s0 * d1 + s1 * d0) / (d0 + d1) : (s0 + s1) / 2;
      s = Math.min((1 + slip) * reach, Math.max(-slip * reach, s));
      const step = Math.abs(s - (tracks[t + 7] as number));
      if (step > moved) moved = step;
      tracks[t + 7] = s;
      points[p + 3] = ax + s * ux;
      points[p + 4] = ay + s * uy;
      points[p + 5] = az + s * uz;
    }
    if (moved < STILL) break;
  }
  return bends.map(({ body, edge, part, point }, i) => {
    const reach = tracks[9 * i + 6] as number;
    if (!(reach > 0)) return { body, edge, part, point };
    const p = 3 * i + 3;
    return {
      body,
      edge,
      part: (tracks[9 * i + 7] as number) / reach,
      point: [points[p] as number, points[p + 1] as number, points[p + 2] as number],
    };
  });
}

function layTracks(from: Vec3, bends: readonly Bend[], to: Vec3): void {
  const n = bends.length;
  if (tracks.length < 9 * n) {
    tracks = new Float64Array(18 * n);
    points = new Float64Array(6 * n + 6);
  }
  points.set(from, 0);
  points.set(to, 3 * n + 3);
  for (let i = 0; i < n; i++) {
    const { body, edge, part, point } = bends[i] as Bend;
    const c = body.corners;
    const a = 3 * (body.edges[2 * edge] as number);
    const b = 3 * (body.edges[2 * edge + 1] as number);
    const t = 9 * i;
    let square = 0;
    for (let k = 0; k < 3; k++) {
      const d = (c[b + k] as number) - (c[a + k] as number);
      tracks[t + k] = c[a + k] as number;
      tracks[t + 3 + k] = d;
      square += d * d;
    }
    const reach = Math.sqrt(square);
    for (let k = 3; k < 6; k++) tracks[t + k] = (tracks[t + k] as number) / reach;
    tracks[t + 6] = reach;
    tracks[t + 7] = part * reach;
    points.set(point, 3 * i + 3);
  }
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
