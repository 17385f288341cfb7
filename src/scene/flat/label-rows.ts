/** Labels in a column, each as near to what it names as the others allow. */

/**
 * Middles of rows of `height` within `from` to `to`, in the order of `wanted` (ascending): none
 * overlaps another. More rows than there is room for are laid closer together.
 */
export function labelRows(
  wanted: readonly number[],
  height: number,
  from: number,
  to: number,
): number[] {
  const room = Math.max(0, to - from);
  const step = Math.min(height, room / Math.max(1, wanted.length));
  const rows: number[] = [];
  // Down the page each is pushed below the one before it …
  for (const want of wanted) {
    const above = rows[rows.length - 1];
    const least = above === undefined ? from + step / 2 : above + step;
    rows.push(Math.max(want, least));
  }
  // … and up again where that left the page.
  let below = to + step / 2;
  for (let i = rows.length - 1; i >= 0; i--) {
    rows[i] = Math.min(rows[i] as number, below - step);
    below = rows[i] as number;
  }
  return rows;
}
