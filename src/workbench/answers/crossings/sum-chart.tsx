import { useMemo } from 'react';
import type { Crossing, SideSum } from '../../../geometry';
import { formatFrequency, formatLevel } from '../../../plan/units';
import { type ChartSeries, LineChart } from '../../parts/chart';

/** Deeper than this all dips look alike on the chart, dB. */
const FLOOR_DB = -30;

interface SumChartProps {
  crossing: Crossing;
  sums: readonly SideSum[];
  /** "mids to tweeters" */
  name: string;
}

const X = { label: 'frequency, Hz', log: true, format: formatFrequency } as const;

/** The sums of both sides round their crossover, against what they would be in step. */
export function SumChart({ crossing, sums, name }: SumChartProps) {
  const { frequencyHz } = crossing.crossover;
  const { series, marks, lowest } = useMemo(() => drawn(sums, frequencyHz), [sums, frequencyHz]);
  const y = useMemo(
    () => ({ label: 'Sum less the ideal, dB', range: [lowest, 6] as const, format: toFloor }),
    [lowest],
  );
  if (series.length < 2) return null;
  return (
    <LineChart label={`Sum of ${name}`} x={X} y={y} series={series} marks={marks} height={230} />
  );
}

const toFloor = (db: number): string =>
  db <= FLOOR_DB ? `${formatLevel(FLOOR_DB)} or less` : formatLevel(db);

function drawn(sums: readonly SideSum[], crossoverHz: number) {
  const lines = sums.flatMap(({ side, result }): ChartSeries[] =>
    result
      ? [
          {
            label: side,
            tone: side,
            xs: result.curve.map((at) => at.frequencyHz),
            ys: result.curve.map((at) => Math.max(FLOOR_DB, at.deviationDb)),
            dash: false,
          },
        ]
      : [],
  );
  const xs = lines[0]?.xs ?? [];
  const ends = xs.length > 1 ? [xs[0] as number, xs[xs.length - 1] as number] : [];
  const ideal: ChartSeries = { label: 'ideal', tone: 'quiet', dash: true, xs: ends, ys: [0, 0] };
  const nulls = sums.flatMap(({ side, result }) =>
    // One name for each: a comb of them is told in words.
    (result?.nulls ?? []).slice(0, 3).map(({ frequencyHz }) => ({
      x: frequencyHz,
      label: `${side} null ${formatFrequency(frequencyHz)}`,
    })),
  );
  const least = Math.min(0, ...lines.flatMap(({ ys }) => ys.map((db) => db ?? 0)));
  return {
    series: [...lines, ideal],
    marks: [{ x: crossoverHz, label: `crossover ${formatFrequency(crossoverHz)}` }, ...nulls],
    lowest: least < -12 ? FLOOR_DB : -12,
  };
}
