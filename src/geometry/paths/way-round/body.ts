/**
 * What a taut string is pulled round: bodies of flat faces, reduced to the edges it can bend over.
 * A shortest path bends only over edges that stand out (Sharir & Schorr, "On shortest paths in
 * polyhedral spaces", SIAM J. Computing 15, 1986), so flat and hollow edges are left out.
 */
import { cross, dot, length, sub, type Vec3 } from '../../vector';
import { buildTriangleTree } from '../build-triangle-tree';
import { type TriangleTree, visitCrossed } from '../triangle-tree';

export interface Body {
  /** The panel or obstacle it is, or is part of. */
  id: string;
  /** Three numbers a corner. */
  corners: Float64Array;
  /** Two corners an edge. */
  edges: Int32Array;
  /** Three numbers an edge, pointing off the body; 0 0 0 where a string may pass on either side. */
  outward: Float64Array;
  tree: TriangleTree | null;
  /** A solid with an inside, wound outward. */
  closed: boolean;
  /** Low x, y, z, high x, y, z, and the diagonal. */
  bounds: Float64Array;
}

type Triangle = readonly [number, number, number];

/** Below this sine of the angle between two faces their edge counts as flat. */
const FLAT_SINE = 1e-4;

interface Side {
  triangle: number;
  /** Corner across the edge. */
  apex: number;
}

/**
 * The body of a triangle mesh. Corners in the same place count as one.
 * @param sheet true for a thin sheet that can be passed on either side: every edge that is not flat
 * bends a string; false for a closed solid, wound outward: only edges that stand out do
 */
export function bodyOf(
  id: string,
  vertices: readonly Vec3[],
  triangles: readonly Triangle[],
  sheet: boolean,
): Body {
  const normals = triangles.map((t) => normalOf(vertices, t));
  const sides = new Map<number, { a: number; b: number; of: Side[] }>();
  triangles.forEach(([a, b, c], triangle) => {
    for (const [p, q, apex] of [
      [a, b, c],
      [b, c, a],
      [c, a, b],
    ] as const) {
      const key = Math.min(p, q) * vertices.length + Math.max(p, q);
      const known = sides.get(key);
      if (known) known.of.push({ triangle, apex });
      else sides.set(key, { a: p, b: q, of: [{ triangle, apex }] });
    }
  });
  const edges: number[] = [];
  const outward: number[] = [];
  for (const { a, b, of } of sides.values()) {
    const off = outwardOf(vertices, a, b, of, normals, sheet);
    if (!off) continue;
    edges.push(a, b);
    outward.push(...off);
  }
  return {
    id,
    corners: Float64Array.from(vertices.flat()),
    edges: Int32Array.from(edges),
    outward: Float64Array.from(outward),
    tree: buildTriangleTree(vertices, triangles),
    closed: !sheet,
    bounds: boundsOf(vertices),
  };
}

function boundsOf(vertices: readonly Vec3[]): Float64Array {
  const bounds = new Float64Array(7).fill(Infinity, 0, 3).fill(-Infinity, 3, 6);
  for (const v of vertices)
    for (const k of [0, 1, 2] as const) {
      bounds[k] = Math.min(bounds[k] as number, v[k]);
      bounds[3 + k] = Math.max(bounds[3 + k] as number, v[k]);
    }
  const [x, y, z, X, Y, Z] = bounds as unknown as [number, number, number, number, number, number];
  bounds[6] = vertices.length > 0 ? length([X - x, Y - y, Z - z]) : 0;
  return bounds;
}

function normalOf(vertices: readonly Vec3[], [a, b, c]: Triangle): Vec3 {
  const p = vertices[a] as Vec3;
  const n = cross(sub(vertices[b] as Vec3, p), sub(vertices[c] as Vec3, p));
  const l = length(n);
  return l > 0 ? [n[0] / l, n[1] / l, n[2] / l] : [0, 0, 0];
}

/** Which way an edge stands out; null where no string bends over it. */
function outwardOf(
  vertices: readonly Vec3[],
  at: number,
  to: number,
  of: readonly Side[],
  normals: readonly Vec3[],
  sheet: boolean,
): Vec3 | null {
  const [one, two] = of;
  if (!one || of.length > 2) return [0, 0, 0];
  if (!two) return awayFrom(vertices, at, to, one.apex);
  const m = normals[one.triangle] as Vec3;
  const n = normals[two.triangle] as Vec3;
  const across = sub(vertices[two.apex] as Vec3, vertices[at] as Vec3);
  // Whether the second face falls below the first one's plane, and by how much they turn.
  const rise = dot(m, across);
  const bent = rise !== 0 && (length(cross(m, n)) > FLAT_SINE || dot(m, n) < 0);
  if (sheet) return bent ? [0, 0, 0] : null;
  return bent && rise < 0 ? [m[0] + n[0], m[1] + n[1], m[2] + n[2]] : null;
}

/** From a free edge off its only face, along the face. */
function awayFrom(vertices: readonly Vec3[], from: number, to: number, apex: number): Vec3 {
  const p = vertices[from] as Vec3;
  const way = sub(vertices[to] as Vec3, p);
  const inner = sub(vertices[apex] as Vec3, p);
  const square = dot(way, way);
  const k = square > 0 ? dot(inner, way) / square : 0;
  const off: Vec3 = [k * way[0] - inner[0], k * way[1] - inner[1], k * way[2] - inner[2]];
  const l = length(off);
  return l > 0 ? [off[0] / l, off[1] / l, off[2] / l] : [0, 0, 0];
}

/** Whether a segment passes through the body's faces. */
export function crosses(body: Body, from: Vec3, to: Vec3): boolean {
  return body.tree !== null && visitCrossed(body.tree, from, to, 0, 1, () => true);
}

/** The parts of a mesh that hang together by shared corners: each is a body of its own. */
export function piecesOf(
  vertices: readonly Vec3[],
  triangles: readonly Triangle[],
): { vertices: Vec3[]; triangles: Triangle[] }[] {
  const same = new Map<string, number>();
  const parent = vertices.map((v, i) => {
    const key = v.map((x) => Math.round(x * 1e4)).join();
    const known = same.get(key);
    if (known === undefined) same.set(key, i);
    return known ?? i;
  });
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
