import type { Vec3 } from '../../vector';

type Triangle = readonly [number, number, number];

/** Corners nearer than about this are one, mm. */
const FINE = 1e-4;

/** For each corner the first one in its place. */
function samePlaces(vertices: readonly Vec3[]): Int32Array {
  const firsts = new Int32Array(vertices.length);
  const known = new Map<number, number>();
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i] as Vec3;
    const x = Math.round(v[0] / FINE);
    const y = Math.round(v[1] / FINE);
    const z = Math.round(v[2] / FINE);
    // Another place with the same mark, which hardly ever is, takes the next.
    for (let mark = x + 1e5 * Math.PI * y + 1e7 * Math.E * z; ; mark += 0.5) {
      const first = known.get(mark);
      if (first === undefined) {
        known.set(mark, i);
        firsts[i] = i;
        break;
      }
      const w = vertices[first] as Vec3;
      if (
        Math.round(w[0] / FINE) === x &&
        Math.round(w[1] / FINE) === y &&
        Math.round(w[2] / FINE) === z
      ) {
        firsts[i] = first;
        break;
      }
    }
  }
  return firsts;
}

/** The parts of a mesh that hang together by shared corners: each is a body of its own. */
export function piecesOf(
  vertices: readonly Vec3[],
  triangles: readonly Triangle[],
): { vertices: Vec3[]; triangles: Triangle[] }[] {
  const parent = samePlaces(vertices);
  const one = parent.slice();
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r] as number;
    parent[i] = r;
    return r;
  };
  for (const [a, b, c] of triangles) {
    parent[root(b)] = root(a);
    parent[root(c)] = root(a);
  }
  const pieces = new Map<
    number,
    { vertices: Vec3[]; triangles: Triangle[]; at: Map<number, number> }
  >();
  for (const t of triangles) {
    const key = root(t[0]);
    let piece = pieces.get(key);
    if (!piece) {
      piece = { vertices: [], triangles: [], at: new Map() };
      pieces.set(key, piece);
    }
    const { vertices: own, at } = piece;
    const [a, b, c] = t.map((i) => {
      const k = one[i] as number;
      const known = at.get(k);
      if (known !== undefined) return known;
      own.push(vertices[k] as Vec3);
      at.set(k, own.length - 1);
      return own.length - 1;
    }) as [number, number, number];
    if (a !== b && b !== c && c !== a) piece.triangles.push([a, b, c]);
  }
  return [...pieces.values()];
}
