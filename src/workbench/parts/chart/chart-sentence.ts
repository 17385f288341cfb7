import { formatNumber, NO_VALUE } from '../../../plan/units';
import type { ChartAxis, LineChartProps } from './chart-types';

/** A value as it is read out. */
export const shown = (axis: ChartAxis, value: number | null): string =>
  value === null || !Number.isFinite(value)
    ? NO_VALUE
    : (axis.format?.(value) ?? formatNumber(value, 1));

const range = (values: readonly (number | null)[], axis: ChartAxis): string => {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return 'without a known value';
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return low === high
    ? `at ${shown(axis, low)}`
    : `between ${shown(axis, low)} and ${shown(axis, high)}`;
};

/** What a chart shows, in one sentence, for those who cannot see it. */
export function chartSentence({ label, x, y, series, marks = [] }: LineChartProps): string {
  const lines = series.map((one) => `${one.label} ${range(one.ys, y)}`);
  const lined = marks.map((mark) => `${mark.label} at ${shown(x, mark.x)}`);
  return `${[`${label}: ${y.label} against ${x.label}`, ...lines, ...lined].join('; ')}.`;
}
