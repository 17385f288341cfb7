/**
 * Cuts through bodies by a sheet hanging on the straight line: a half plane, or one that turns about
 * the line along its way. In the sheet the string over everything is the rim of a convex hull.
 */
import { cross, direction, distance, mix, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { MET, meet, meetNone, mets, rim, walked, walkRim } from './rim-walk';
import { type Bend, edgeOf } from './string';

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

/** A body's rims in the half planes round a frame's line. */
export interface Placed {
  body: Body;
  /** Where each half plane's rim begins, and the end of the last. */
  starts: Int32Array;
  /** Four numbers a place on a rim: along the line, height, part of the edge, edge. */
  rims: Float64Array;
  /** How long a string over each rim is. */
  lengths: Float64Array;
}

/** Where the sheet hangs, radians about the line, at a distance along it. */
export type Sheet = (x: number) => number;

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
/** Room for a body's corners: along the line and two across it, and the half plane before each. */
let roomX = new Float64Array(1024);
let roomY = new Float64Array(1024);
let roomZ = new Float64Array(1024);
let roomSectors = new Int32Array(1024);

function layCorners(frame: Frame, { corners }: Body): number {
  const n = corners.length / 3;
  if (roomX.length < n) {
    roomX = new Float64Array(2 * n);
    roomY = new Float64Array(2 * n);
    roomZ = new Float64Array(2 * n);
    roomSectors = new Int32Array(2 * n);
  }
  // Locals: a loop reads them faster than what the module may have changed meanwhile.
  const [x, y, z] = [roomX, roomY, roomZ];
  const [fx, fy, fz] = frame.from;
  const [ax, ay, az] = frame.along;
  const [ux, uy, uz] = frame.u;
  const [vx, vy, vz] = frame.v;
  for (let i = 0; i < n; i++) {
    const p = (corners[3 * i] as number) - fx;
    const q = (corners[3 * i + 1] as number) - fy;
    const r = (corners[3 * i + 2] as number) - fz;
    x[i] = p * ax + q * ay + r * az;
    y[i] = p * ux + q * uy + r * uz;
    z[i] = p * vx + q * vy + r * vz;
  }
  return n;
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
  const n = layCorners(frame, body);
  const [x, y, z, sectors] = [roomX, roomY, roomZ, roomSectors];
  for (let i = 0; i < n; i++) sectors[i] = sectorOf(y[i] as number, z[i] as number);
  const { edges } = body;
  heads.fill(-1);
  meetNone();
  for (let e = 0; 2 * e < edges.length; e++) {
    const i = edges[2 * e] as number;
    const j = edges[2 * e + 1] as number;
    const s = sectors[i] as number;
    const t = sectors[j] as number;
    if (s === t) continue;
    const yi = y[i] as number;
    const zi = z[i] as number;
    const yj = y[j] as number;
    const zj = z[j] as number;
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
      const at = (x[i] as number) * (1 - part) + (x[j] as number) * part;
      heads[m] = meet(heads[m] as number, at, Math.max(TOUCH, h), part, 0, e);
    }
  }
  const starts = new Int32Array(SHEETS + 1);
  const lengths = new Float64Array(SHEETS);
  let some = 0;
  for (let k = 0; k < SHEETS; k++) {
    lengths[k] = walkRim(frame.reach, heads[k] as number, some);
    some += walked;
    starts[k + 1] = some;
  }
  const rims = new Float64Array(4 * some);
  for (let i = 0; i < some; i++) {
    const m = MET * (rim[i] as number);
    rims[4 * i] = mets[m] as number;
    rims[4 * i + 1] = mets[m + 1] as number;
    rims[4 * i + 2] = mets[m + 2] as number;
    rims[4 * i + 3] = mets[m + 4] as number;
  }
  const placed: Placed = { body, starts, rims, lengths };
  frame.placed.set(body, placed);
  return placed;
}

/** How long a string over the bodies is in each half plane. */
export function rimLengths(frame: Frame, placed: readonly Placed[]): Float64Array {
  const [only] = placed;
  if (only && placed.length === 1) return only.lengths;
  const lengths = new Float64Array(SHEETS);
  for (let k = 0; k < SHEETS; k++) lengths[k] = walkRim(frame.reach, gather(placed, k), 0);
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
  for (let b = 0; b < placed.length; b++) {
    const { starts, rims } = placed[b] as Placed;
    for (let i = starts[sheet] as number; i < (starts[sheet + 1] as number); i++) {
      const at = rims[4 * i] as number;
      const h = rims[4 * i + 1] as number;
      head = meet(head, at, h, rims[4 * i + 2] as number, b, rims[4 * i + 3] as number);
    }
  }
  return head;
}

/** Each corner's side of a turning sheet, and its height in it. */
let side = new Float64Array(1024);
let height = new Float64Array(1024);

/** What the string over the bodies bends over in a sheet that turns about the line. */
export function bendsIn(frame: Frame, placed: readonly Placed[], sheet: Sheet): Bend[] {
  let head = -1;
  meetNone();
  for (let b = 0; b < placed.length; b++) {
    const { body } = placed[b] as Placed;
    layOn(sheet, layCorners(frame, body));
    const { edges } = body;
    for (let e = 0; 2 * e < edges.length; e++) {
      const i = edges[2 * e] as number;
      const j = edges[2 * e + 1] as number;
      const s = side[i] as number;
      const t = side[j] as number;
      // Closed on one side only: a corner on the sheet is met by some of its edges, not by none.
      if (s < 0 === t < 0) continue;
      const part = s / (s - t);
      const h = (height[i] as number) * (1 - part) + (height[j] as number) * part;
      if (!(h > 0)) continue;
      const at = (roomX[i] as number) * (1 - part) + (roomX[j] as number) * part;
      head = meet(head, at, h, part, b, e);
    }
  }
  walkRim(frame.reach, head, 0);
  return bendsWalked(placed);
}

function bendsWalked(placed: readonly Placed[]): Bend[] {
  return Array.from({ length: walked }, (_, i) => {
    const m = MET * (rim[i] as number);
    const { body } = placed[mets[m + 3] as number] as Placed;
    const edge = mets[m + 4] as number;
    const part = mets[m + 2] as number;
    const [p, q] = edgeOf(body, edge);
    return { body, edge, part, point: mix(p, q, part) };
  });
}

function layOn(sheet: Sheet, n: number): void {
  if (side.length < n) {
    side = new Float64Array(2 * n);
    height = new Float64Array(2 * n);
  }
  for (let i = 0; i < n; i++) {
    const t = sheet(roomX[i] as number);
    const c = Math.cos(t);
    const s = Math.sin(t);
    const p = roomY[i] as number;
    const q = roomZ[i] as number;
    side[i] = q * c - p * s;
    height[i] = p * c + q * s;
  }
}
