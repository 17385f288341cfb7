/** Whether a speaker's round body touches a solid: exactly, triangle by triangle. */
import { along } from '../vector';
import type { Body } from './body';
import { isInside, type Solid } from './solid';
import { type Above, clip, cut, cutAbove, load } from './triangle-in-body';
import { visitBox } from './visit-box';

/** Touching without pressing is no collision, mm. */
const TOUCH = 1e-6;

/** A flange is a disc this thick either way, mm: with none, rounding would cut all of it away. */
const THIN = 1e-6;

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
      partMeets(triangles, k, body, body.flange, -THIN, THIN, above);
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
