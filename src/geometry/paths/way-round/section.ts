/**
 * Cuts through bodies by a sheet hanging on the straight line: a half plane, or one that turns about
 * the line along its way. In the sheet the string over everything is the rim of a convex hull.
 */
import { cross, direction, distance, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { MET, meet, meetNone, mets, rim, walked, walkRim } from './rim-walk';
import type { Sheet } from './sheet-along';
import type { Bend } from './string';

/** How many half planes hang on a line. */
export const SHEETS = 16;

/** The straight line, two directions square to it, and what of the bodies is known as seen along it. */
export interface Frame {
  from: Vec3;
  along: Vec3;
  u: Vec3;
  v: Vec3;
  reach: number;
  placed: Map<Body, Placed>;
}

/** A body's corners as seen along a frame's line, and its rims in the half planes round that. */
export interface Placed {
  body: Body;
  /** Where its corners begin in `laid`: along the line and two across it. */
  corners: number;
  /** Where each half plane's rim begins in `rims`, and the end of the last. */
  starts: number[];
  /** How long a string over each rim is. */
  lengths: number[];
}

export function frameOf(from: Vec3, to: Vec3): Frame | null {
  const way = direction(sub(to, from));
  if (!way) return null;
  const start: Vec3 = Math.abs(way[2]) < 0.8 ? [0, 0, 1] : [0, 1, 0];
  const u = direction(cross(start, way)) as Vec3;
  const reach = distance(from, to);
  return { from, along: way, u, v: cross(way, u), reach, placed: new Map() };
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
 * Corners and rims of everything placed for one question, one after another: arrays of their own
 * took as long to make as to fill. Three numbers a corner; four a place on a rim: along the line,
 * height, part of the edge, edge.
 */
let laid = new Float64Array(3 * 4096);
let someLaid = 0;
let rims = new Float64Array(4 * 4096);
let someRims = 0;
/** The half plane before each corner of the body being placed. */
let sectors = new Uint8Array(1024);

/** Forgets what earlier questions placed: their frames must not be asked again. */
export function placeNone(): void {
  someLaid = 0;
  someRims = 0;
}

function longer(from: Float64Array, least: number): Float64Array<ArrayBuffer> {
  const to = new Float64Array(Math.max(least, 2 * from.length));
  to.set(from);
  return to;
}

function layCorners(frame: Frame, { corners }: Body): number {
  const n = corners.length;
  const start = someLaid;
  if (laid.length < start + n) laid = longer(laid, start + n);
  // Locals: a loop reads them faster than what the module may have changed meanwhile.
  const to = laid;
  const { from, along, u, v } = frame;
  const [fx, fy, fz] = [from[0], from[1], from[2]];
  const [ax, ay, az] = [along[0], along[1], along[2]];
  const [ux, uy, uz] = [u[0], u[1], u[2]];
  const [vx, vy, vz] = [v[0], v[1], v[2]];
  for (let i = 0; i < n; i += 3) {
    const p = (corners[i] as number) - fx;
    const q = (corners[i + 1] as number) - fy;
    const r = (corners[i + 2] as number) - fz;
    to[start + i] = p * ax + q * ay + r * az;
    to[start + i + 1] = p * ux + q * uy + r * uz;
    to[start + i + 2] = p * vx + q * vy + r * vz;
  }
  someLaid = start + n;
  return start;
}

/** The last half plane before a direction, or on it: by comparing, since there are many corners. */
function sectorOf(y: number, z: number): number {
  const a = Math.abs(y);
  const b = Math.abs(z);
  // Within the first quarter: 0 to 3, and whether it lies on the half plane.
  if (y > 0 && z >= 0) return b < a ? (b < TAN * a ? 0 : 1) : a > TAN * b ? 2 : 3;
  if (y <= 0 && z > 0) return a < b ? (a < TAN * b ? 4 : 5) : b > TAN * a ? 6 : 7;
  if (y < 0 && z <= 0) return b < a ? (b < TAN * a ? 8 : 9) : a > TAN * b ? 10 : 11;
  return a < b ? (a < TAN * b ? 12 : 13) : b > TAN * a ? 14 : 15;
}

/**
 * A body's rims in the half planes round a frame's line, found once. Each edge is met only by those
 * between its two corners, seen along the line: far fewer than all.
 */
export function placeIn(frame: Frame, body: Body): Placed {
  const known = frame.placed.get(body);
  if (known) return known;
  const corners = layCorners(frame, body);
  const { edges } = body;
  const n = body.corners.length / 3;
  if (sectors.length < n) sectors = new Uint8Array(2 * n);
  const [at, sector] = [laid, sectors];
  for (let i = 0, c = corners; i < n; i++, c += 3)
    sector[i] = sectorOf(at[c + 1] as number, at[c + 2] as number);
  heads.fill(-1);
  meetNone();
  for (let e = 0, end = edges.length; e < end; e += 2) {
    const i = edges[e] as number;
    const j = edges[e + 1] as number;
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
    const first = swept >= 0 ? s : t;
    const turns = isThrough ? SHEETS : (t - s) * (swept >= 0 ? 1 : -1);
    for (let turn = turns < 0 ? turns + SHEETS : turns, m = first; turn > 0; turn--) {
      m = m + 1 === SHEETS ? 0 : m + 1;
      const c = COS[m] as number;
      const d = SIN[m] as number;
      const p = zi * c - yi * d;
      const q = zj * c - yj * d;
      const part = p === q ? 0 : Math.min(1, Math.max(0, p / (p - q)));
      const h = (yi * c + zi * d) * (1 - part) + (yj * c + zj * d) * part;
      if (!(h > -TOUCH)) continue;
      const x = (at[ci] as number) * (1 - part) + (at[cj] as number) * part;
      heads[m] = meet(heads[m] as number, x, Math.max(TOUCH, h), part, 0, e >> 1);
    }
  }
  const starts: number[] = [someRims];
  const lengths: number[] = [];
  let some = 0;
  for (let k = 0; k < SHEETS; k++) {
    lengths.push(walkRim(frame.reach, heads[k] as number, some));
    some += walked;
    starts.push(someRims + some);
  }
  if (rims.length < 4 * (someRims + some)) rims = longer(rims, 4 * (someRims + some));
  const [to, met, order] = [rims, mets, rim];
  for (let i = 0, r = 4 * someRims; i < some; i++, r += 4) {
    const m = MET * (order[i] as number);
    to[r] = met[m] as number;
    to[r + 1] = met[m + 1] as number;
    to[r + 2] = met[m + 2] as number;
    to[r + 3] = met[m + 4] as number;
  }
  someRims += some;
  const placed: Placed = { body, corners, starts, lengths };
  frame.placed.set(body, placed);
  return placed;
}

/** How long a string over the bodies is in each half plane. */
export function rimLengths(frame: Frame, placed: readonly Placed[]): readonly number[] {
  const [only] = placed;
  if (only && placed.length === 1) return only.lengths;
  const lengths: number[] = [];
  for (let k = 0; k < SHEETS; k++) lengths.push(walkRim(frame.reach, gather(placed, k), 0));
  return lengths;
}

/** What the string over the bodies in one half plane bends over. */
export function rimBends(frame: Frame, placed: readonly Placed[], sheet: number): Bend[] {
  walkRim(frame.reach, gather(placed, sheet), 0);
  return bendsWalked(placed);
}

/** The corner of all hulls is a corner of the hull of one: lists what bodies' rims have in a sheet. */
function gather(placed: readonly Placed[], sheet: number): number {
  let head = -1;
  meetNone();
  const from = rims;
  for (let b = 0; b < placed.length; b++) {
    const { starts } = placed[b] as Placed;
    const end = 4 * (starts[sheet + 1] as number);
    for (let r = 4 * (starts[sheet] as number); r < end; r += 4)
      head = meet(
        head,
        from[r] as number,
        from[r + 1] as number,
        from[r + 2] as number,
        b,
        from[r + 3] as number,
      );
  }
  return head;
}

/** What the string over the bodies bends over in a sheet that turns about the line. */
export function bendsIn(frame: Frame, placed: readonly Placed[], sheet: Sheet): Bend[] {
  let head = -1;
  meetNone();
  for (let b = 0; b < placed.length; b++) {
    const { body, corners } = placed[b] as Placed;
    const { edges } = body;
    const n = body.corners.length / 3;
    if (sides.length < n) {
      sides = new Float64Array(2 * n);
      heights = new Float64Array(2 * n);
    }
    const [at, side, height] = [laid, sides, heights];
    for (let i = 0, c = corners; i < n; i++, c += 3)
      side[i] = sheet.sideOf(at[c] as number, at[c + 1] as number, at[c + 2] as number);
    height.fill(Number.NaN, 0, n);
    for (let e = 0, end = edges.length; e < end; e += 2) {
      const i = edges[e] as number;
      const j = edges[e + 1] as number;
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
      const x = (at[ci] as number) * (1 - part) + (at[cj] as number) * part;
      head = meet(head, x, h, part, b, e >> 1);
    }
  }
  walkRim(frame.reach, head, 0);
  return bendsWalked(placed);
}

/** Each corner's side of a turning sheet, or only its sign, and its height in it. */
let sides = new Float64Array(1024);
let heights = new Float64Array(1024);

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
    const m = MET * (rim[i] as number);
    const { body } = placed[mets[m + 3] as number] as Placed;
    const edge = mets[m + 4] as number;
    const part = mets[m + 2] as number;
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
