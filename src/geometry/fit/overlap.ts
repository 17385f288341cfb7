import type { Vec3 } from '../vector';
import type { Body } from './body';
import type { Solid } from './solid';
import { type Above, cut, cutAbove, load } from './triangle-in-body';
import { visitBox } from './visit-box';

/** Overlaps are told up to this; deeper ones have no millimetres, mm. Choice of ours. */
export const FARTHEST_OVERLAP = 400;

const EVERYWHERE: readonly [Vec3, Vec3] = [
  [-Infinity, -Infinity, -Infinity],
  [Infinity, Infinity, Infinity],
];

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
  const { depth, cutout, flange } = body;
  if (flange === 0) return null;
  const { triangles } = tree;
  let [forward, back] = [0, 0];
  const part = (k: number, radius: number, behind: number) => {
    if (!load(triangles, k, body, radius)) return;
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
  // All along the column: how far a solid goes on is told by its far side alone.
  visitBox(tree, EVERYWHERE[0], EVERYWHERE[1], visit, column);
  const least = Math.min(forward, back);
  return least > 0 && least < FARTHEST_OVERLAP ? least : null;
}

/** So far past its end an edge still counts, as a part of it: no corner is lost to rounding. */
const SEAM = 1e-9;

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
    if (x * x + y * y <= radius * radius * (1 + SEAM)) put(z);
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
    for (const t of [half - s, half + s]) if (t >= -SEAM && t <= 1 + SEAM) put(z + dz * t);
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
      inside = turn * nz >= -SEAM * nz * nz;
    }
    if (inside) put(at(0, 2) - (nx * (x - at(0, 0)) + ny * (y - at(0, 1))) / nz);
  }
}
