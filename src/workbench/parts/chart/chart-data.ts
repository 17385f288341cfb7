import type { ChartSeries } from './chart-types';

/** All series on one list of x values: `null` breaks a line, `undefined` is no value of its own. */
export interface AlignedSeries {
  xs: number[];
  ys: (number | null | undefined)[][];
}

/** Puts series with x values of their own on the union of all, rising. */
export function alignSeries(series: readonly ChartSeries[]): AlignedSeries {
  const xs = [...new Set(series.flatMap((one) => one.xs))].sort((a, b) => a - b);
  const ys = series.map((one) => {
    const own = new Map(one.xs.map((x, i) => [x, one.ys[i] ?? null]));
    return xs.map((x) => own.get(x));
  });
  return { xs, ys };
}

/** The value of a series nearest to `x`, by `gap`; `null` where none is within `reach` of it. */
export function nearest(
  one: ChartSeries,
  x: number,
  gap: (a: number, b: number) => number,
  reach: number,
): { x: number; y: number | null } | null {
  let best: { x: number; y: number | null } | null = null;
  let least = reach;
  one.xs.forEach((at, i) => {
    const away = gap(at, x);
    if (away <= least) {
      least = away;
      best = { x: at, y: one.ys[i] ?? null };
    }
  });
  return best;
}
