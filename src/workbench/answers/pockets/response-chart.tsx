import { useMemo } from 'react';
import {
  closedBoxLevelDb,
  POCKET_FREQUENCIES_HZ,
  type PocketPairStudy,
  type PocketStudy,
} from '../../../geometry';
import { formatFrequency, formatLevel } from '../../../plan/units';
import { type ChartSeries, LineChart } from '../../parts/chart';

const X = {
  label: 'frequency, Hz',
  log: true,
  format: (hz: number) => formatFrequency(Math.round(hz)),
  range: [20, 500],
} as const;
const Y = {
  label: 'Level, dB re far above resonance',
  format: (db: number) => formatLevel(db),
  // Below that nobody hears it, and above it a decibel between the two is seen.
  range: [-18, 6],
} as const;

/** The response in each pocket, and left less right where both are told. */
export function ResponseChart(props: {
  studies: readonly PocketStudy[];
  pair: PocketPairStudy | null;
}) {
  const { studies, pair } = props;
  const series = useMemo(() => seriesOf(studies, pair), [studies, pair]);
  const marks = useMemo(
    () =>
      studies.flatMap(({ side, box }) =>
        box ? [{ x: box.resonanceHz, label: side ? `fc ${side}` : 'fc' }] : [],
      ),
    [studies],
  );
  if (series.length === 0) return null;
  return (
    <LineChart
      label="Response in the pockets"
      x={X}
      y={Y}
      series={series}
      marks={marks}
      height={190}
    />
  );
}

function seriesOf(studies: readonly PocketStudy[], pair: PocketPairStudy | null): ChartSeries[] {
  const lines = studies.flatMap(({ side, box }): ChartSeries[] =>
    box
      ? [
          {
            label: side ?? 'level',
            xs: POCKET_FREQUENCIES_HZ,
            ys: POCKET_FREQUENCIES_HZ.map((hz) => closedBoxLevelDb(box, hz)),
            tone: side ?? 'ink',
            dash: side === 'right',
          },
        ]
      : [],
  );
  if (!pair?.compared) return lines;
  const { levels } = pair.compared;
  return [
    ...lines,
    {
      label: 'left − right',
      xs: levels.map(({ frequencyHz }) => frequencyHz),
      ys: levels.map(({ differenceDb }) => differenceDb),
      tone: 'quiet',
      dash: true,
    },
  ];
}
