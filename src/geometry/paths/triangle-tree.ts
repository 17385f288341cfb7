/**
 * A bounding volume tree over triangles, for asking what a segment crosses. Our own rather than a
 * library's: with it the engine stands on no package, the page's numbers load 39 KiB (gzip) less,
 * and every coordinate stays a double. Built by build-triangle-tree.ts.
 */
import type { Vec3 } from '../vector';

export interface TriangleTree {
  /** Nine numbers a triangle, in leaf order: a corner and the two edges from it. */
  triangles: Float64Array;
  /** The number each of them had when given. */
  order: Int32Array;
  /** Six numbers a node: low x, y, z, high x, y, z. */
  bounds: Float64Array;
  /** Leaf: first triangle. Inner node: its second child; the first is the next node. */
  link: Int32Array;
  /** Leaf: how many triangles. Inner node: 0. */
  count: Int32Array;
  depth: number;
}

/** Edges reach this far over, as a part of the triangle: no line slips between two neighbours. */
const EDGE = 1e-9;

/**
 * Calls `visit` for every triangle the segment meets between the parts `near` and `far` of its
 * length (0 to 1), in no order: with the triangle's number as given, where along the segment it is
 * met (0 to 1), and whether the segment comes out of its back there (the side its corners run
 * clockwise on). Stops as soon as `visit` returns true.
 * @returns whether it was stopped
 */
export function visitCrossed(
  tree: TriangleTree,
  from: Vec3,
  to: Vec3,
  near: number,
  far: number,
  visit: (triangle: number, at: number, emerging: boolean) => boolean,
): boolean {
  const { bounds, link, count, triangles, order } = tree;
  const ox = from[0];
  const oy = from[1];
  const oz = from[2];
  const dx = to[0] - ox;
  const dy = to[1] - oy;
  const dz = to[2] - oz;
  const ix = 1 / dx;
  const iy = 1 / dy;
  const iz = 1 / dz;
  // Which of a box's two faces the segment meets first, along each axis.
  const x0 = ix < 0 ? 3 : 0;
  const y0 = iy < 0 ? 4 : 1;
  const z0 = iz < 0 ? 5 : 2;
  // As numbers for certain: otherwise every place they are compared with is put on the heap.
  const begin = +near;
  const end = +far;
  const waiting = tree.depth <= STACK.length ? STACK : new Int32Array(tree.depth);
  let top = 0;
  let node = 0;
  for (;;) {
    const b = 6 * node;
    // A segment within a face's plane gives 0 · ∞: not a number, which narrows nothing here.
    let enter = begin;
    let leave = end;
    let s = ((bounds[b + x0] as number) - ox) * ix;
    let e = ((bounds[b + 3 - x0] as number) - ox) * ix;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    s = ((bounds[b + y0] as number) - oy) * iy;
    e = ((bounds[b + 5 - y0] as number) - oy) * iy;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    s = ((bounds[b + z0] as number) - oz) * iz;
    e = ((bounds[b + 7 - z0] as number) - oz) * iz;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    if (enter <= leave) {
      const some = count[node] as number;
      if (some === 0) {
        waiting[top] = link[node] as number;
        top += 1;
        node += 1;
        continue;
      }
      const first = link[node] as number;
      for (let i = first; i < first + some; i++) {
        // Möller–Trumbore, J. Graphics Tools 2(1), 1997; both faces.
        const k = 9 * i;
        const ex = triangles[k + 3] as number;
        const ey = triangles[k + 4] as number;
        const ez = triangles[k + 5] as number;
        const fx = triangles[k + 6] as number;
        const fy = triangles[k + 7] as number;
        const fz = triangles[k + 8] as number;
        const hx = dy * fz - dz * fy;
        const hy = dz * fx - dx * fz;
        const hz = dx * fy - dy * fx;
        const det = ex * hx + ey * hy + ez * hz;
        if (det === 0) continue;
        const sx = ox - (triangles[k] as number);
        const sy = oy - (triangles[k + 1] as number);
        const sz = oz - (triangles[k + 2] as number);
        const u = (sx * hx + sy * hy + sz * hz) / det;
        if (u < -EDGE || u > 1 + EDGE) continue;
        const qx = sy * ez - sz * ey;
        const qy = sz * ex - sx * ez;
        const qz = sx * ey - sy * ex;
        const v = (dx * qx + dy * qy + dz * qz) / det;
        if (v < -EDGE || u + v > 1 + EDGE) continue;
        const at = (fx * qx + fy * qy + fz * qz) / det;
        // The determinant is minus the segment's part along the normal.
        if (at >= begin && at <= end && visit(order[i] as number, at, det < 0)) return true;
      }
    }
    if (top === 0) return false;
    top -= 1;
    node = waiting[top] as number;
  }
}

/** Enough for any tree but a hopeless one; shared, since no visit asks the tree again. */
const STACK = new Int32Array(64);
