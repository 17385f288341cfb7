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

/** Numbers a bend: its edge's first corner, unit vector and length, its place. */
export const TRACK = 8;
export let tracks = new Float64Array(TRACK * 64);
/** Three numbers a point: the start, the bends, the end. */
export let points = new Float64Array(3 * 66);
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
  layTracks(from, bends, to);
  pullTracks(bends.length, slip);
  return bends.map((bend, i) => bendOnTrack(bend, i));
}

/** Pulls the string that lies on the first `n` tracks. */
export function pullTracks(n: number, slip: number): void {
  for (let round = 0; round < ROUNDS; round++) {
    const moved = sweep(n, round % 2 === 1, slip);
    // One bend is put right at once.
    if (moved < STILL * 1e-2 || n === 1) break;
    if (newton(n, slip) < STILL) break;
  }
}

/** A bend where its track has it. */
export function bendOnTrack({ body, edge, part, point }: Bend, i: number): Bend {
  const reach = tracks[TRACK * i + 6] as number;
  if (!(reach > 0)) return { body, edge, part, point };
  const p = 3 * i + 3;
  return {
    body,
    edge,
    part: (tracks[TRACK * i + 7] as number) / reach,
    point: [points[p] as number, points[p + 1] as number, points[p + 2] as number],
  };
}

/** Puts each bend right for its neighbours as they lie; how far the farthest moved, mm. */
function sweep(n: number, isBack: boolean, slip: number): number {
  // Locals: a loop reads them faster than what the module may have changed meanwhile.
  const [track, at] = [tracks, points];
  let moved = 0;
  for (let k = 0; k < n; k++) {
    const i = isBack ? n - 1 - k : k;
    const t = TRACK * i;
    const reach = track[t + 6] as number;
    if (!(reach > 0)) continue;
    const ax = track[t] as number;
    const ay = track[t + 1] as number;
    const az = track[t + 2] as number;
    const ux = track[t + 3] as number;
    const uy = track[t + 4] as number;
    const uz = track[t + 5] as number;
    const p = 3 * i;
    let x = (at[p] as number) - ax;
    let y = (at[p + 1] as number) - ay;
    let z = (at[p + 2] as number) - az;
    const s0 = x * ux + y * uy + z * uz;
    const d0 = Math.sqrt(Math.max(0, x * x + y * y + z * z - s0 * s0));
    x = (at[p + 6] as number) - ax;
    y = (at[p + 7] as number) - ay;
    z = (at[p + 8] as number) - az;
    const s1 = x * ux + y * uy + z * uz;
    const d1 = Math.sqrt(Math.max(0, x * x + y * y + z * z - s1 * s1));
    const straight = d0 + d1 > 0 ? (s0 * d1 + s1 * d0) / (d0 + d1) : (s0 + s1) / 2;
    // As near as the edge allows.
    const s = Math.min((1 + slip) * reach, Math.max(-slip * reach, straight));
    const step = Math.abs(s - (track[t + 7] as number));
    track[t + 7] = s;
    at[p + 3] = ax + s * ux;
    at[p + 4] = ay + s * uy;
    at[p + 5] = az + s * uz;
    if (step > moved) moved = step;
  }
  return moved;
}

/** Puts the bends a part of their steps from where `starts` says they were. */
function putAll(n: number, starts: Float64Array, part: number, slip: number): void {
  const [track, at, step] = [tracks, points, steps];
  for (let i = 0; i < n; i++) {
    const t = TRACK * i;
    const reach = track[t + 6] as number;
    const there = (starts[i] as number) + part * (step[i] as number);
    const s = Math.min((1 + slip) * reach, Math.max(-slip * reach, there));
    track[t + 7] = s;
    const p = 3 * i + 3;
    at[p] = (track[t] as number) + s * (track[t + 3] as number);
    at[p + 1] = (track[t + 1] as number) + s * (track[t + 4] as number);
    at[p + 2] = (track[t + 2] as number) + s * (track[t + 5] as number);
  }
}

function lengthNow(n: number): number {
  const at = points;
  let sum = 0;
  for (let p = 3; p <= 3 * n + 3; p += 3) {
    const x = (at[p] as number) - (at[p - 3] as number);
    const y = (at[p + 1] as number) - (at[p - 2] as number);
    const z = (at[p + 2] as number) - (at[p - 1] as number);
    sum += Math.sqrt(x * x + y * y + z * z);
  }
  return sum;
}

/**
 * One step of Newton's method on the bends that are free to move, shortened until the string gets
 * no longer. @returns the largest step it would have liked, mm; Infinity where it made none
 */
function newton(n: number, slip: number): number {
  const [track, at, slope, bending, coupling, step] = [
    tracks,
    points,
    slopes,
    bendings,
    couplings,
    steps,
  ];
  for (let i = 0; i < n; i++) {
    slope[i] = 0;
    bending[i] = 0;
    coupling[i] = 0;
  }
  let length = 0;
  // Stretch by stretch: bend i − 1 (if any) at its start, bend i (if any) at its end.
  for (let i = 0; i <= n; i++) {
    const p = 3 * i;
    let x = (at[p + 3] as number) - (at[p] as number);
    let y = (at[p + 4] as number) - (at[p + 1] as number);
    let z = (at[p + 5] as number) - (at[p + 2] as number);
    const far = Math.sqrt(x * x + y * y + z * z);
    length += far;
    if (far < TOGETHER) {
      if (i > 0) bending[i - 1] = Infinity;
      if (i < n) bending[i] = Infinity;
      continue;
    }
    x /= far;
    y /= far;
    z /= far;
    const t = TRACK * i;
    let before = 0;
    if (i > 0) {
      before =
        x * (track[t - 5] as number) + y * (track[t - 4] as number) + z * (track[t - 3] as number);
      slope[i - 1] = (slope[i - 1] as number) - before;
      bending[i - 1] = (bending[i - 1] as number) + (1 - before * before) / far;
    }
    if (i === n) continue;
    const ux = track[t + 3] as number;
    const uy = track[t + 4] as number;
    const uz = track[t + 5] as number;
    const after = x * ux + y * uy + z * uz;
    slope[i] = (slope[i] as number) + after;
    bending[i] = (bending[i] as number) + (1 - after * after) / far;
    if (i > 0) {
      const turn =
        ux * (track[t - 5] as number) +
        uy * (track[t - 4] as number) +
        uz * (track[t - 3] as number);
      coupling[i - 1] = -(turn - before * after) / far;
    }
  }
  // Held: without a length, with a neighbour in the same place, or at an end and pulled on.
  for (let i = 0; i < n; i++) {
    const t = TRACK * i;
    const reach = track[t + 6] as number;
    const s = track[t + 7] as number;
    const g = slope[i] as number;
    const isHeld =
      !(reach > 0) ||
      !((bending[i] as number) > 1e-12 && (bending[i] as number) < Infinity) ||
      (s <= -slip * reach && g >= 0) ||
      (s >= (1 + slip) * reach && g <= 0);
    if (!isHeld) continue;
    slope[i] = 0;
    bending[i] = 1;
    coupling[i] = 0;
    if (i > 0) coupling[i - 1] = 0;
  }
  // Forward elimination and back again (Thomas).
  for (let i = 1; i < n; i++) {
    const k = (coupling[i - 1] as number) / (bending[i - 1] as number);
    bending[i] = (bending[i] as number) - k * (coupling[i - 1] as number);
    slope[i] = (slope[i] as number) - k * (slope[i - 1] as number);
  }
  let most = 0;
  for (let i = n - 1; i >= 0; i--) {
    const next = i + 1 < n ? (coupling[i] as number) * (step[i + 1] as number) : 0;
    const here = (-(slope[i] as number) - next) / (bending[i] as number);
    if (!Number.isFinite(here)) return Infinity;
    step[i] = here;
    if (Math.abs(here) > most) most = Math.abs(here);
  }
  if (most < STILL) return most;
  for (let i = 0; i < n; i++) slope[i] = track[TRACK * i + 7] as number;
  for (let k = 1, halving = 0; halving <= HALVINGS; halving++, k /= 2) {
    putAll(n, slope, k, slip);
    if (lengthNow(n) <= length) return most;
  }
  putAll(n, slope, 0, slip);
  return Infinity;
}

/** Lays a string's edges and points where {@link pullTracks} finds them. */
export function layTracks(from: Vec3, bends: readonly Bend[], to: Vec3): void {
  const n = bends.length;
  if (tracks.length < TRACK * n) {
    tracks = new Float64Array(2 * TRACK * n);
    points = new Float64Array(6 * n + 6);
    slopes = new Float64Array(2 * n);
    bendings = new Float64Array(2 * n);
    couplings = new Float64Array(2 * n);
    steps = new Float64Array(2 * n);
  }
  const [track, at] = [tracks, points];
  at[0] = from[0];
  at[1] = from[1];
  at[2] = from[2];
  for (let i = 0; i < n; i++) {
    const { body, edge, part, point } = bends[i] as Bend;
    const c = body.corners;
    const a = 3 * (body.edges[2 * edge] as number);
    const b = 3 * (body.edges[2 * edge + 1] as number);
    const t = TRACK * i;
    const ax = c[a] as number;
    const ay = c[a + 1] as number;
    const az = c[a + 2] as number;
    const x = (c[b] as number) - ax;
    const y = (c[b + 1] as number) - ay;
    const z = (c[b + 2] as number) - az;
    const reach = Math.sqrt(x * x + y * y + z * z);
    track[t] = ax;
    track[t + 1] = ay;
    track[t + 2] = az;
    track[t + 3] = x / reach;
    track[t + 4] = y / reach;
    track[t + 5] = z / reach;
    track[t + 6] = reach;
    track[t + 7] = part * reach;
    const p = 3 * i + 3;
    at[p] = point[0];
    at[p + 1] = point[1];
    at[p + 2] = point[2];
  }
  const end = 3 * n + 3;
  at[end] = to[0];
  at[end + 1] = to[1];
  at[end + 2] = to[2];
}
