/**
 * Edges in a tree of balls, for finding the one over which the way between two points is least
 * longer than the straight line.
 */

/** Six numbers an edge: its first corner, then its second. */
export type EdgeList = readonly number[] | Float64Array;

export interface EdgeTree {
  /** Seven numbers an edge, in leaf order: a corner, the unit vector along it, its length. */
  edges: Float64Array;
  /** Four numbers a node: the middle and radius of a ball round its edges. */
  balls: Float64Array;
  /** Leaf: first edge. Inner node: its second child; the first is the next node. */
  link: Int32Array;
  /** Leaf: how many edges. Inner node: 0. */
  count: Int32Array;
}

const LEAF = 4;

/** @returns null where there is no edge */
export function buildEdgeTree(list: EdgeList): EdgeTree | null {
  const n = list.length / 6;
  if (n === 0) return null;
  const order = new Int32Array(n);
  const middles = new Float64Array(3 * n);
  for (let e = 0; e < n; e++) {
    order[e] = e;
    for (let k = 0; k < 3; k++)
      middles[3 * e + k] = ((list[6 * e + k] as number) + (list[6 * e + 3 + k] as number)) / 2;
  }
  const balls: number[] = [];
  const link: number[] = [];
  const count: number[] = [];
  const place = (start: number, end: number): void => {
    const node = link.length;
    putBall(balls, list, order, start, end);
    link.push(start);
    count.push(end - start);
    if (end - start <= LEAF) return;
    const cut = part(order, middles, start, end);
    count[node] = 0;
    place(start, cut);
    link[node] = link.length;
    place(cut, end);
  };
  place(0, n);

  const edges = new Float64Array(7 * n);
  for (let i = 0; i < n; i++) {
    const e = 6 * (order[i] as number);
    const dx = (list[e + 3] as number) - (list[e] as number);
    const dy = (list[e + 4] as number) - (list[e + 1] as number);
    const dz = (list[e + 5] as number) - (list[e + 2] as number);
    const reach = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const by = reach > 0 ? 1 / reach : 0;
    edges[7 * i] = list[e] as number;
    edges[7 * i + 1] = list[e + 1] as number;
    edges[7 * i + 2] = list[e + 2] as number;
    edges[7 * i + 3] = dx * by;
    edges[7 * i + 4] = dy * by;
    edges[7 * i + 5] = dz * by;
    edges[7 * i + 6] = reach;
  }
  return {
    edges,
    balls: Float64Array.from(balls),
    link: Int32Array.from(link),
    count: Int32Array.from(count),
  };
}

const center = new Float64Array(3);

/** Adds the ball about the middle of the edges' box that holds them. */
function putBall(
  balls: number[],
  list: EdgeList,
  order: Int32Array,
  start: number,
  end: number,
): void {
  for (let k = 0; k < 3; k++) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = start; i < end; i++) {
      const e = 6 * (order[i] as number) + k;
      const a = list[e] as number;
      const b = list[e + 3] as number;
      if (a < low) low = a;
      if (b < low) low = b;
      if (a > high) high = a;
      if (b > high) high = b;
    }
    center[k] = (low + high) / 2;
  }
  const x = center[0] as number;
  const y = center[1] as number;
  const z = center[2] as number;
  let most = 0;
  for (let i = start; i < end; i++) {
    const e = 6 * (order[i] as number);
    for (let c = e; c <= e + 3; c += 3) {
      const dx = (list[c] as number) - x;
      const dy = (list[c + 1] as number) - y;
      const dz = (list[c + 2] as number) - z;
      const square = dx * dx + dy * dy + dz * dz;
      if (square > most) most = square;
    }
  }
  balls.push(x, y, z, Math.sqrt(most));
}

/**
 * Parts the edges in place at the middle of the axis their own middles spread most along: long ones
 * side by side must part too. @returns where the second part begins
 */
function part(order: Int32Array, middles: Float64Array, start: number, end: number): number {
  let axis = 0;
  let spread = -1;
  let at = 0;
  for (let k = 0; k < 3; k++) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = start; i < end; i++) {
      const m = middles[3 * (order[i] as number) + k] as number;
      if (m < low) low = m;
      if (m > high) high = m;
    }
    if (high - low > spread) {
      spread = high - low;
      axis = k;
      at = (low + high) / 2;
    }
  }
  let cut = start;
  for (let i = start; i < end; i++) {
    const e = order[i] as number;
    if ((middles[3 * e + axis] as number) >= at) continue;
    order[i] = order[cut] as number;
    order[cut] = e;
    cut += 1;
  }
  // Very uneven parts, or all middles in one place: halves, so that the tree stays shallow.
  const few = (end - start) >> 2;
  return cut - start <= few || end - cut <= few ? (start + end) >> 1 : cut;
}
