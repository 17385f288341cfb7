/**
 * What bodies leave in the half planes hung on a straight line: there the string over everything is
 * the rim of a convex hull. Shared lists, as in lay-edges.ts.
 */
import type { Body } from './body';
import { type Frame, type Placed, SHEETS } from './frame';
import { chosen, laid, layEdges, layNone, longer, sectors } from './lay-edges';
import { makeRoom, met, rim, walked, walkRim } from './rim-walk';

/** What comes this near the line touches it, mm: the string bends over it, if by nothing. */
const TOUCH = 1e-6;
/** The half planes' directions. */
const STEP = (2 * Math.PI) / SHEETS;
const COS = Float64Array.from({ length: SHEETS }, (_, k) => Math.cos(k * STEP));
const SIN = Float64Array.from({ length: SHEETS }, (_, k) => Math.sin(k * STEP));
const heads = new Int32Array(SHEETS);

/** Four numbers a place on a rim: along the line, height, part of the edge, edge. */
let rims = new Float64Array(4 * 4096);
let someRims = 0;
/** Where each half plane's rim begins in `rims`, and the end of the last; how long a string over it is. */
let starts = new Int32Array((SHEETS + 1) * 64);
let lengths = new Float64Array((SHEETS + 1) * 64);
let someSheets = 0;

/** Forgets what earlier questions placed: their frames must not be asked again. */
export function placeNone(): void {
  layNone();
  someRims = 0;
  someSheets = 0;
}

/**
 * A body's rims in the half planes round a frame's line, found once. Each edge is met only by those
 * between its two corners, seen along the line: far fewer than all.
 */
export function placeIn(frame: Frame, body: Body): Placed {
  for (let k = 0; k < frame.placed.length; k++) {
    const known = frame.placed[k] as Placed;
    if (known.body === body) return known;
  }
  const { corners, first, last } = layEdges(frame, body);
  const placed: Placed = { body, corners, first, last, sheets: someSheets };
  frame.placed.push(placed);
  meetEdges(placed);
  keepRims(frame.reach);
  return placed;
}

/** Puts what the half planes meet of a body's edges into the lists: `heads` are the last of each. */
function meetEdges({ body: { edges }, corners, first, last }: Placed): void {
  const [at, sector, picked] = [laid, sectors, chosen];
  heads.fill(-1);
  let some = 0;
  let lists = makeRoom(SHEETS);
  for (let k = first; k < last; k++) {
    const e = picked[k] as number;
    const i = edges[2 * e] as number;
    const j = edges[2 * e + 1] as number;
    const s = sector[i] as number;
    const t = sector[j] as number;
    if (s === t) continue;
    const ci = corners + 3 * i;
    const cj = corners + 3 * j;
    const yi = at[ci + 1] as number;
    const zi = at[ci + 2] as number;
    const yj = at[cj + 1] as number;
    const zj = at[cj + 2] as number;
    // Seen along the line an edge spans less than half a turn.
    const swept = yi * zj - zi * yj;
    const dy = yj - yi;
    const dz = zj - zi;
    // Through the line itself: any sheet meets it there.
    const isThrough = yi * yj + zi * zj <= 0 && swept * swept < TOUCH * TOUCH * (dy * dy + dz * dz);
    const start = swept >= 0 ? s : t;
    const turns = isThrough ? SHEETS : (t - s) * (swept >= 0 ? 1 : -1);
    lists = makeRoom(some + SHEETS);
    for (let turn = turns < 0 ? turns + SHEETS : turns, m = start; turn > 0; turn--) {
      m = m + 1 === SHEETS ? 0 : m + 1;
      const c = COS[m] as number;
      const d = SIN[m] as number;
      const p = zi * c - yi * d;
      const q = zj * c - yj * d;
      const part = p === q ? 0 : Math.min(1, Math.max(0, p / (p - q)));
      const h = (yi * c + zi * d) * (1 - part) + (yj * c + zj * d) * part;
      if (!(h > -TOUCH)) continue;
      lists.x[some] = (at[ci] as number) * (1 - part) + (at[cj] as number) * part;
      lists.h[some] = Math.max(TOUCH, h);
      lists.part[some] = part;
      lists.edge[some] = e;
      lists.next[some] = heads[m] as number;
      heads[m] = some;
      some += 1;
    }
  }
}

/** Walks over what each half plane met, and keeps what the string lies on. */
function keepRims(reach: number): void {
  starts = longer(starts, someSheets + SHEETS + 1);
  lengths = longer(lengths, someSheets + SHEETS + 1);
  let some = 0;
  for (let k = 0; k < SHEETS; k++) {
    starts[someSheets + k] = someRims + some;
    lengths[someSheets + k] = walkRim(reach, heads[k] as number, some);
    some += walked;
  }
  starts[someSheets + SHEETS] = someRims + some;
  someSheets += SHEETS + 1;
  rims = longer(rims, 4 * (someRims + some));
  const [to, order] = [rims, rim];
  const { x, h, part, edge } = met;
  for (let i = 0, r = 4 * someRims; i < some; i++, r += 4) {
    const m = order[i] as number;
    to[r] = x[m] as number;
    to[r + 1] = h[m] as number;
    to[r + 2] = part[m] as number;
    to[r + 3] = edge[m] as number;
  }
  someRims += some;
}

/** How long the shortest string over a body is in any of the half planes. */
export function shortestIn(frame: Frame, body: Body): number {
  const { sheets } = placeIn(frame, body);
  let least = Infinity;
  for (let k = 0; k < SHEETS; k++) least = Math.min(least, lengths[sheets + k] as number);
  return least;
}

/** How long a string over the bodies is in each half plane: written over by the next question. */
export function rimLengths(frame: Frame, placed: readonly Placed[]): Float64Array {
  const [only] = placed;
  for (let k = 0; k < SHEETS; k++)
    around[k] =
      only && placed.length === 1
        ? (lengths[only.sheets + k] as number)
        : walkRim(frame.reach, gather(placed, k), 0);
  return around;
}
const around = new Float64Array(SHEETS);

/** Walks over what the string over the bodies bends over in one half plane. */
export const walkSheet = (frame: Frame, placed: readonly Placed[], sheet: number): number =>
  walkRim(frame.reach, gather(placed, sheet), 0);

/** The corner of all hulls is a corner of the hull of one: lists what bodies' rims have in a sheet. */
function gather(placed: readonly Placed[], sheet: number): number {
  let some = 0;
  const from = rims;
  for (let b = 0; b < placed.length; b++) {
    const at = (placed[b] as Placed).sheets + sheet;
    const first = starts[at] as number;
    const end = starts[at + 1] as number;
    const { x, h, part, body, edge, next } = makeRoom(some + end - first);
    for (let r = 4 * first; r < 4 * end; r += 4) {
      x[some] = from[r] as number;
      h[some] = from[r + 1] as number;
      part[some] = from[r + 2] as number;
      body[some] = b;
      edge[some] = from[r + 3] as number;
      next[some] = some - 1;
      some += 1;
    }
  }
  return some - 1;
}
