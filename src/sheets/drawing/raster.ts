/**
 * The drawing as a fine grid: how far away the nearest surface is in each cell, and how it is toned.
 * From it lines are known to be hidden, and areas of one tone are traced; the grid itself is never
 * printed. (Depth buffer: Catmull 1974, as in any textbook of computer graphics.)
 */
import { direction, dot, type Vec3 } from '../../geometry';
import type { Camera, Projected } from './camera';
import { cornerNormals } from './normals';
import { type Solid, type Tone, turn } from './solids';

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export interface Grid {
  box: Box;
  /** Cells per mm of the drawing. */
  fine: number;
  width: number;
  height: number;
  depth: Float32Array;
  /** Tone and shade of what is seen, or −1. */
  label: Int8Array;
}

export const TONES: readonly Tone[] = ['panel', 'dash', 'seat', 'dark', 'person'];
/** Shades of each tone, from lit to dark. */
export const SHADES = 4;

/** Light from above, ahead and the left, as drawing practice has it. */
const LIGHT = direction([-0.35, -0.45, 0.82]) as Vec3;
/** Where one shade ends and the next begins, by the cosine of the light's angle; chosen by eye. */
const STEPS = [0.72, 0.3, -0.1];

export function createGrid(box: Box, fine: number): Grid {
  const width = Math.max(1, Math.ceil((box.right - box.left) * fine));
  const height = Math.max(1, Math.ceil((box.bottom - box.top) * fine));
  return {
    box,
    fine,
    width,
    height,
    depth: new Float32Array(width * height).fill(Number.POSITIVE_INFINITY),
    label: new Int8Array(width * height).fill(-1),
  };
}

/** Draws a solid's triangles into the grid; one-sided ones only where they face the eye. */
export function rasterInPlace(grid: Grid, solid: Solid, camera: Camera): void {
  if (solid.glass) return;
  const { left, top } = grid.box;
  const tone = TONES.indexOf(solid.tone) * SHADES;
  const flat = solid.vertices.map((vertex): Projected => {
    const [x, y, depth] = camera.project(vertex);
    return [(x - left) * grid.fine, (y - top) * grid.fine, depth];
  });
  const normals = cornerNormals(solid);
  solid.triangles.forEach((triangle, number) => {
    const [a, b, c] = triangle.map((i) => flat[i]) as [Projected, Projected, Projected];
    const area = turn(a, b, c);
    if (area === 0 || (solid.oneSided && area > 0)) return;
    const lights = triangle.map((vertex, corner) => {
      const at = 9 * number + 3 * corner;
      const normal: Vec3 = [normals[at], normals[at + 1], normals[at + 2]] as unknown as Vec3;
      // A thin sheet is lit from the side it is seen from.
      const towards = camera.towardsEye(solid.vertices[vertex] as Vec3);
      return (dot(normal, towards) < 0 ? -1 : 1) * dot(normal, LIGHT);
    }) as [number, number, number];
    fillInPlace(grid, [a, b, c], area, lights, tone);
  });
}

function shadeOf(light: number): number {
  for (let i = 0; i < STEPS.length; i++) if (light > (STEPS[i] as number)) return i;
  return STEPS.length;
}

function fillInPlace(
  { width, height, depth, label }: Grid,
  [[ax, ay, az], [bx, by, bz], [cx, cy, cz]]: readonly [Projected, Projected, Projected],
  area: number,
  [la, lb, lc]: readonly [number, number, number],
  tone: number,
): void {
  const fromX = Math.max(0, Math.floor(Math.min(ax, bx, cx)));
  const toX = Math.min(width - 1, Math.ceil(Math.max(ax, bx, cx)));
  const fromY = Math.max(0, Math.floor(Math.min(ay, by, cy)));
  const toY = Math.min(height - 1, Math.ceil(Math.max(ay, by, cy)));
  for (let y = fromY; y <= toY; y++) {
    for (let x = fromX; x <= toX; x++) {
      const [px, py] = [x + 0.5, y + 0.5];
      const u = ((bx - px) * (cy - py) - (by - py) * (cx - px)) / area;
      const v = ((cx - px) * (ay - py) - (cy - py) * (ax - px)) / area;
      const w = 1 - u - v;
      // A little over the edge, so that no crack opens between neighbours.
      if (u < -1e-4 || v < -1e-4 || w < -1e-4) continue;
      const z = u * az + v * bz + w * cz;
      const at = y * width + x;
      if (z < (depth[at] as number)) {
        depth[at] = z;
        label[at] = tone + shadeOf(u * la + v * lb + w * lc);
      }
    }
  }
}
