import { useMemo } from 'react';
import { formatFrequency, formatLevel } from '../../../plan/units';
import { type ChartMark, type ChartSeries, LineChart } from '../../parts/chart';
import type { GroupLevels, SideLevels } from './group-levels';

const X = { label: 'frequency, Hz', log: true, format: formatFrequency } as const;
const Y = { label: 'Level, dB re 1 m on axis', format: (db: number) => formatLevel(db) } as const;
/** A sixth of an octave beyond the first and last centre: the bands' own edges. */
const EDGE = 2 ** (1 / 6);

/** Left, right and their difference by frequency. */
export function LevelsChart({ levels }: { levels: GroupLevels }) {
  const series = useMemo(() => seriesOf(levels), [levels]);
  const x = useMemo(() => ({ ...X, range: rangeOf(series) }), [series]);
  const marks = useMemo(() => marksOf(levels.sides), [levels]);
  return (
    <LineChart
      label={`Direct level by ${levels.bandName}`}
      x={x}
      y={Y}
      series={series}
      marks={marks}
      height={190}
    />
  );
}

function seriesOf({ sides, differences }: GroupLevels): ChartSeries[] {
  const lines = sides.map(
    ({ speaker: { side }, bands }): ChartSeries => ({
      label: side ?? 'level',
      xs: bands.map(({ frequencyHz }) => frequencyHz),
      ys: bands.map(({ levelDb }) => levelDb),
      tone: side ?? 'ink',
      dash: side === 'right',
      points: true,
    }),
  );
  if (differences.length === 0) return lines;
  return [
    ...lines,
    {
      label: 'left − right',
      xs: differences.map(({ frequencyHz }) => frequencyHz),
      ys: differences.map(({ levelDb }) => levelDb),
      tone: 'quiet',
      dash: true,
    },
  ];
}

function rangeOf(series: readonly ChartSeries[]): [number, number] {
  const all = series.flatMap(({ xs }) => xs);
  if (all.length === 0) return [20, 20000];
  return [Math.min(...all) / EDGE, Math.max(...all) * EDGE];
}

function marksOf(sides: readonly SideLevels[]): ChartMark[] {
  const known = sides.flatMap(({ speaker: { side }, beamingHz }) =>
    beamingHz === null ? [] : [{ side, hz: beamingHz }],
  );
  const [a, b] = known;
  if (!a) return [];
  if (!b || Math.abs(a.hz / b.hz - 1) < 0.01) return [{ x: a.hz, label: 'beams from here' }];
  return known.map(({ side, hz }) => ({ x: hz, label: `${side} beams` }));
}
