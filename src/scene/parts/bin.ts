/** Whoever creates a geometry disposes it: a bin per owner, emptied when its things are rebuilt. */
import type { BufferGeometry } from 'three';

export interface Bin {
  keep<T extends BufferGeometry>(geometry: T): T;
  empty(): void;
}

let alive = 0;

/** Geometries kept by all bins now; a test holds this still over many rebuilds. */
export const geometriesAlive = (): number => alive;

export function createBin(): Bin {
  const kept = new Set<BufferGeometry>();
  return {
    keep(geometry) {
      kept.add(geometry);
      alive++;
      return geometry;
    },
    empty() {
      for (const geometry of kept) geometry.dispose();
      alive -= kept.size;
      kept.clear();
    },
  };
}
