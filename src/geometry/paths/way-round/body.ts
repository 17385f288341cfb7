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
  /** Its faces, in a tree that is built when first asked for: near misses need none. */
  tree(): TriangleTree | null;
  /** The faces beside its edges, made when first asked for; null for a sheet. */
  faces(): Faces | null;
  /** A solid with an inside, wound outward. */
  closed: boolean;
  /** Low x, y, z, high x, y, z, and the diagonal. */
  bounds: Float64Array;
}

/** Which way the faces beside a solid's edges look. */
export interface Faces {
  /** Four numbers a face: its unit normal, outward, and how far along that its plane lies, mm. */
  planes: Float64Array;
  /** The two faces beside each edge; −1 −1 where there are more or fewer. */
  beside: Int32Array;
}

type Triangle = readonly [number, number, number];

/** Below this sine of the angle between two faces their edge counts as flat. */
const FLAT_SINE = 1e-4;

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
  const { ends, faces } = sidesOf(vertices.length, triangles);
  const edges: number[] = [];
  const outward: number[] = [];
  const beside: number[] = [];
  for (let e = 0; 2 * e < ends.length; e++) {
    const a = ends[2 * e] as number;
    const b = ends[2 * e + 1] as number;
    const off = outwardOf(vertices, a, b, faces, 5 * e, normals, sheet);
    if (!off) continue;
    edges.push(a, b);
    outward.push(off[0], off[1], off[2]);
    if (faces[5 * e] === 2) beside.push(faces[5 * e + 1] as number, faces[5 * e + 3] as number);
    else beside.push(-1, -1);
  }
  let tree: TriangleTree | null | undefined;
  let made: Faces | null = null;
  return {
    id,
    corners: Float64Array.from(vertices.flat()),
    edges: Int32Array.from(edges),
    outward: Float64Array.from(outward),
    tree() {
      if (tree === undefined) tree = buildTriangleTree(vertices, triangles);
      return tree;
    },
    faces() {
      if (sheet) return null;
      made ??= { planes: planesOf(vertices, triangles), beside: Int32Array.from(beside) };
      return made;
    },
    closed: !sheet,
    bounds: boundsOf(vertices),
  };
}

/**
 * The edges of a mesh: two corners each, and five numbers on the faces at it: how many, and of the
 * first two the triangle and the corner across.
 */
function sidesOf(corners: number, triangles: readonly Triangle[]) {
  const known = new Map<number, number>();
  const ends: number[] = [];
  const faces: number[] = [];
  for (let t = 0; t < triangles.length; t++) {
    const triangle = triangles[t] as Triangle;
    for (let k = 0; k < 3; k++) {
      const p = triangle[k] as number;
      const q = triangle[(k + 1) % 3] as number;
      const apex = triangle[(k + 2) % 3] as number;
      const key = p < q ? p * corners + q : q * corners + p;
      const e = known.get(key);
      if (e === undefined) {
        known.set(key, faces.length);
        ends.push(p, q);
        faces.push(1, t, apex, -1, -1);
        continue;
      }
      faces[e] = (faces[e] as number) + 1;
      faces[e + 3] = t;
      faces[e + 4] = apex;
    }
  }
  return { ends, faces };
}

/** Low x, y, z, high x, y, z, and the diagonal. */
export function boundsOf(vertices: readonly Vec3[]): Float64Array {
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

/** Four numbers a triangle: its unit normal, or 0 0 0, and how far along that its plane lies. */
export function planesOf(vertices: readonly Vec3[], triangles: readonly Triangle[]): Float64Array {
  const planes = new Float64Array(4 * triangles.length);
  for (let t = 0; t < triangles.length; t++) {
    const triangle = triangles[t] as Triangle;
    const n = normalOf(vertices, triangle);
    planes.set(n, 4 * t);
    planes[4 * t + 3] = dot(n, vertices[triangle[0]] as Vec3);
  }
  return planes;
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
  faces: readonly number[],
  f: number,
  normals: readonly Vec3[],
  sheet: boolean,
): Vec3 | null {
  const some = faces[f] as number;
  if (some > 2) return [0, 0, 0];
  if (some === 1) return awayFrom(vertices, at, to, faces[f + 2] as number);
  const m = normals[faces[f + 1] as number] as Vec3;
  const n = normals[faces[f + 3] as number] as Vec3;
  // Whether the second face falls below the first one's plane, and by how much they turn.
  const rise = dot(m, sub(vertices[faces[f + 4] as number] as Vec3, vertices[at] as Vec3));
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
  const tree = body.tree();
  return tree !== null && visitCrossed(tree, from, to, 0, 1, () => true);
}
