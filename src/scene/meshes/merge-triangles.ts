import { BufferAttribute, BufferGeometry } from 'three';
import type { Vec3 } from '../../geometry';

/** Positions and triangles of several geometries, each from its own origin, in one, or `null` when there are none. */
export function mergeTriangles(
  placed: readonly { geometry: BufferGeometry; at: Vec3 }[],
): BufferGeometry | null {
  const positions: number[] = [];
  const index: number[] = [];
  for (const { geometry, at } of placed) {
    const position = geometry.getAttribute('position');
    if (!position) continue;
    const base = positions.length / 3;
    for (let i = 0; i < position.count; i++) {
      positions.push(position.getX(i) + at[0], position.getY(i) + at[1], position.getZ(i) + at[2]);
    }
    const own = geometry.index;
    const count = own?.count ?? position.count;
    for (let i = 0; i < count; i++) index.push(base + (own ? own.getX(i) : i));
  }
  if (index.length === 0) return null;
  const merged = new BufferGeometry();
  merged.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
  merged.setIndex(index);
  return merged;
}
