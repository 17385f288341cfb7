/**
 * Cuts through bodies by a sheet hanging on the straight line: a half plane, or one that turns about
 * the line along its way. In the sheet the string over everything is the rim of a convex hull.
 */
import { cross, direction, distance, dot, mix, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { type Bend, edgeOf } from './string';

/** The straight line and two directions square to it. */
export interface Frame {
  from: Vec3;
  along: Vec3;
  u: Vec3;
  v: Vec3;
  reach: number;
}

/** A body's corners in a frame: along the line, and two across it. */
export interface Placed {
  body: Body;
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
  /** Room for each corner's side of the sheet and height in it. */
  side: Float64Array;
  height: Float64Array;
}

/** Where the sheet hangs, radians about the line, at a distance along it. */
export type Sheet = (x: number) => number;

export function frameOf(from: Vec3, to: Vec3): Frame | null {
  const way = direction(sub(to, from));
  if (!way) return null;
  const start: Vec3 = Math.abs(way[2]) < 0.8 ? [0, 0, 1] : [0, 1, 0];
  const u = direction(cross(start, way)) as Vec3;
  return { from, along: way, u, v: cross(way, u), reach: distance(from, to) };
}

export function placeIn(frame: Frame, body: Body): Placed {
  const n = body.corners.length / 3;
  const placed: Placed = {
    body,
    x: new Float64Array(n),
    y: new Float64Array(n),
    z: new Float64Array(n),
    side: new Float64Array(n),
    height: new Float64Array(n),
  };
  const { from, along: a, u, v } = frame;
  for (let i = 0; i < n; i++) {
    const p = (body.corners[3 * i] as number) - from[0];
    const q = (body.corners[3 * i + 1] as number) - from[1];
    const r = (body.corners[3 * i + 2] as number) - from[2];
    placed.x[i] = p * a[0] + q * a[1] + r * a[2];
    placed.y[i] = p * u[0] + q * u[1] + r * u[2];
    placed.z[i] = p * v[0] + q * v[1] + r * v[2];
  }
  return placed;
}

/** What sheets meet: along, height, part of the edge, whose edge; and the next on the same sheet. */
let room = 4096;
let metX = new Float64Array(room);
let metH = new Float64Array(room);
let metPart = new Float64Array(room);
let metBody = new Int32Array(room);
let metEdge = new Int32Array(room);
let nextMet = new Int32Array(room);
let met = 0;

function double(): void {
  room *= 2;
  const wider = <T extends Float64Array | Int32Array>(old: T, made: T): T => {
    made.set(old);
    return made;
  };
  metX = wider(metX, new Float64Array(room));
  metH = wider(metH, new Float64Array(room));
  metPart = wider(metPart, new Float64Array(room));
  metBody = wider(metBody, new Int32Array(room));
  metEdge = wider(metEdge, new Int32Array(room));
  nextMet = wider(nextMet, new Int32Array(room));
}

/** A string in a sheet: how long it is (exact for a half plane) and what it bends over. */
export interface Rim {
  length: number;
  bends: Bend[];
}

/**
 * The rims in `count` half planes spread evenly round the line. Each edge is met only by those
 * between its two corners, seen along the line: far fewer than all.
 */
export function rimsRound(frame: Frame, placed: readonly Placed[], count: number): Rim[] {
  const step = (2 * Math.PI) / count;
  const cos = Array.from({ length: count }, (_, k) => Math.cos(k * step));
  const sin = Array.from({ length: count }, (_, k) => Math.sin(k * step));
  const heads = new Int32Array(count).fill(-1);
  met = 0;
  for (let b = 0; b < placed.length; b++) {
    const { x, y, z, side: turn, body } = placed[b] as Placed;
    for (let i = 0; i < x.length; i++) turn[i] = Math.atan2(z[i] as number, y[i] as number) / step;
    const { edges } = body;
    for (let e = 0; 2 * e < edges.length; e++) {
      const i = edges[2 * e] as number;
      const j = edges[2 * e + 1] as number;
      const t = turn[i] as number;
      const u = turn[j] as number;
      let low = Math.min(t, u);
      let high = Math.max(t, u);
      // Seen along the line an edge spans less than half a turn.
      if (high - low > count / 2) [low, high] = [high, low + count];
      for (let k = Math.floor(low) + 1; k <= high; k++) {
        const m = ((k % count) + count) % count;
        const c = cos[m] as number;
        const s = sin[m] as number;
        const p = (z[i] as number) * c - (y[i] as number) * s;
        const q = (z[j] as number) * c - (y[j] as number) * s;
        const part = p === q ? 0 : Math.min(1, Math.max(0, p / (p - q)));
        const h =
          ((y[i] as number) * c + (z[i] as number) * s) * (1 - part) +
          ((y[j] as number) * c + (z[j] as number) * s) * part;
        if (!(h > 0)) continue;
        if (met === room) double();
        metX[met] = (x[i] as number) * (1 - part) + (x[j] as number) * part;
        metH[met] = h;
        metPart[met] = part;
        metBody[met] = b;
        metEdge[met] = e;
        nextMet[met] = heads[m] as number;
        heads[m] = met;
        met += 1;
      }
    }
  }
  return Array.from(heads, (head) => walkRim(frame, placed, head));
}

/** The rim in a sheet that turns about the line. */
export function rimIn(frame: Frame, placed: readonly Placed[], sheet: Sheet): Rim {
  let head = -1;
  met = 0;
  for (let b = 0; b < placed.length; b++) {
    const one = placed[b] as Placed;
    layOn(one, sheet);
    const { x, side, height } = one;
    const { edges } = one.body;
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
      if (met === room) double();
      metX[met] = (x[i] as number) * (1 - part) + (x[j] as number) * part;
      metH[met] = h;
      metPart[met] = part;
      metBody[met] = b;
      metEdge[met] = e;
      nextMet[met] = head;
      head = met;
      met += 1;
    }
  }
  return walkRim(frame, placed, head);
}

/**
 * From hull corner to hull corner, each time the farthest round to the left (Jarvis 1973). Nothing
 * lies below the line, so the walk from its start comes to its end.
 */
function walkRim(frame: Frame, placed: readonly Placed[], head: number): Rim {
  let [cx, ch, sum] = [0, 0, 0];
  const bends: Bend[] = [];
  for (let guard = 0; guard <= met; guard++) {
    let best = -1;
    let bx = frame.reach - cx;
    let bh = -ch;
    for (let k = head; k >= 0; k = nextMet[k] as number) {
      const kx = (metX[k] as number) - cx;
      const kh = (metH[k] as number) - ch;
      const turn = bx * kh - bh * kx;
      if (turn < -1e-9) continue;
      if (turn <= 1e-9) {
        // In one line with the best: the farther one, if it lies ahead.
        if (kx * bx + kh * bh <= 0 || kx * kx + kh * kh <= bx * bx + bh * bh + 1e-9) continue;
      }
      best = k;
      bx = kx;
      bh = kh;
    }
    sum += Math.sqrt(bx * bx + bh * bh);
    if (best < 0) break;
    cx += bx;
    ch += bh;
    const { body } = placed[metBody[best] as number] as Placed;
    const edge = metEdge[best] as number;
    const part = metPart[best] as number;
    const [p, q] = edgeOf(body, edge);
    bends.push({ body, edge, part, point: mix(p, q, part) });
  }
  return { length: sum, bends };
}

function layOn(one: Placed, sheet: Sheet): void {
  const { x, y, z, side, height } = one;
  for (let i = 0; i < x.length; i++) {
    const t = sheet(x[i] as number);
    const c = Math.cos(t);
    const s = Math.sin(t);
    const p = y[i] as number;
    const q = z[i] as number;
    side[i] = q * c - p * s;
    height[i] = p * c + q * s;
  }
}

/** The sheet that hangs where a string runs: turning evenly from bend to bend. */
export function sheetAlong(frame: Frame, bends: readonly Bend[]): Sheet | null {
  const xs: number[] = [];
  const angles: number[] = [];
  for (const { point } of bends) {
    const d = sub(point, frame.from);
    const [y, z] = [dot(d, frame.u), dot(d, frame.v)];
    if (y * y + z * z < 1e-6) continue;
    const x = dot(d, frame.along);
    let t = Math.atan2(z, y);
    const last = angles[angles.length - 1];
    if (last !== undefined) {
      // A string that runs back on itself hangs on no such sheet.
      if (x <= (xs[xs.length - 1] as number)) return null;
      t += 2 * Math.PI * Math.round((last - t) / (2 * Math.PI));
    }
    xs.push(x);
    angles.push(t);
  }
  if (xs.length === 0) return null;
  return (x) => {
    const last = xs.length - 1;
    if (x <= (xs[0] as number)) return angles[0] as number;
    if (x >= (xs[last] as number)) return angles[last] as number;
    let k = 1;
    while ((xs[k] as number) < x) k += 1;
    const [x0, x1] = [xs[k - 1] as number, xs[k] as number];
    const [a0, a1] = [angles[k - 1] as number, angles[k] as number];
    return a0 + ((a1 - a0) * (x - x0)) / (x1 - x0);
  };
}
