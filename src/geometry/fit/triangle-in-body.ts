/** One triangle seen from a speaker's body, cut down to the part that counts. */
import type { Vec3 } from '../vector';
import type { Body } from './body';

/** A plane that cuts the body: what lies behind it does not count. `height` above it counts. */
export interface Above {
  point: Vec3;
  normal: Vec3;
  height: number;
}

// One triangle at a time in the body's own axes (x, y across it, z out of its front), cut down in
// place to what lies between two heights. Shared, since no visit asks the question again.
const MOST = 12;
export const cut = { n: 0, p: new Float64Array(3 * MOST) };
const spare = { n: 0, p: new Float64Array(3 * MOST) };

/** @returns false where the triangle lies wholly to one side of the cylinder of that radius */
export function load(triangles: Float64Array, k: number, body: Body, radius: number): boolean {
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
export function clip(nx: number, ny: number, nz: number, least: number): void {
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

/** Cuts away what does not count. */
export function cutAbove(
  { at, axis, across: [a, b] }: Body,
  { point, normal, height }: Above,
): void {
  const n = normal;
  const on = (d: Vec3) => d[0] * n[0] + d[1] * n[1] + d[2] * n[2];
  const offset = on([at[0] - point[0], at[1] - point[1], at[2] - point[2]]);
  clip(on(a), on(b), on(axis), height - offset);
}
