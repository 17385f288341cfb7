/** Pulling a string taut over given edges. */
import type { Vec3 } from '../../vector';
import type { Bend } from './string';

/** The string stops moving below this, mm: what is left in its length is far below a micrometre. */
export const STILL = 1e-4;
const ROUNDS = 40;
/** Halvings of a step that would make the string longer. */
const HALVINGS = 5;
/** Bends nearer than this to a neighbour are left to the sweeps: their pull has no direction, mm. */
const TOGETHER = 1e-6;

/** Eight numbers a bend: its edge's first corner, unit vector and length, its place. */
let tracks = new Float64Array(8 * 64);
/** Three numbers a point: the start, the bends, the end. */
let points = new Float64Array(3 * 66);
/** A bend's slope, its row of the second derivatives (itself, the next), and its step. */
let slopes = new Float64Array(64);
let bendings = new Float64Array(64);
let couplings = new Float64Array(64);
let steps = new Float64Array(64);

/**
 * Slides every bend along its edge until the string is as short as it gets over these edges. The
 * length is convex in where the bends lie, so there is one answer. One by one they are put where the
 * string is straight, with the two neighbours folded into one plane about the edge (Heron); where
 * that creeps, as round many faces, Newton's method moves all of them at once: each is tied to its
 * neighbours alone, so the second derivatives are tridiagonal.
 * Written out in numbers, since it runs some thousand times for one drag.
 * @param slip how far beyond an edge's ends a bend may go, as a part of its length
 */
export function pullTaut(from: Vec3, bends: readonly Bend[], to: Vec3, slip = 0): Bend[] {
  const n = bends.length;
  layTracks(from, bends, to);
  for (let round = 0; round < ROUNDS; round++) {
    const moved = sweep(n, round % 2 === 1, slip);
    // One bend is put right at once.
    if (moved < STILL * 1e-2 || n === 1) break;
    if (newton(n, slip) < STILL) break;
  }
  return bends.map(({ body, edge, part, point }, i) => {
    const reach = tracks[8 * i + 6] as number;
    if (!(reach > 0)) return { body, edge, part, point };
    const p = 3 * i + 3;
    return {
      body,
      edge,
      part: (tracks[8 * i + 7] as number) / reach,
      point: [points[p] as number, points[p + 1] as number, points[p + 2] as number],
    };
  });
}

/** Puts each bend right for its neighbours as they lie; how far the farthest moved, mm. */
function sweep(n: number, isBack: boolean, slip: number): number {
  let moved = 0;
  for (let k = 0; k < n; k++) {
    const i = isBack ? n - 1 - k : k;
    const t = 8 * i;
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
    const s = d0 + d1 > 0 ? (s0 * d1 + s1 * d0) / (d0 + d1) : (s0 + s1) / 2;
    const step = Math.abs(put(i, s, slip));
    if (step > moved) moved = step;
  }
  return moved;
}

/** Puts a bend at a place along its edge, as near as the edge allows; by how much it moved. */
function put(i: number, at: number, slip: number): number {
  const t = 8 * i;
  const reach = tracks[t + 6] as number;
  const s = Math.min((1 + slip) * reach, Math.max(-slip * reach, at));
  const step = s - (tracks[t + 7] as number);
  tracks[t + 7] = s;
  const p = 3 * i + 3;
  points[p] = (tracks[t] as number) + s * (tracks[t + 3] as number);
  points[p + 1] = (tracks[t + 1] as number) + s * (tracks[t + 4] as number);
  points[p + 2] = (tracks[t + 2] as number) + s * (tracks[t + 5] as number);
  return step;
}

function lengthNow(n: number): number {
  let sum = 0;
  for (let p = 3; p <= 3 * n + 3; p += 3) {
    const x = (points[p] as number) - (points[p - 3] as number);
    const y = (points[p + 1] as number) - (points[p - 2] as number);
    const z = (points[p + 2] as number) - (points[p - 1] as number);
    sum += Math.sqrt(x * x + y * y + z * z);
  }
  return sum;
}

/**
 * One step of Newton's method on the bends that are free to move, shortened until the string gets
 * no longer. @returns the largest step it would have liked, mm; Infinity where it made none
 */
function newton(n: number, slip: number): number {
  for (let i = 0; i < n; i++) {
    slopes[i] = 0;
    bendings[i] = 0;
    couplings[i] = 0;
  }
  // Stretch by stretch: bend i − 1 (if any) at its start, bend i (if any) at its end.
  for (let i = 0; i <= n; i++) {
    const p = 3 * i;
    let x = (points[p + 3] as number) - (points[p] as number);
    let y = (points[p + 4] as number) - (points[p + 1] as number);
    let z = (points[p + 5] as number) - (points[p + 2] as number);
    const far = Math.sqrt(x * x + y * y + z * z);
    if (far < TOGETHER) {
      if (i > 0) bendings[i - 1] = Infinity;
      if (i < n) bendings[i] = Infinity;
      continue;
    }
    x /= far;
    y /= far;
    z /= far;
    const t = 8 * i;
    let before = 0;
    if (i > 0) {
      before =
        x * (tracks[t - 5] as number) +
        y * (tracks[t - 4] as number) +
        z * (tracks[t - 3] as number);
      slopes[i - 1] = (slopes[i - 1] as number) - before;
      bendings[i - 1] = (bendings[i - 1] as number) + (1 - before * before) / far;
    }
    if (i === n) continue;
    const ux = tracks[t + 3] as number;
    const uy = tracks[t + 4] as number;
    const uz = tracks[t + 5] as number;
    const after = x * ux + y * uy + z * uz;
    slopes[i] = (slopes[i] as number) + after;
    bendings[i] = (bendings[i] as number) + (1 - after * after) / far;
    if (i > 0) {
      const turn =
        ux * (tracks[t - 5] as number) +
        uy * (tracks[t - 4] as number) +
        uz * (tracks[t - 3] as number);
      couplings[i - 1] = -(turn - before * after) / far;
    }
  }
  // Held: without a length, with a neighbour in the same place, or at an end and pulled on.
  for (let i = 0; i < n; i++) {
    const t = 8 * i;
    const reach = tracks[t + 6] as number;
    const s = tracks[t + 7] as number;
    const g = slopes[i] as number;
    const isHeld =
      !(reach > 0) ||
      !((bendings[i] as number) > 1e-12 && (bendings[i] as number) < Infinity) ||
      (s <= -slip * reach && g >= 0) ||
      (s >= (1 + slip) * reach && g <= 0);
    if (!isHeld) continue;
    slopes[i] = 0;
    bendings[i] = 1;
    couplings[i] = 0;
    if (i > 0) couplings[i - 1] = 0;
  }
  // Forward elimination and back again (Thomas).
  for (let i = 1; i < n; i++) {
    const k = (couplings[i - 1] as number) / (bendings[i - 1] as number);
    bendings[i] = (bendings[i] as number) - k * (couplings[i - 1] as number);
    slopes[i] = (slopes[i] as number) - k * (slopes[i - 1] as number);
  }
  let most = 0;
  for (let i = n - 1; i >= 0; i--) {
    const next = i + 1 < n ? (couplings[i] as number) * (steps[i + 1] as number) : 0;
    const step = (-(slopes[i] as number) - next) / (bendings[i] as number);
    if (!Number.isFinite(step)) return Infinity;
    steps[i] = step;
    if (Math.abs(step) > most) most = Math.abs(step);
  }
  if (most < STILL) return most;
  const before = lengthNow(n);
  for (let i = 0; i < n; i++) slopes[i] = tracks[8 * i + 7] as number;
  for (let k = 1, halving = 0; halving <= HALVINGS; halving++, k /= 2) {
    for (let i = 0; i < n; i++) put(i, (slopes[i] as number) + k * (steps[i] as number), slip);
    if (lengthNow(n) <= before) return most;
  }
  for (let i = 0; i < n; i++) put(i, slopes[i] as number, slip);
  return Infinity;
}

function layTracks(from: Vec3, bends: readonly Bend[], to: Vec3): void {
  const n = bends.length;
  if (tracks.length < 8 * n) {
    tracks = new Float64Array(16 * n);
    points = new Float64Array(6 * n + 6);
    slopes = new Float64Array(2 * n);
    bendings = new Float64Array(2 * n);
    couplings = new Float64Array(2 * n);
    steps = new Float64Array(2 * n);
  }
  points.set(from, 0);
  points.set(to, 3 * n + 3);
  for (let i = 0; i < n; i++) {
    const { body, edge, part, point } = bends[i] as Bend;
    const c = body.corners;
    const a = 3 * (body.edges[2 * edge] as number);
    const b = 3 * (body.edges[2 * edge + 1] as number);
    const t = 8 * i;
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
