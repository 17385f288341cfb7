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
  for (let t = 0; t < n; t++) {
    const [a, b, c] = corners[t] as readonly [number, number, number];
    const p = vertices[a] as Vec3;
    const q = vertices[b] as Vec3;
    const r = vertices[c] as Vec3;
    for (let k = 0; k < 3; k++) {
      const x = p[k] as number;
      const y = q[k] as number;
      const z = r[k] as number;
      low[3 * t + k] = Math.min(x, y, z);
      high[3 * t + k] = Math.max(x, y, z);
    }
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
    putBox(sum, 0, order, low, high, start, end);
    const whole = area(sum, 0);
    for (let k = 0; k < 6; k++) bounds.push((sum[k] as number) + (k < 3 ? -PAD : PAD));
    link.push(start);
    count.push(end - start);
    if (end - start <= LEAF) return;
    const middle = split(order, low, high, start, end, whole);
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

/** Low x, y, z, high x, y, z of the triangles from `start` to `end`, from `box[at]` on. */
function putBox(
  box: Float64Array,
  at: number,
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
): void {
  box.fill(Infinity, at, at + 3);
  box.fill(-Infinity, at + 3, at + 6);
  for (let i = start; i < end; i++) grow(box, at, low, high, order[i] as number);
}

function grow(box: Float64Array, at: number, low: Float64Array, high: Float64Array, t: number) {
  for (let k = 0; k < 3; k++) {
    const lo = low[3 * t + k] as number;
    const hi = high[3 * t + k] as number;
    if (lo < (box[at + k] as number)) box[at + k] = lo;
    if (hi > (box[at + 3 + k] as number)) box[at + 3 + k] = hi;
  }
}

/** Half the surface of a box; 0 for an empty one. */
function area(box: Float64Array, at: number): number {
  const x = (box[at + 3] as number) - (box[at] as number);
  const y = (box[at + 4] as number) - (box[at + 1] as number);
  const z = (box[at + 5] as number) - (box[at + 2] as number);
  return x < 0 ? 0 : x * y + y * z + z * x;
}

// Used anew for every node: making them each time took most of the building's time.
const bins = new Float64Array(6 * BINS);
const held = new Int32Array(BINS);
const sum = new Float64Array(6);
const before = new Float64Array(BINS);
const middles = new Float64Array(6);

/**
 * Parts the triangles across the axis their middles spread most along, where it costs least; null
 * where leaving them together costs less. Trying all three axes took three times as long to build
 * and saved a few per cent in asking.
 */
function split(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
  whole: number,
): number | null {
  middles.fill(Infinity, 0, 3);
  middles.fill(-Infinity, 3, 6);
  for (let i = start; i < end; i++) {
    const t = order[i] as number;
    for (let k = 0; k < 3; k++) {
      const m = ((low[3 * t + k] as number) + (high[3 * t + k] as number)) / 2;
      if (m < (middles[k] as number)) middles[k] = m;
      if (m > (middles[3 + k] as number)) middles[3 + k] = m;
    }
  }
  let axis = 0;
  let spread = 0;
  for (let k = 0; k < 3; k++) {
    const s = (middles[3 + k] as number) - (middles[k] as number);
    if (s > spread) {
      spread = s;
      axis = k;
    }
  }
  if (!(spread > 0)) return null;
  const from = middles[axis] as number;
  const scale = BINS / spread;
  const binOf = (t: number): number => {
    const m = ((low[3 * t + axis] as number) + (high[3 * t + axis] as number)) / 2;
    return Math.min(BINS - 1, Math.floor((m - from) * scale));
  };
  for (let bin = 0; bin < BINS; bin++) putBox(bins, 6 * bin, order, low, high, 0, 0);
  held.fill(0);
  for (let i = start; i < end; i++) {
    const t = order[i] as number;
    const bin = binOf(t);
    held[bin] = (held[bin] as number) + 1;
    grow(bins, 6 * bin, low, high, t);
  }
  // What lies before each cut costs, then met by what lies behind it.
  putBox(sum, 0, order, low, high, 0, 0);
  for (let bin = 0, some = 0; bin < BINS - 1; bin++) {
    join(sum, bin);
    some += held[bin] as number;
    before[bin + 1] = area(sum, 0) * some;
  }
  putBox(sum, 0, order, low, high, 0, 0);
  let best = Infinity;
  let cut = 0;
  for (let bin = BINS - 1, some = 0; bin > 0; bin--) {
    join(sum, bin);
    some += held[bin] as number;
    const cost = area(sum, 0) * some + (before[bin] as number);
    if (cost < best) {
      best = cost;
      cut = bin;
    }
  }
  const total = end - start;
  if (total <= 2 * LEAF && best + NODE_COST * whole >= total * whole) return null;
  return part(order, start, end, (t) => binOf(t) < cut);
}

/** Widens `box` to hold a bin. */
function join(box: Float64Array, bin: number): void {
  for (let k = 0; k < 3; k++) {
    box[k] = Math.min(box[k] as number, bins[6 * bin + k] as number);
    box[3 + k] = Math.max(box[3 + k] as number, bins[6 * bin + 3 + k] as number);
  }
}

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
  const waiting = tree.depth <= STACK.length ? STACK : new Int32Array(tree.depth);
  let top = 0;
  let node = 0;
  for (;;) {
    const b = 6 * node;
    // A segment within a face's plane gives 0 · ∞: not a number, which narrows nothing here.
    let enter = near;
    let leave = far;
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
        if (at >= near && at <= far && visit(order[i] as number, at, det < 0)) return true;
      }
    }
    if (top === 0) return false;
    top -= 1;
    node = waiting[top] as number;
  }
}

/** Enough for any tree but a hopeless one; shared, since no visit asks the tree again. */
const STACK = new Int32Array(64);
