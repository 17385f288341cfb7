/** How often triangles wind round a point. */
import type { Vec3 } from '../../vector';
import type { TriangleTree } from '../triangle-tree';

/**
 * How often the chosen triangles wind round a point: ±1 inside what they close, 0 outside, by its
 * sign the side their corners run anticlockwise on; between, where they close nothing.
 * Solid angles by Van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30(2), 1983.
 */
export function windingRound(
  { triangles, order }: TriangleTree,
  [x, y, z]: Vec3,
  isChosen: (triangle: number) => boolean,
): number {
  let sum = 0;
  for (let i = 0; i < order.length; i++) {
    if (!isChosen(order[i] as number)) continue;
    const k = 9 * i;
    const n = (j: number) => triangles[k + j] as number;
    const [ax, ay, az] = [n(0) - x, n(1) - y, n(2) - z];
    const [bx, by, bz] = [ax + n(3), ay + n(4), az + n(5)];
    const [cx, cy, cz] = [ax + n(6), ay + n(7), az + n(8)];
    const a = Math.sqrt(ax * ax + ay * ay + az * az);
    const b = Math.sqrt(bx * bx + by * by + bz * bz);
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
    const det = ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx);
    const below =
      a * b * c +
      (ax * bx + ay * by + az * bz) * c +
      (bx * cx + by * cy + bz * cz) * a +
      (cx * ax + cy * ay + cz * az) * b;
    sum += 2 * Math.atan2(det, below);
  }
  return sum / (4 * Math.PI);
}
