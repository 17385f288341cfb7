import type { MeshShape } from '../input';
import type { Vec3 } from '../vector';

/**
 * Volume of a closed mesh, mm³: the signed tetrahedra between one point and every triangle
 * (divergence theorem). Positive where triangles run anticlockwise seen from outside.
 */
export function meshVolume({ vertices, triangles }: MeshShape): number {
  // Measured from one of its own corners: far from the origin, large terms would cancel.
  const [ox, oy, oz] = vertices[0] ?? [0, 0, 0];
  let sum = 0;
  for (const [i, j, k] of triangles) {
    const [a, b, c] = [vertices[i], vertices[j], vertices[k]] as [Vec3, Vec3, Vec3];
    const [ax, ay, az] = [a[0] - ox, a[1] - oy, a[2] - oz];
    const [bx, by, bz] = [b[0] - ox, b[1] - oy, b[2] - oz];
    const [cx, cy, cz] = [c[0] - ox, c[1] - oy, c[2] - oz];
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

/** mm³ in a litre. */
export const LITRE = 1e6;
