/**
 * Builds a triangle tree by the surface area heuristic in bins (Wald, "On fast Construction of
 * SAH-based Bounding Volume Hierarchies", 2007).
 */
import type { Vec3 } from '../vector';
import type { TriangleTree } from './triangle-tree';

const LEAF = 4;
const BINS = 12;
/** What passing a node costs against testing a triangle: measured, of little influence. */
const NODE_COST = 1.2;
/** Boxes are this much larger than what they hold, mm: a flat one must not be missed by rounding. */
const PAD = 1e-6;
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
  empty(box, at);
  for (let i = start; i < end; i++) grow(box, at, low, high, order[i] as number);
}

function empty(box: Float64Array, at: number): void {
  for (let k = at; k < at + 3; k++) {
    box[k] = Infinity;
    box[k + 3] = -Infinity;
  }
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
 * and saved a few per cent in asking. In short functions: as one long one it was never compiled for
 * good, and building was half of a first answer.
 */
function split(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
  whole: number,
): number | null {
  spanMiddles(order, low, high, start, end);
  const axis = widestAxis();
  const from = middles[axis] as number;
  const spread = (middles[3 + axis] as number) - from;
  if (!(spread > 0)) return null;
  const scale = BINS / spread;
  fillBins(order, low, high, start, end, axis, from, scale);
  const cut = cheapestCut();
  const total = end - start;
  if (total <= 2 * LEAF && costOfCut + NODE_COST * whole >= total * whole) return null;
  return part(order, low, high, start, end, axis, from, scale, cut);
}

/** The range of the triangles' middles, into `middles`. */
function spanMiddles(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
): void {
  middles.fill(Infinity, 0, 3);
  middles.fill(-Infinity, 3, 6);
  for (let i = start; i < end; i++) {
    const t = 3 * (order[i] as number);
    for (let k = 0; k < 3; k++) {
      const m = ((low[t + k] as number) + (high[t + k] as number)) / 2;
      if (m < (middles[k] as number)) middles[k] = m;
      if (m > (middles[3 + k] as number)) middles[3 + k] = m;
    }
  }
}

function widestAxis(): number {
  const x = (middles[3] as number) - (middles[0] as number);
  const y = (middles[4] as number) - (middles[1] as number);
  const z = (middles[5] as number) - (middles[2] as number);
  if (x >= y && x >= z) return 0;
  return y >= z ? 1 : 2;
}

function fillBins(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
  axis: number,
  from: number,
  scale: number,
): void {
  for (let bin = 0; bin < BINS; bin++) empty(bins, 6 * bin);
  held.fill(0);
  for (let i = start; i < end; i++) {
    const t = order[i] as number;
    const bin = binOf(low, high, 3 * t + axis, from, scale);
    held[bin] = (held[bin] as number) + 1;
    grow(bins, 6 * bin, low, high, t);
  }
}

/** Which bin a triangle's middle lies in; `at` is its place in the lists. */
function binOf(
  low: Float64Array,
  high: Float64Array,
  at: number,
  from: number,
  scale: number,
): number {
  const m = ((low[at] as number) + (high[at] as number)) / 2;
  return Math.min(BINS - 1, Math.floor((m - from) * scale));
}

/** What the cut found last costs. */
let costOfCut = Infinity;

/** What lies before each cut costs, then met by what lies behind it. */
function cheapestCut(): number {
  empty(sum, 0);
  for (let bin = 0, some = 0; bin < BINS - 1; bin++) {
    join(sum, bin);
    some += held[bin] as number;
    before[bin + 1] = area(sum, 0) * some;
  }
  empty(sum, 0);
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
  costOfCut = best;
  return cut;
}

/** Widens `box` to hold a bin. */
function join(box: Float64Array, bin: number): void {
  for (let k = 0; k < 3; k++) {
    box[k] = Math.min(box[k] as number, bins[6 * bin + k] as number);
    box[3 + k] = Math.max(box[3 + k] as number, bins[6 * bin + 3 + k] as number);
  }
}

/** Puts those before the cut first; the number where the others begin. */
function part(
  order: Int32Array,
  low: Float64Array,
  high: Float64Array,
  start: number,
  end: number,
  axis: number,
  from: number,
  scale: number,
  cut: number,
): number {
  let at = start;
  for (let i = start; i < end; i++) {
    const t = order[i] as number;
    if (binOf(low, high, 3 * t + axis, from, scale) >= cut) continue;
    order[i] = order[at] as number;
    order[at] = t;
    at += 1;
  }
  return at;
}
