import { useMemo, useState } from 'react';
import type { Crossing, SideSum } from '../../../geometry';
import { formatFrequency, formatLevel } from '../../../plan/units';
import { type ChartSeries, LineChart } from '../../parts/chart';
import { Segments } from '../../parts/segments';

/** Deeper than this all dips look alike on the chart, dB. */
const FLOOR_DB = -30;

interface SumChartProps {
  crossing: Crossing;
  sums: readonly SideSum[];
  /** "mids to tweeters" */
  name: string;
}

const X = { label: 'frequency, Hz', log: true, format: formatFrequency } as const;

const Y = {
  against: 'Sum less the ideal, dB',
  level: 'Sum at the seat, dB re 1 m on axis',
} as const;

type Told = keyof typeof Y;

/** The sums of both sides round their crossover: against what they would be in step, or as levels. */
export function SumChart({ crossing, sums, name }: SumChartProps) {
  const [told, tell] = useState<Told>('against');
  const { frequencyHz } = crossing.crossover;
  const { series, marks, range } = useMemo(
    () => sumSeries(sums, frequencyHz, told),
    [sums, frequencyHz, told],
  );
  const y = useMemo(
    () => ({ label: Y[told], range, format: told === 'against' ? toFloor : formatDb }),
    [told, range],
  );
  if (series.length === 0) return null;
  return (
    <div className="sum-chart">
      <Segments
        label="What the curve shows"
        value={told}
        choices={[
          { value: 'against', label: 'Against the ideal' },
          { value: 'level', label: 'As levels' },
        ]}
        onChange={tell}
      />
      <LineChart label={`Sum of ${name}`} x={X} y={y} series={series} marks={marks} height={230} />
    </div>
  );
}

const formatDb = (db: number): string => formatLevel(db);

const toFloor = (db: number): string =>
  db <= FLOOR_DB ? `${formatLevel(FLOOR_DB)} or less` : formatLevel(db);

/** Lines and marks of the chart; no line where neither side has a sum. */
export function sumSeries(sums: readonly SideSum[], crossoverHz: number, told: Told) {
  const known = sums.flatMap(({ side, result }) => (result ? [{ side, result }] : []));
  const nulls = known.flatMap(({ side, result }) =>
    // One name for each: a comb of them is told in words.
    result.nulls.slice(0, 3).map(({ frequencyHz }) => ({
      x: frequencyHz,
      label: `${side} null ${formatFrequency(frequencyHz)}`,
    })),
  );
  const marks = [{ x: crossoverHz, label: `crossover ${formatFrequency(crossoverHz)}` }, ...nulls];
  return { marks, ...(told === 'against' ? againstIdeal(known) : asLevels(known)) };
}

type Known = readonly { side: SideSum['side']; result: NonNullable<SideSum['result']> }[];

interface Drawn {
  series: ChartSeries[];
  range: readonly [number, number];
}

function againstIdeal(known: Known): Drawn {
  const lines = known.map(({ side, result: { curve } }): ChartSeries => {
    const ys = curve.map(({ deviationDb }) => Math.max(FLOOR_DB, deviationDb));
    return { label: side, tone: side, xs: curve.map((at) => at.frequencyHz), ys };
  });
  const xs = lines[0]?.xs ?? [];
  const [first, last] = [xs[0], xs[xs.length - 1]];
  if (first === undefined || last === undefined) return { series: [], range: [-12, 6] };
  const least = Math.min(...lines.flatMap(({ ys }) => ys.map((db) => db ?? 0)));
  const ideal: ChartSeries = {
    label: 'ideal',
    tone: 'quiet',
    dash: true,
    xs: [first, last],
    ys: [0, 0],
  };
  return { series: [...lines, ideal], range: [least < -12 ? FLOOR_DB : -12, 6] };
}

function asLevels(known: Known): Drawn {
  const top = Math.max(...known.flatMap(({ result }) => result.curve.map((at) => at.idealDb)));
  const low = Math.min(...known.flatMap(({ result }) => result.curve.map((at) => at.sumDb)));
  // Whole tens, so that the axis has round ends; what falls 40 dB and more lies on the bottom.
  const most = Math.ceil((Number.isFinite(top) ? top : 0) / 10) * 10;
  const least = Math.floor((Number.isFinite(low) ? low : most) / 10) * 10;
  const range = [Math.max(most - 40, Math.min(most - 20, least)), most] as const;
  const series = known.flatMap(({ side, result: { curve } }): ChartSeries[] => {
    const xs = curve.map((at) => at.frequencyHz);
    const line = (of: 'sumDb' | 'idealDb') => curve.map((at) => Math.max(range[0], at[of]));
    return [
      { label: side, tone: side, xs, ys: line('sumDb') },
      { label: `${side} ideal`, tone: side, dash: true, xs, ys: line('idealDb') },
    ];
  });
  return { series, range };
}
