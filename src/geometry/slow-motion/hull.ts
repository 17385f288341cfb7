import type { Spot } from './cut';

/** Convex hull of places seen from above (A. M. Andrew, Inf. Process. Lett. 9, 1979: monotone chain). */
export function hullOf(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain(sorted.reverse())];
}

/** One side of the hull, its last place left to the other side. */
function chain(sorted: readonly Spot[]): Spot[] {
  const kept: Spot[] = [];
  for (const spot of sorted) {
    for (;;) {
      const [a, b] = [kept[kept.length - 2], kept[kept.length - 1]];
      if (!a || !b || (b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0]) > 0)
        break;
      kept.pop();
    }
    kept.push(spot);
  }
  return kept.slice(0, -1);
}
