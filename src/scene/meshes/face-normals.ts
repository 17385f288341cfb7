/** Normals of triangles, and their means round a corner. */
import type { Vec3 } from '../../geometry';
import type { WeldedTopology } from './topology';

/** A fold sharper than this is an edge, degrees. By eye. */
const CREASE = Math.cos((38 * Math.PI) / 180);

export interface Faces {
  /** As long as twice the area, so that large neighbours count for more. */
  area: Float64Array;
  unit: Float64Array;
  /** Whether two triangles meet in a real edge. */
  creased(a: number, b: number): boolean;
}

// Flat arrays and plain numbers, not points: a figure is given other normals in every frame of a drag.
export function faceNormals(vertices: readonly Vec3[], { corner, vertex }: WeldedTopology): Faces {
  const area = new Float64Array(corner.length);
  const unit = new Float64Array(corner.length);
  for (let c = 0; c < corner.length; c += 3) {
    const o = vertices[vertex[corner[c] as number] as number] as Vec3;
    const p = vertices[vertex[corner[c + 1] as number] as number] as Vec3;
    const q = vertices[vertex[corner[c + 2] as number] as number] as Vec3;
    const ax = p[0] - o[0];
    const ay = p[1] - o[1];
    const az = p[2] - o[2];
    const bx = q[0] - o[0];
    const by = q[1] - o[1];
    const bz = q[2] - o[2];
    const x = ay * bz - az * by;
    const y = az * bx - ax * bz;
    const z = ax * by - ay * bx;
    area[c] = x;
    area[c + 1] = y;
    area[c + 2] = z;
    const l = Math.sqrt(x * x + y * y + z * z);
    const flat = !(l > 0);
    unit[c] = flat ? 0 : x / l;
    unit[c + 1] = flat ? 0 : y / l;
    unit[c + 2] = flat ? 1 : z / l;
  }
  return { area, unit, creased: (a, b) => likeness(unit, a, b) < CREASE };
}

const likeness = (unit: Float64Array, a: number, b: number): number =>
  (unit[3 * a] as number) * (unit[3 * b] as number) +
  (unit[3 * a + 1] as number) * (unit[3 * b + 1] as number) +
  (unit[3 * a + 2] as number) * (unit[3 * b + 2] as number);

/**
 * Mean normal of the triangles round a welded vertex, written to `out`: of all for the contour, of
 * those that face like `like` for the light.
 */
export function meanNormal(
  { area, unit }: Faces,
  { start, around }: WeldedTopology,
  vertex: number,
  like: number | null,
  out: Float32Array,
  to: number,
): void {
  let x = 0;
  let y = 0;
  let z = 0;
  const end = start[vertex + 1] as number;
  for (let i = start[vertex] as number; i < end; i++) {
    const face = around[i] as number;
    if (like !== null && likeness(unit, face, like) < CREASE) continue;
    x += area[3 * face] as number;
    y += area[3 * face + 1] as number;
    z += area[3 * face + 2] as number;
  }
  const l = Math.sqrt(x * x + y * y + z * z);
  if (l > 0) {
    out[to] = x / l;
    out[to + 1] = y / l;
    out[to + 2] = z / l;
  } else {
    out[to] = like === null ? 0 : (unit[3 * like] as number);
    out[to + 1] = like === null ? 0 : (unit[3 * like + 1] as number);
    out[to + 2] = like === null ? 1 : (unit[3 * like + 2] as number);
  }
}
