/** Whoever creates a geometry disposes it: a bin per owner, emptied when its things are rebuilt. */
import type { BufferGeometry } from 'three';

export interface Bin {
  keep<T extends BufferGeometry>(geometry: T): T;
  /** Disposes one of them before the others. */
  drop(geometry: BufferGeometry): void;
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
    drop(geometry) {
      if (!kept.delete(geometry)) return;
      geometry.dispose();
      alive--;
    },
    empty() {
      for (const geometry of kept) geometry.dispose();
      alive -= kept.size;
      kept.clear();
    },
  };
}
