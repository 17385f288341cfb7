/** Whether a speaker's round body touches triangles, and how far it reaches past them. */
import { along, type Vec3 } from '../vector';
import type { Body } from './body';
import { isInside, type Solid } from './solid';
import { visitBox } from './visit-box';

/** Overlaps are told up to this; deeper ones have no millimetres, mm. Choice of ours. */
export const FARTHEST_OVERLAP = 400;

/** Touching without pressing is no collision, mm. */
const TOUCH = 1e-6;

/** A plane that cuts the body: what lies behind it does not count. `height` above it counts. */
export interface Above {
  point: Vec3;
  normal: Vec3;
  height: number;
}

// One triangle at a time in the body's own axes (x, y across it, z out of its front), cut down in
// place to what lies between two heights. Shared, since no visit asks the question again.
const MOST = 12;
const cut = { n: 0, p: new Float64Array(3 * MOST) };
const spare = { n: 0, p: new Float64Array(3 * MOST) };

/** @returns false where the triangle lies wholly to one side of the cylinder of that radius */
function load(triangles: Float64Array, k: number, body: Body, radius: number): boolean {
  const { at, axis, across } = body;
  const [a, b] = across;
  const x = (triangles[k] as number) - at[0];
  const y = (triangles[k + 1] as number) - at[1];
  const z = (triangles[k + 2] as number) - at[2];
  const p = cut.p;
  cut.n = 3;
  for (let i = 0; i < 3; i++) {
    // A corner, and the two edges from it.
    const e = k + 3 * i;
    const qx = i === 0 ? x : x + (triangles[e] as number);
    const qy = i === 0 ? y : y + (triangles[e + 1] as number);
    const qz = i === 0 ? z : z + (triangles[e + 2] as number);
    p[3 * i] = qx * a[0] + qy * a[1] + qz * a[2];
    p[3 * i + 1] = qx * b[0] + qy * b[1] + qz * b[2];
    p[3 * i + 2] = qx * axis[0] + qy * axis[1] + qz * axis[2];
  }
  for (let i = 0; i < 2; i++) {
    const [u, v, w] = [p[i] as number, p[i + 3] as number, p[i + 6] as number];
    if ((u > radius && v > radius && w > radius) || (u < -radius && v < -radius && w < -radius))
      return false;
  }
  return true;
}

/** Keeps the part where nx·x + ny·y + nz·z ≥ least (Sutherland–Hodgman, one plane). */
function clip(nx: number, ny: number, nz: number, least: number): void {
  const from = cut.p;
  const to = spare.p;
  let n = 0;
  for (let i = 0; i < cut.n; i++) {
    const j = i + 1 === cut.n ? 0 : i + 1;
    const [x, y, z] = [from[3 * i] as number, from[3 * i + 1] as number, from[3 * i + 2] as number];
    const [u, v, w] = [from[3 * j] as number, from[3 * j + 1] as number, from[3 * j + 2] as number];
    const here = nx * x + ny * y + nz * z - least;
    const there = nx * u + ny * v + nz * w - least;
    if (here >= 0 && n < MOST) {
      to[3 * n] = x;
      to[3 * n + 1] = y;
      to[3 * n + 2] = z;
      n++;
    }
    if (here * there < 0 && n < MOST) {
      const t = here / (here - there);
      to[3 * n] = x + (u - x) * t;
      to[3 * n + 1] = y + (v - y) * t;
      to[3 * n + 2] = z + (w - z) * t;
      n++;
    }
  }
  cut.n = n;
  cut.p = to;
  spare.p = from;
}

/** Whether what is left of the triangle comes within `radius` of the axis. */
function withinRadius(radius: number): boolean {
  const { n, p } = cut;
  if (n === 0) return false;
  const least = Math.max(0, radius - TOUCH) ** 2;
  let [left, right] = [false, false];
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    const [x, y] = [p[3 * i] as number, p[3 * i + 1] as number];
    const [dx, dy] = [(p[3 * j] as number) - x, (p[3 * j + 1] as number) - y];
    const size = dx * dx + dy * dy;
    let t = size > 0 ? -(x * dx + y * dy) / size : 0;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    const [fx, fy] = [x + t * dx, y + t * dy];
    if (fx * fx + fy * fy < least) return true;
    if (size > 0) {
      if (x * dy - y * dx > 0) left = true;
      else right = true;
    }
  }
  // The axis goes through its middle when all edges pass it on the same side.
  return n > 2 && left !== right;
}

/** Whether a part of the body, a round disc from `low` to `high`, touches the triangle. */
function partMeets(
  triangles: Float64Array,
  k: number,
  body: Body,
  radius: number,
  low: number,
  high: number,
  above: Above | null,
): boolean {
  if (!load(triangles, k, body, radius)) return false;
  const p = cut.p;
  const [z0, z1, z2] = [p[2] as number, p[5] as number, p[8] as number];
  if (z0 < low && z1 < low && z2 < low) return false;
  if (z0 > high && z1 > high && z2 > high) return false;
  clip(0, 0, 1, low);
  clip(0, 0, -1, -high);
  if (above) cutAbove(body, above);
  return withinRadius(radius);
}

function cutAbove({ at, axis, across: [a, b] }: Body, { point, normal, height }: Above): void {
  const n = normal;
  const on = (d: Vec3) => d[0] * n[0] + d[1] * n[1] + d[2] * n[2];
  const offset = on([at[0] - point[0], at[1] - point[1], at[2] - point[2]]);
  clip(on(a), on(b), on(axis), height - offset);
}

/** Whether the body touches any of the triangles that `wanted` lets through. */
export function meetsTriangles(
  { tree }: Pick<Solid, 'tree'>,
  body: Body,
  above: Above | null = null,
  wanted?: (triangle: number) => boolean,
): number | null {
  const { triangles } = tree;
  let met: number | null = null;
  visitBox(tree, body.low, body.high, (k, triangle) => {
    if (wanted && !wanted(triangle)) return false;
    const touches =
      partMeets(triangles, k, body, body.cutout, -body.depth, 0, above) ||
      partMeets(triangles, k, body, body.flange, 0, 0, above);
    if (touches) met = triangle;
    return touches;
  });
  return met;
}

/** Whether the body touches the solid or stands inside it. */
export function meets(solid: Solid, body: Body): boolean {
  if (meetsTriangles(solid, body) !== null) return true;
  return isInside(solid, along(body.at, body.axis, -body.depth / 2));
}

/**
 * How far a body that meets the solid would have to be moved along its own axis, forward or back,
 * whichever is less, to clear it; mm. `null` when that is more than {@link FARTHEST_OVERLAP}, or the
 * body is a point.
 */
export function overlap(
  { tree }: Pick<Solid, 'tree'>,
  body: Body,
  above: Above | null = null,
  wanted?: (triangle: number) => boolean,
): number | null {
  const { axis, depth, cutout, flange } = body;
  if (flange === 0) return null;
  const { triangles } = tree;
  const reach = (k: 0 | 1 | 2) => Math.abs(axis[k]) * FARTHEST_OVERLAP;
  const low: Vec3 = [body.low[0] - reach(0), body.low[1] - reach(1), body.low[2] - reach(2)];
  const high: Vec3 = [body.high[0] + reach(0), body.high[1] + reach(1), body.high[2] + reach(2)];
  let [forward, back] = [0, 0];
  const part = (k: number, radius: number, behind: number) => {
    if (!load(triangles, k, body, radius)) return;
    clip(0, 0, 1, -FARTHEST_OVERLAP - depth);
    clip(0, 0, -1, -FARTHEST_OVERLAP - depth);
    if (above) cutAbove(body, above);
    const range = heights(radius);
    if (!range) return;
    forward = Math.max(forward, range[1] + behind);
    back = Math.max(back, -range[0]);
  };
  const column = { at: body.at, across: body.across, radius: Math.max(flange, cutout) };
  const visit = (k: number, triangle: number) => {
    if (wanted && !wanted(triangle)) return false;
    part(k, cutout, depth);
    part(k, flange, 0);
    return false;
  };
  visitBox(tree, low, high, visit, column);
  const least = Math.min(forward, back);
  return least > 0 && least < FARTHEST_OVERLAP ? least : null;
}

/** Lowest and highest place of what is left of the triangle within `radius` of the axis. */
function heights(radius: number): [number, number] | null {
  const { n, p } = cut;
  let [least, most] = [Infinity, -Infinity];
  const put = (z: number) => {
    if (z < least) least = z;
    if (z > most) most = z;
  };
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    const [x, y, z] = [p[3 * i] as number, p[3 * i + 1] as number, p[3 * i + 2] as number];
    if (x * x + y * y <= radius * radius) put(z);
    const [dx, dy, dz] = [
      (p[3 * j] as number) - x,
      (p[3 * j + 1] as number) - y,
      (p[3 * j + 2] as number) - z,
    ];
    // Where the edge goes through the cylinder.
    const size = dx * dx + dy * dy;
    if (size === 0) continue;
    const half = -(x * dx + y * dy) / size;
    const root = half * half - (x * x + y * y - radius * radius) / size;
    if (root < 0) continue;
    const s = Math.sqrt(root);
    if (half - s >= 0 && half - s <= 1) put(z + dz * (half - s));
    if (half + s >= 0 && half + s <= 1) put(z + dz * (half + s));
  }
  rim(radius, put);
  return least <= most ? [least, most] : null;
}

/** The lowest and the highest place of the triangle's plane on the cylinder, where it has them. */
function rim(radius: number, put: (z: number) => void): void {
  const { n, p } = cut;
  if (n < 3) return;
  const at = (i: number, k: number) => p[3 * i + k] as number;
  let [nx, ny, nz] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    nx += (at(i, 1) - at(j, 1)) * (at(i, 2) + at(j, 2));
    ny += (at(i, 2) - at(j, 2)) * (at(i, 0) + at(j, 0));
    nz += (at(i, 0) - at(j, 0)) * (at(i, 1) + at(j, 1));
  }
  if (Math.abs(nz) < 1e-9) return;
  const slope = Math.sqrt(nx * nx + ny * ny) / nz;
  const flat = slope === 0;
  const [ux, uy] = flat ? [1, 0] : [nx / (slope * nz), ny / (slope * nz)];
  for (const sign of [1, -1]) {
    const [x, y] = [sign * radius * ux, sign * radius * uy];
    let inside = true;
    for (let i = 0; i < n && inside; i++) {
      const j = i + 1 === n ? 0 : i + 1;
      const turn = (at(j, 0) - at(i, 0)) * (y - at(i, 1)) - (at(j, 1) - at(i, 1)) * (x - at(i, 0));
      inside = turn * nz >= 0;
    }
    if (inside) put(at(0, 2) - (nx * (x - at(0, 0)) + ny * (y - at(0, 1))) / nz);
  }
}
