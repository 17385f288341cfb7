import type uPlot from 'uplot';
import { alignSeries } from './chart-data';
import type { LineChartProps } from './chart-types';
import { drawEndLabels, drawMarks, drawValues, ROW, rowsFor } from './draw-notes';
import {
  digitsOf,
  frequencyLabel,
  frequencyTicks,
  linearTicks,
  niceStep,
  roundedRange,
} from './ticks';
import type { ChartTokens } from './tokens';

/** Room for the numbers of the y axis and under the x axis, CSS pixels. */
const Y_AXIS = 42;
const X_AXIS = 22;
/** A letter of the small type, on the wide side. */
const LETTER = 7;

/** Everything uPlot is told, and the data in its shape. */
export function chartOptions(
  { x, y, series, marks = [], height }: LineChartProps,
  tokens: ChartTokens,
  width: number,
): { options: uPlot.Options; data: uPlot.AlignedData } {
  const { xs, ys } = alignSeries(series);
  const xRange = x.range ?? (x.log ? bounds(xs) : roundedRange(xs));
  const yRange = y.range ?? roundedRange(series.flatMap((one) => one.ys.filter((v) => v !== null)));
  const longest = Math.max(0, ...series.map((one) => (one.stems ? 0 : one.label.length)));
  const room = longest === 0 ? 12 : Math.min(width * 0.34, 14 + longest * LETTER);
  const plotWidth = Math.max(40, width - Y_AXIS - room);
  const rows = markRows(marks, xRange, plotWidth, x.log ?? false);
  const axis = {
    stroke: tokens.text,
    font: `12px ${tokens.font}`,
    grid: { stroke: tokens.grid, width: 1 },
    ticks: { stroke: tokens.grid, width: 1, size: 4 },
    gap: 4,
  };
  const yMost = Math.max(2, Math.floor(height / 42));
  const yStep = niceStep(yRange[1] - yRange[0], yMost);
  const xMost = Math.max(2, Math.floor(plotWidth / 64));
  const xStep = niceStep(xRange[1] - xRange[0], xMost);
  const number = (step: number) => (value: number) =>
    value.toFixed(digitsOf(step)).replace('-', '−');
  return {
    data: [xs, ...ys] as uPlot.AlignedData,
    options: {
      width,
      height,
      padding: [8 + rows * ROW, room, 0, 0],
      legend: { show: false },
      cursor: { drag: { x: false, y: false }, y: false, points: { show: false } },
      scales: {
        x: { time: false, range: () => [...xRange], ...(x.log && { distr: 3 as const }) },
        y: { range: () => [...yRange] },
      },
      axes: [
        {
          ...axis,
          size: X_AXIS,
          splits: () => (x.log ? frequencyTicks(xRange, plotWidth) : linearTicks(xRange, xMost)),
          filter: (_, splits) => splits,
          values: (_, splits) => splits.map(x.log ? frequencyLabel : number(xStep)),
        },
        {
          ...axis,
          size: Y_AXIS,
          splits: () => linearTicks(yRange, yMost),
          values: (_, splits) => splits.map(number(yStep)),
        },
      ],
      series: [
        {},
        ...series.map(
          (one): uPlot.Series => ({
            label: one.label,
            stroke: tokens.tones[one.tone],
            width: 2,
            points: { show: false },
            ...(one.dash && { dash: [6, 4] }),
            ...(one.stems && { paths: () => null }),
          }),
        ),
      ],
      hooks: {
        drawAxes: [(u) => drawMarks(u, marks, tokens)],
        drawSeries: [
          (u, i) => {
            const one = series[i - 1];
            if (one) drawValues(u, one, tokens);
          },
        ],
        draw: [(u) => drawEndLabels(u, series, tokens)],
      },
    },
  };
}

/** A logarithmic axis ends where its data does; never at nothing. */
function bounds(xs: readonly number[]): [number, number] {
  const [low, high] = [xs[0] ?? 20, xs[xs.length - 1] ?? 20000];
  return low < high ? [low, high] : [low / 2, high * 2];
}

/** Rows of names above the plot, by the same measure as they are drawn with, near enough. */
function markRows(
  marks: readonly { x: number; label: string }[],
  [low, high]: readonly [number, number],
  width: number,
  log: boolean,
): number {
  const at = (x: number) =>
    (log ? Math.log(x / low) / Math.log(high / low) : (x - low) / (high - low)) * width;
  const spans = marks
    .filter(({ x }) => x >= low && x <= high)
    .map(({ x, label }) => {
      const half = (label.length * LETTER) / 2;
      const from = Math.min(at(x) - half, width - 2 * half);
      return { from, to: from + 2 * half + 8 };
    })
    .sort((a, b) => a.from - b.from);
  return spans.length === 0 ? 0 : Math.max(...rowsFor(spans)) + 1;
}
