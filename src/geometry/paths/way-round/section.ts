/**
 * Cuts through bodies by a sheet hanging on the straight line: a half plane, or one that turns about
 * the line along its way. In the sheet the string over everything is the rim of a convex hull.
 */
import { cross, direction, distance, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { facingEdges } from './facing';
import { makeRoom, met, rim, walked, walkRim } from './rim-walk';
import type { Sheet } from './sheet-along';
import type { Bend } from './string';

/** How many half planes hang on a line. */
export const SHEETS = 16;

/** The straight line, two directions square to it, and what of the bodies is known as seen along it. */
export interface Frame {
  from: Vec3;
  to: Vec3;
  along: Vec3;
  u: Vec3;
  v: Vec3;
  reach: number;
  placed: Placed[];
}

/** A body's corners as seen along a frame's line, and its rims in the half planes round that. */
export interface Placed {
  body: Body;
  /** Where its corners begin in `laid`: along the line and two across it, of `chosen` edges alone. */
  corners: number;
  /** Where its edges that a string may bend over begin in `chosen`, and end. */
  first: number;
  last: number;
  /** Where its half planes begin in `starts` and `lengths`. */
  sheets: number;
}

export function frameOf(from: Vec3, to: Vec3): Frame | null {
  const way = direction(sub(to, from));
  if (!way) return null;
  const start: Vec3 = Math.abs(way[2]) < 0.8 ? [0, 0, 1] : [0, 1, 0];
  const u = direction(cross(start, way)) as Vec3;
  const reach = distance(from, to);
  return { from, to, along: way, u, v: cross(way, u), reach, placed: [] };
}

/** What comes this near the line touches it, mm: the string bends over it, if by nothing. */
const TOUCH = 1e-6;
/** The half planes' directions, and the tangents that part an eighth of a turn in two. */
const STEP = (2 * Math.PI) / SHEETS;
const COS = Float64Array.from({ length: SHEETS }, (_, k) => Math.cos(k * STEP));
const SIN = Float64Array.from({ length: SHEETS }, (_, k) => Math.sin(k * STEP));
const TAN = Math.tan(STEP);
const heads = new Int32Array(SHEETS);

/**
 * Corners, edges and rims of everything placed for one question, one after another: arrays of their
 * own took as long to make as to fill. Three numbers a corner; four a place on a rim: along the
 * line, height, part of the edge, edge.
 */
let laid = new Float64Array(3 * 4096);
let someLaid = 0;
let chosen = new Int32Array(4096);
let someChosen = 0;
let rims = new Float64Array(4 * 4096);
let someRims = 0;
/** Where each half plane's rim begins in `rims`, and the end of the last; how long a string over it is. */
let starts = new Int32Array((SHEETS + 1) * 64);
let lengths = new Float64Array((SHEETS + 1) * 64);
let someSheets = 0;
/** The half plane before each corner of the body at hand, or on which side of a sheet and how high. */
let sectors = new Uint8Array(1024);
let sides = new Float64Array(1024);
let heights = new Float64Array(1024);
/** For which body, of all since the beginning, a corner was last looked at; those that are. */
let marks = new Int32Array(1024);
let listed = new Int32Array(1024);
let generation = 0;

/** Forgets what earlier questions placed: their frames must not be asked again. */
export function placeNone(): void {
  someLaid = 0;
  someChosen = 0;
  someRims = 0;
  someSheets = 0;
}

function longer<T extends Float64Array | Int32Array>(from: T, least: number): T {
  if (from.length >= least) return from;
  const to = new (from.constructor as new (n: number) => T)(Math.max(least, 2 * from.length));
  to.set(from);
  return to;
}

function makeRoomForCorners(n: number): void {
  if (sectors.length >= n) return;
  sectors = new Uint8Array(2 * n);
  sides = new Float64Array(2 * n);
  heights = new Float64Array(2 * n);
  marks = new Int32Array(2 * n);
  listed = new Int32Array(2 * n);
}

/** Lists the edges that a string between two places may bend over; where the list ends. */
function chooseEdges(body: Body, from: Vec3, to: Vec3): number {
  const n = body.edges.length / 2;
  chosen = longer(chosen, someChosen + n);
  const out = chosen;
  let k = someChosen;
  const near = facingEdges(body, from);
  const far = near && facingEdges(body, to);
  if (!near || !far) for (let e = 0; e < n; e++, k++) out[k] = e;
  else
    for (let w = 0; w < near.length; w++)
      for (
        let left = ~((near[w] as number) | (far[w] as number));
        left !== 0;
        left &= left - 1, k++
      )
        out[k] = 32 * w + 31 - Math.clz32(left & -left);
  return k;
}

/** Lists the corners of the body's edges that were chosen, each once; how many. */
function listCorners({ edges }: Body, first: number, last: number): number {
  const [picked, mark, list] = [chosen, marks, listed];
  generation += 1;
  const here = generation;
  let some = 0;
  for (let k = first; k < last; k++) {
    const e = 2 * (picked[k] as number);
    const i = edges[e] as number;
    const j = edges[e + 1] as number;
    if (mark[i] !== here) {
      mark[i] = here;
      list[some] = i;
      some += 1;
    }
    if (mark[j] !== here) {
      mark[j] = here;
      list[some] = j;
      some += 1;
    }
  }
  return some;
}

/** Lays the listed corners along the frame's line. */
function layCorners(
  { from, along, u, v }: Frame,
  places: Float64Array,
  start: number,
  some: number,
) {
  // Locals: a loop reads them faster than what the module may have changed meanwhile.
  const [at, sector, list] = [laid, sectors, listed];
  const [fx, fy, fz] = from;
  const [ax, ay, az] = along;
  const [ux, uy, uz] = u;
  const [vx, vy, vz] = v;
  for (let k = 0; k < some; k++) {
    const i = list[k] as number;
    const c = 3 * i;
    const p = (places[c] as number) - fx;
    const q = (places[c + 1] as number) - fy;
    const r = (places[c + 2] as number) - fz;
    const y = p * ux + q * uy + r * uz;
    const z = p * vx + q * vy + r * vz;
    at[start + c] = p * ax + q * ay + r * az;
    at[start + c + 1] = y;
    at[start + c + 2] = z;
    sector[i] = sectorOf(y, z);
  }
}

/**
 * The last half plane before a direction, or on it: by comparing, since there are many corners, and
 * by counting, since which way each comparison falls cannot be foretold.
 */
function sectorOf(y: number, z: number): number {
  const a = Math.abs(y);
  const b = Math.abs(z);
  const quarter = (Number(y > 0) << 3) | (Number(z > 0) << 2);
  const eighth = Number(b >= TAN * a) + Number(b >= a) + Number(TAN * b >= a);
  return SECTORS[quarter + eighth] as number;
}
/** By quarter: neither coordinate above 0, the second, the first, both. */
const SECTORS = Uint8Array.of(8, 9, 10, 11, 7, 6, 5, 4, 15, 14, 13, 12, 0, 1, 2, 3);

/**
 * A body's rims in the half planes round a frame's line, found once. Each edge is met only by those
 * between its two corners, seen along the line: far fewer than all.
 */
export function placeIn(frame: Frame, body: Body): Placed {
  for (let k = 0; k < frame.placed.length; k++) {
    const known = frame.placed[k] as Placed;
    if (known.body === body) return known;
  }
  const n = body.corners.length;
  const placed: Placed = {
    body,
    corners: someLaid,
    first: someChosen,
    last: chooseEdges(body, frame.from, frame.to),
    sheets: someSheets,
  };
  frame.placed.push(placed);
  someChosen = placed.last;
  someLaid += n;
  laid = longer(laid, someLaid);
  makeRoomForCorners(n / 3);
  layCorners(frame, body.corners, placed.corners, listCorners(body, placed.first, placed.last));
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

/** What the string over the bodies in one half plane bends over. */
export function rimBends(frame: Frame, placed: readonly Placed[], sheet: number): Bend[] {
  walkRim(frame.reach, gather(placed, sheet), 0);
  return bendsWalked(placed);
}

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

/** What the string over the bodies bends over in a sheet that turns about the line. */
export function bendsIn(frame: Frame, placed: readonly Placed[], sheet: Sheet): Bend[] {
  let some = 0;
  for (let b = 0; b < placed.length; b++) {
    const { body, corners, first, last } = placed[b] as Placed;
    const { edges } = body;
    const [at, side, height, picked, list] = [laid, sides, heights, chosen, listed];
    const those = listCorners(body, first, last);
    for (let k = 0; k < those; k++) {
      const i = list[k] as number;
      const c = corners + 3 * i;
      side[i] = sheet.sideOf(at[c] as number, at[c + 1] as number, at[c + 2] as number);
      height[i] = Number.NaN;
    }
    for (let k = first; k < last; k++) {
      const e = picked[k] as number;
      const i = edges[2 * e] as number;
      const j = edges[2 * e + 1] as number;
      // Closed on one side only: a corner on the sheet is met by some of its edges, not by none.
      if ((side[i] as number) < 0 === (side[j] as number) < 0) continue;
      const ci = corners + 3 * i;
      const cj = corners + 3 * j;
      if (Number.isNaN(height[i] as number)) hang(sheet, i, ci);
      if (Number.isNaN(height[j] as number)) hang(sheet, j, cj);
      const s = side[i] as number;
      const part = s / (s - (side[j] as number));
      const h = (height[i] as number) * (1 - part) + (height[j] as number) * part;
      if (!(h > 0)) continue;
      const lists = makeRoom(some + 1);
      lists.x[some] = (at[ci] as number) * (1 - part) + (at[cj] as number) * part;
      lists.h[some] = h;
      lists.part[some] = part;
      lists.body[some] = b;
      lists.edge[some] = e;
      lists.next[some] = some - 1;
      some += 1;
    }
  }
  walkRim(frame.reach, some - 1, 0);
  return bendsWalked(placed);
}

/** Side and height of one corner, exactly. */
function hang(sheet: Sheet, i: number, corner: number): void {
  const t = sheet.angleAt(laid[corner] as number);
  const c = Math.cos(t);
  const s = Math.sin(t);
  const p = laid[corner + 1] as number;
  const q = laid[corner + 2] as number;
  sides[i] = q * c - p * s;
  heights[i] = p * c + q * s;
}

function bendsWalked(placed: readonly Placed[]): Bend[] {
  const bends: Bend[] = [];
  for (let i = 0; i < walked; i++) {
    const m = rim[i] as number;
    const { body } = placed[met.body[m] as number] as Placed;
    const edge = met.edge[m] as number;
    const part = met.part[m] as number;
    const { corners: c, edges } = body;
    const a = 3 * (edges[2 * edge] as number);
    const b = 3 * (edges[2 * edge + 1] as number);
    const x = c[a] as number;
    const y = c[a + 1] as number;
    const z = c[a + 2] as number;
    bends.push({
      body,
      edge,
      part,
      point: [
        x + ((c[b] as number) - x) * part,
        y + ((c[b + 1] as number) - y) * part,
        z + ((c[b + 2] as number) - z) * part,
      ],
    });
  }
  return bends;
}
