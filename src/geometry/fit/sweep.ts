import type { MeshShape } from '../input';
import { cross, sub, type Vec3 } from '../vector';

/**
 * All the room a closed mesh takes on its way along X from `first` to `last` (mm, first ≤ last), as
 * one closed mesh: what faces forward where it begins, what faces rearward where it ends, and
 * between them whatever its outline, seen along the way, sweeps. Parts may overlap.
 */
export function sweepAlongX(mesh: MeshShape, first: number, last: number): MeshShape {
  const { vertices } = mesh;
  const n = vertices.length;
  const at = (dx: number) => vertices.map((p): Vec3 => [p[0] + dx, p[1], p[2]]);
  const triangles: [number, number, number][] = [];
  const rim = new Map<string, { i: number; j: number; times: number }>();
  for (const [a, b, c] of mesh.triangles) {
    const [p, q, r] = [vertices[a] as Vec3, vertices[b] as Vec3, vertices[c] as Vec3];
    const forward = cross(sub(q, p), sub(r, p))[0] < 0;
    triangles.push(forward ? [a, b, c] : [a + n, b + n, c + n]);
    if (!forward) continue;
    for (const [i, j] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      const known = rim.get(key);
      if (!known) rim.set(key, { i, j, times: 1 });
      else known.times += known.i === i ? 1 : -1;
    }
  }
  for (const { i, j, times } of rim.values()) {
    for (let k = 0; k < Math.abs(times); k++) {
      const [from, to] = times > 0 ? [i, j] : [j, i];
      triangles.push([to, from, from + n], [to, from + n, to + n]);
    }
  }
  return { shape: 'mesh', vertices: [...at(first), ...at(last)], triangles };
}
