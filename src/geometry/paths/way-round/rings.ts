/** Round bodies from rings of points. */
import { cross, direction, type Vec3 } from '../../vector';

/** Two unit vectors square to a unit vector and to each other, right-handed with it. */
export function across(axis: Vec3): [Vec3, Vec3] {
  const start: Vec3 = Math.abs(axis[1]) < 0.8 ? [0, 1, 0] : [1, 0, 0];
  const side = direction(cross(start, axis)) ?? [1, 0, 0];
  return [side, cross(axis, side)];
}

/** Rings of `n` points, first to last along their right-handed axis, closed by a tip at each end. */
export function closeRings(rings: readonly (readonly Vec3[])[], tips: readonly [Vec3, Vec3]) {
  const n = rings[0]?.length ?? 0;
  const vertices = [...rings.flat(), ...tips];
  const triangles: (readonly [number, number, number])[] = [];
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    for (let k = 0; k + 1 < rings.length; k++) {
      const [a, b] = [k * n + i, k * n + j];
      triangles.push([a, b, b + n], [a, b + n, a + n]);
    }
    const [first, last] = [rings.length * n, (rings.length - 1) * n];
    triangles.push([first, j, i], [first + 1, last + i, last + j]);
  }
  return { vertices, triangles };
}
