import type { TriangleTree } from '../paths/triangle-tree';
import type { Vec3 } from '../vector';

/** A round column without end; triangles whose leaves stay clear of it are passed over. */
export interface Column {
  at: Vec3;
  across: readonly [Vec3, Vec3];
  radius: number;
}

/** Whether the box of node `b / 6` lies wholly to one side of the column. */
function beside(bounds: Float64Array, b: number, { at, across, radius }: Column): boolean {
  for (const axis of across) {
    let middle = 0;
    let half = radius;
    for (let k = 0; k < 3; k++) {
      const [low, high] = [bounds[b + k] as number, bounds[b + 3 + k] as number];
      const a = axis[k] as number;
      middle += ((low + high) / 2 - (at[k] as number)) * a;
      half += ((high - low) / 2) * Math.abs(a);
    }
    if (middle > half || middle < -half) return true;
  }
  return false;
}

/**
 * Calls `visit` for every triangle in a leaf whose bounds touch the box: with the place of its nine
 * numbers in `tree.triangles`, and its number as given. Stops when `visit` returns true.
 * @returns whether it was stopped
 */
export function visitBox(
  tree: TriangleTree,
  low: Vec3,
  high: Vec3,
  visit: (offset: number, triangle: number) => boolean,
  column: Column | null = null,
): boolean {
  const { bounds, link, count, order } = tree;
  const waiting: number[] = [];
  let node = 0;
  for (;;) {
    const b = 6 * node;
    if (
      (bounds[b] as number) <= high[0] &&
      (bounds[b + 3] as number) >= low[0] &&
      (bounds[b + 1] as number) <= high[1] &&
      (bounds[b + 4] as number) >= low[1] &&
      (bounds[b + 2] as number) <= high[2] &&
      (bounds[b + 5] as number) >= low[2] &&
      !(column && beside(bounds, b, column))
    ) {
      const some = count[node] as number;
      if (some === 0) {
        waiting.push(link[node] as number);
        node += 1;
        continue;
      }
      const first = link[node] as number;
      for (let i = first; i < first + some; i++) if (visit(9 * i, order[i] as number)) return true;
    }
    const next = waiting.pop();
    if (next === undefined) return false;
    node = next;
  }
}
