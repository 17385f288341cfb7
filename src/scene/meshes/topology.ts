import type { MeshShape, Vec3 } from '../../geometry';

/** How the triangles of a mesh hang together once its doubled corners are one. */
export interface WeldedTopology {
  /** Welded vertex of each triangle's corners, three by three; triangles without area left out. */
  corner: Uint32Array;
  /** Of each welded vertex: its number in the mesh. */
  vertex: Uint32Array;
  /** Triangles round welded vertex v: `around[start[v]]` up to `around[start[v + 1]]`. */
  start: Uint32Array;
  around: Uint32Array;
}

/** Vertices nearer than this are one, mm: meshes come with their patches' seams doubled. */
const WELD = 0.1;
/** Cells to each side of zero that fit a third of a double's whole numbers. */
const CELLS = 2 ** 16;

export function topologyOf(mesh: MeshShape): WeldedTopology {
  const known = new Map<number | string, number>();
  const vertex: number[] = [];
  const number = mesh.vertices.map((p, i) => {
    const key = cellOf(p);
    let n = known.get(key);
    if (n === undefined) {
      n = vertex.push(i) - 1;
      known.set(key, n);
    }
    return n;
  });
  const corner: number[] = [];
  for (const t of mesh.triangles) {
    const [a, b, c] = [number[t[0]] ?? 0, number[t[1]] ?? 0, number[t[2]] ?? 0];
    if (a !== b && b !== c && c !== a) corner.push(a, b, c);
  }
  const start = new Uint32Array(vertex.length + 1);
  for (const v of corner) start[v + 1] = (start[v + 1] as number) + 1;
  for (let v = 0; v < vertex.length; v++)
    start[v + 1] = (start[v + 1] as number) + (start[v] as number);
  const next = start.slice();
  const around = new Uint32Array(corner.length);
  corner.forEach((v, c) => {
    around[next[v] as number] = (c / 3) | 0;
    next[v] = (next[v] as number) + 1;
  });
  return { corner: Uint32Array.from(corner), vertex: Uint32Array.from(vertex), start, around };
}

/** One number for a point's cell; words only for points farther out than a car reaches. */
function cellOf(p: Vec3): number | string {
  const [x, y, z] = [Math.round(p[0] / WELD), Math.round(p[1] / WELD), Math.round(p[2] / WELD)];
  const far = Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) >= CELLS;
  if (far) return `${x},${y},${z}`;
  return ((x + CELLS) * 2 * CELLS + (y + CELLS)) * 2 * CELLS + z + CELLS;
}
