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
  const order = Int32Array.from({ length: n }, (_, i) => i);
  const balls: number[] = [];
  const link: number[] = [];
  const count: number[] = [];
  const middle = (e: number, k: number) =>
    ((list[6 * e + k] as number) + (list[6 * e + 3 + k] as number)) / 2;

  const place = (start: number, end: number): void => {
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (let i = start; i < end; i++)
      for (let k = 0; k < 6; k++) {
        const x = list[6 * (order[i] as number) + k] as number;
        if (x < (low[k % 3] as number)) low[k % 3] = x;
        if (x > (high[k % 3] as number)) high[k % 3] = x;
      }
    const center = low.map((x, k) => (x + (high[k] as number)) / 2);
    let square = 0;
    for (let i = start; i < end; i++)
      for (let c = 0; c < 6; c += 3) {
        let sum = 0;
        for (let k = 0; k < 3; k++) {
          const d = (list[6 * (order[i] as number) + c + k] as number) - (center[k] as number);
          sum += d * d;
        }
        if (sum > square) square = sum;
      }
    const node = link.length;
    balls.push(center[0] as number, center[1] as number, center[2] as number, Math.sqrt(square));
    link.push(start);
    count.push(end - start);
    if (end - start <= LEAF) return;
    // Across the axis the edges' middles spread most along: long edges side by side must part.
    let axis = 0;
    let spread = -1;
    for (let k = 0; k < 3; k++) {
      let least = Infinity;
      let most = -Infinity;
      for (let i = start; i < end; i++) {
        const x = middle(order[i] as number, k);
        if (x < least) least = x;
        if (x > most) most = x;
      }
      if (most - least > spread) {
        spread = most - least;
        axis = k;
      }
    }
    const part = order.subarray(start, end).sort((d, e) => middle(d, axis) - middle(e, axis));
    count[node] = 0;
    const cut = start + (part.length >> 1);
    place(start, cut);
    link[node] = link.length;
    place(cut, end);
  };
  place(0, n);

  const edges = new Float64Array(7 * n);
  order.forEach((e, i) => {
    let square = 0;
    for (let k = 0; k < 3; k++) {
      const d = (list[6 * e + 3 + k] as number) - (list[6 * e + k] as number);
      edges[7 * i + k] = list[6 * e + k] as number;
      edges[7 * i + 3 + k] = d;
      square += d * d;
    }
    const reach = Math.sqrt(square);
    for (let k = 3; k < 6; k++)
      edges[7 * i + k] = reach > 0 ? (edges[7 * i + k] as number) / reach : 0;
    edges[7 * i + 6] = reach;
  });
  return {
    edges,
    balls: Float64Array.from(balls),
    link: Int32Array.from(link),
    count: Int32Array.from(count),
  };
}
