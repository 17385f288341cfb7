/**
 * The trade-off front (Pareto): all rows that no other row beats. One row beats another when it is
 * at least as good in every aim and better in one; rows that are alike in every aim beat each other
 * not, and all of them stay.
 * @param costs `aims` numbers a row, smaller is better; ±Infinity allowed, NaN not
 * @returns the rows' numbers, rising
 */
export function tradeOffFront(costs: Float64Array, aims: number): number[] {
  const steps = tradeOffFrontInSteps(costs, aims);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Comparisons between two signs of life. */
const TURN = 500_000;

/** {@link tradeOffFront}, yielding how much of it is done, 0 to 1. */
export function* tradeOffFrontInSteps(
  costs: Float64Array,
  aims: number,
): Generator<number, number[]> {
  const rows = costs.length / aims;
  const order = Uint32Array.from({ length: rows }, (_, row) => row);
  // Whatever beats a row comes before it in this order: its sum is no larger, since adding and
  // scaling keep order even when rounded, and of like sums it is smaller in the first aim that tells
  // them apart. Rows good all round come first, and beat most of the others at once.
  const sums = sumsOf(costs, aims);
  order.sort((a, b) => {
    const by = (sums[a] as number) - (sums[b] as number);
    if (by !== 0) return by;
    for (let aim = 0; aim < aims; aim++) {
      const x = costs[aims * a + aim] as number;
      const y = costs[aims * b + aim] as number;
      if (x !== y) return x < y ? -1 : 1;
    }
    return 0;
  });
  const front: number[] = [];
  let looks = 0;
  for (let k = 0; k < rows; k++) {
    const row = order[k] as number;
    let by = 0;
    while (by < front.length && !beats(costs, aims, front[by] as number, row)) by += 1;
    looks += by + 1;
    if (looks > TURN) {
      looks = 0;
      yield k / rows;
    }
    if (by === front.length) front.push(row);
    else if (by > 0) {
      // The one that beat the last is likely to beat the next as well: it moves halfway up.
      const up = by >> 1;
      [front[by], front[up]] = [front[up] as number, front[by] as number];
    }
  }
  return front.sort((a, b) => a - b);
}

/** Of each row, every aim scaled to its own range. */
function sumsOf(costs: Float64Array, aims: number): Float64Array {
  const sums = new Float64Array(costs.length / aims);
  for (let aim = 0; aim < aims; aim++) {
    let [low, high] = [Infinity, -Infinity];
    for (let k = aim; k < costs.length; k += aims) {
      const cost = costs[k] as number;
      if (!Number.isFinite(cost)) continue;
      if (cost < low) low = cost;
      if (cost > high) high = cost;
    }
    const range = high > low ? high - low : 1;
    for (let row = 0; row < sums.length; row++) {
      const cost = costs[aims * row + aim] as number;
      const here = cost === Infinity ? 2 : cost === -Infinity ? -1 : (cost - low) / range;
      sums[row] = (sums[row] as number) + here;
    }
  }
  return sums;
}

export function beats(costs: Float64Array, aims: number, one: number, other: number): boolean {
  let better = false;
  for (let aim = 0; aim < aims; aim++) {
    const x = costs[aims * one + aim] as number;
    const y = costs[aims * other + aim] as number;
    if (x > y) return false;
    if (x < y) better = true;
  }
  return better;
}
