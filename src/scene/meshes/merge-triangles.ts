import { BufferAttribute, BufferGeometry } from 'three';

/** Positions and triangles of several geometries in one, or `null` when there are none. */
export function mergeTriangles(geometries: readonly BufferGeometry[]): BufferGeometry | null {
  const positions: number[] = [];
  const index: number[] = [];
  for (const geometry of geometries) {
    const position = geometry.getAttribute('position');
    if (!position) continue;
    const base = positions.length / 3;
    for (let i = 0; i < position.count; i++) {
      positions.push(position.getX(i), position.getY(i), position.getZ(i));
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
