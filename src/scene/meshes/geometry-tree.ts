import type { BufferGeometry } from 'three';
import { buildTriangleTree, type TriangleTree, type Vec3 } from '../../geometry';

/** The triangles of a geometry in the engine's own tree; `null` where there are none. */
export function geometryTree(geometry: BufferGeometry): TriangleTree | null {
  const position = geometry.getAttribute('position');
  const index = geometry.index;
  const vertices = Array.from(
    { length: position.count },
    (_, i): Vec3 => [position.getX(i), position.getY(i), position.getZ(i)],
  );
  const corner = (k: number) => (index ? index.getX(k) : k);
  const triangles = Array.from(
    { length: Math.floor((index?.count ?? position.count) / 3) },
    (_, t) => [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)] as const,
  );
  return buildTriangleTree(vertices, triangles);
}
