/**
 * A bounding volume tree over triangles, for asking what a segment crosses. Our own rather than a
 * library's: with it the engine stands on no package, the page's numbers load 39 KiB (gzip) less,
 * and every coordinate stays a double.
 * Built by the surface area heuristic in bins (Wald, "On fast Construction of SAH-based Bounding
 * Volume Hierarchies", 2007).
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

const LEAF = 4;
const BINS = 12;
/** What passing a node costs against testing a triangle: measured, of little influence. */
const NODE_COST = 1.2;
/** Boxes are this much larger than what they hold, mm: a flat one must not be missed by rounding. */
const PAD = 1e-6;
/** Edges reach this far over, as a part of the triangle: no line slips between two neighbours. */
const EDGE = 1e-9;

/** Whole numbers of vertices, three a triangle. @returns null where there is no triangle */
export function buildTriangleTree(
  vertices: readonly Vec3[],
  corners: readonly (readonly [number, number, number])[],
): TriangleTree | null {
  const n = corners.length;
  if (n === 0) return null;
  const low = new Float64Array(3 * n);
  const high = new Float64Array(3 * n);
  for (const [t, [a, b, c]] of corners.entries())
    for (let k = 0; k < 3; k++) {
      const [p, q, r] = [vertices[a]?.[k], vertices[b]?.[k], vertices[c]?.[k]] as [
        number,
        number,
        number,
      ];
      low[3 * t + k] = Math.min(p, q, r);
      high[3 * t + k] = Math.max(p, q, r);
    }
  const order = Int32Array.from({ length: n }, (_, t) => t);
  const nodes = layOutNodes(order, low, high);
  const triangles = new Float64Array(9 * n);
  for (let i = 0; i < n; i++) {
    const [a, b, c] = corners[order[i] as number] as readonly [number, number, number];
    const [p, q, r] = [vertices[a], vertices[b], vertices[c]] as [Vec3, Vec3, Vec3];
    for (let k = 0; k < 3; k++) {
      triangles[9 * i + k] = p[k] as number;
      triangles[9 * i + 3 + k] = (q[k] as number) - (p[k] as number);
      triangles[9 * i + 6 + k] = (r[k] as number) - (p[k] as number);
    }
  }
  return { triangles, order, ...nodes };
}

/** Sorts `order` in place into leaves and lays the nodes out depth first. */
function layOutNodes(order: Int32Array, low: Float64Array, high: Float64Array) {
  const bounds: number[] = [];
  const link: number[] = [];
  const count: number[] = [];
  let depth = 0;

  const place = (start: number, end: number, level: number): void => {
    depth = Math.max(depth, level);
    const node = link.length;
    const box = boxOf(order, low, high, start, end);
    bounds.push(...box.map((x, k) => (k < 3 ? x - PAD : x + PAD)));
    link.push(start);
    count.push(end - start);
    if (end - start <= LEAF) return;
    const middle = split(order, low, high, start, end, box);
    if (middle === null) return;
    count[node] = 0;
    place(start, middle, level + 1);
    link[node] = link.length;
    place(middle, end, level + 1);
  };
  place(0, order.length, 1);
  return {
    bounds: Float64Array.from(bounds),
    link: Int32Array.from(link),
    count: Int32Array.from(count),
    depth,
  };
}

type Box = [number, number, number, number, number, number];

function boxOf(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
): Box {
  const box: Box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (let i = start; i < end; i++) grow(box, low, high, order[i] as number);
  return box;
}

function grow(box: Box, low: Float64Array, high: Float64Array, t: number): void {
  for (let k = 0; k < 3; k++) {
    const [lo, hi] = [low[3 * t + k] as number, high[3 * t + k] as number];
    if (lo < (box[k] as number)) box[k] = lo;
    if (hi > (box[3 + k] as number)) box[3 + k] = hi;
  }
}

/** Half the surface of a box; 0 for an empty one. */
function area([x0, y0, z0, x1, y1, z1]: Box): number {
  const [x, y, z] = [x1 - x0, y1 - y0, z1 - z0];
  return x < 0 ? 0 : x * y + y * z + z * x;
}

/** Parts the triangles where it costs least; null where leaving them together costs less. */
function split(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
  box: Box,
): number | null {
  const total = end - start;
  let best = { cost: Infinity, axis: 0, bin: 0, from: 0, scale: 0 };
  for (let axis = 0; axis < 3; axis++) {
    const middleOf = (t: number) =>
      ((low[3 * t + axis] as number) + (high[3 * t + axis] as number)) / 2;
    let [from, to] = [Infinity, -Infinity];
    for (let i = start; i < end; i++) {
      const m = middleOf(order[i] as number);
      from = Math.min(from, m);
      to = Math.max(to, m);
    }
    if (!(to > from)) continue;
    const scale = BINS / (to - from);
    const boxes = Array.from({ length: BINS }, () => boxOf(order, low, high, 0, 0));
    const held = new Int32Array(BINS);
    for (let i = start; i < end; i++) {
      const t = order[i] as number;
      const bin = Math.min(BINS - 1, Math.floor((middleOf(t) - from) * scale));
      held[bin] = (held[bin] as number) + 1;
      grow(boxes[bin] as Box, low, high, t);
    }
    // Costs of everything left of each cut, then met by those right of it.
    const left = new Float64Array(BINS);
    const run = (bins: number[], put: (bin: number, cost: number) => void) => {
      const sum: Box = boxOf(order, low, high, 0, 0);
      let some = 0;
      for (const bin of bins) {
        const part = boxes[bin] as Box;
        for (let k = 0; k < 3; k++) {
          sum[k] = Math.min(sum[k] as number, part[k] as number);
          sum[3 + k] = Math.max(sum[3 + k] as number, part[3 + k] as number);
        }
        some += held[bin] as number;
        put(bin, area(sum) * some);
      }
    };
    run(UPWARD, (bin, cost) => {
      left[bin] = cost;
    });
    run(DOWNWARD, (bin, cost) => {
      const all = cost + (left[bin - 1] as number);
      if (all < best.cost) best = { cost: all, axis, bin, from, scale };
    });
  }
  if (best.cost === Infinity) return null;
  const whole = area(box);
  if (total <= 2 * LEAF && best.cost + NODE_COST * whole >= total * whole) return null;
  return part(order, start, end, (t) => {
    const m = ((low[3 * t + best.axis] as number) + (high[3 * t + best.axis] as number)) / 2;
    return Math.min(BINS - 1, Math.floor((m - best.from) * best.scale)) < best.bin;
  });
}

const UPWARD = Array.from({ length: BINS - 1 }, (_, i) => i);
const DOWNWARD = Array.from({ length: BINS - 1 }, (_, i) => BINS - 1 - i);

/** Puts those that belong to the left first; the number where the others begin. */
function part(order: Int32Array, start: number, end: number, isLeft: (t: number) => boolean) {
  let at = start;
  for (let i = start; i < end; i++) {
    const t = order[i] as number;
    if (!isLeft(t)) continue;
    order[i] = order[at] as number;
    order[at] = t;
    at += 1;
  }
  return at;
}

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
  const [ox, oy, oz] = from;
  const [dx, dy, dz] = [to[0] - ox, to[1] - oy, to[2] - oz];
  const [ix, iy, iz] = [1 / dx, 1 / dy, 1 / dz];
  const waiting = tree.depth <= STACK.length ? STACK : new Int32Array(tree.depth);
  let top = 0;
  let node = 0;
  for (;;) {
    const b = 6 * node;
    // A segment within a face's plane gives 0 · ∞: not a number, which narrows nothing here.
    let enter = near;
    let leave = far;
    let s = ((bounds[b] as number) - ox) * ix;
    let e = ((bounds[b + 3] as number) - ox) * ix;
    if (ix < 0) [s, e] = [e, s];
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    s = ((bounds[b + 1] as number) - oy) * iy;
    e = ((bounds[b + 4] as number) - oy) * iy;
    if (iy < 0) [s, e] = [e, s];
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    s = ((bounds[b + 2] as number) - oz) * iz;
    e = ((bounds[b + 5] as number) - oz) * iz;
    if (iz < 0) [s, e] = [e, s];
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    if (enter <= leave) {
      const held = count[node] as number;
      if (held === 0) {
        waiting[top] = link[node] as number;
        top += 1;
        node += 1;
        continue;
      }
      const first = link[node] as number;
      for (let i = first; i < first + held; i++) {
        // Möller–Trumbore, J. Graphics Tools 2(1), 1997; both faces.
        const k = 9 * i;
        const [px, py, pz] = [triangles[k], triangles[k + 1], triangles[k + 2]] as Triple;
        const [ex, ey, ez] = [triangles[k + 3], triangles[k + 4], triangles[k + 5]] as Triple;
        const [fx, fy, fz] = [triangles[k + 6], triangles[k + 7], triangles[k + 8]] as Triple;
        const [hx, hy, hz] = [dy * fz - dz * fy, dz * fx - dx * fz, dx * fy - dy * fx];
        const det = ex * hx + ey * hy + ez * hz;
        if (det === 0) continue;
        const [sx, sy, sz] = [ox - px, oy - py, oz - pz];
        const u = (sx * hx + sy * hy + sz * hz) / det;
        if (u < -EDGE || u > 1 + EDGE) continue;
        const [qx, qy, qz] = [sy * ez - sz * ey, sz * ex - sx * ez, sx * ey - sy * ex];
        const v = (dx * qx + dy * qy + dz * qz) / det;
        if (v < -EDGE || u + v > 1 + EDGE) continue;
        const at = (fx * qx + fy * qy + fz * qz) / det;
        // The determinant is minus the segment's part along the normal.
        if (at >= near && at <= far && visit(order[i] as number, at, det < 0)) return true;
      }
    }
    if (top === 0) return false;
    top -= 1;
    node = waiting[top] as number;
  }
}

type Triple = [number, number, number];

/** Enough for any tree but a hopeless one; shared, since no visit asks the tree again. */
const STACK = new Int32Array(64);
