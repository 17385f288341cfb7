/**
 * The trade-off front (Pareto): all rows that no other row beats. One row beats another when it is
 * at least as good in every aim and better in one; rows that are alike in every aim beat each other
 * not, and all of them stay.
 * @param costs `aims` numbers a row, smaller is better; ±Infinity allowed, NaN not
 * @returns the rows' numbers, rising
 */
export function tradeOffFront(costs: Float64Array, aims: number): number[] {
  const rows = costs.length / aims;
  const order = Uint32Array.from({ length: rows }, (_, row) => row);
  const at = (row: number, aim: number) => costs[aims * row + aim] as number;
  // Whatever beats a row comes before it in this order: it is no worse in the first aim that tells
  // them apart, exactly, since nothing is added up.
  order.sort((a, b) => {
    for (let aim = 0; aim < aims; aim++) {
      const [x, y] = [at(a, aim), at(b, aim)];
      if (x !== y) return x < y ? -1 : 1;
    }
    return 0;
  });
  const front: number[] = [];
  for (const row of order) {
    // The one that beat the last is likely to beat the next as well.
    const by = front.findIndex((other) => beats(costs, aims, other, row));
    if (by < 0) front.push(row);
    else if (by > 0) {
      const [beater] = front.splice(by, 1);
      front.unshift(beater as number);
    }
  }
  return front.sort((a, b) => a - b);
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
