import { useMemo } from 'react';
import type { EarSound, Side, SpeakerInput } from '../../../geometry';
import { formatLevel, formatTime } from '../../../plan/units';
import { type ChartSeries, LineChart } from '../../parts/chart';

/** What lies below is not drawn, only listed, dB. */
const FLOOR = -36;
/** The time axis is at least this long, ms: a few hundredths are not to look like much. */
const SHORTEST = 0.5;
const EARS: readonly Side[] = ['left', 'right'];
const MARKS = [{ x: 0, label: 'direct sound' }] as const;

export interface ReflectogramProps {
  sounds: readonly EarSound[];
  members: readonly SpeakerInput[];
}

/** Level against time after the direct sound: a stem for every sound, by speaker and by ear. */
export function Reflectogram({ sounds, members }: ReflectogramProps) {
  const series = useMemo(() => seriesOf(sounds, members), [sounds, members]);
  const { x, y } = useMemo(() => axesOf(series), [series]);
  return <LineChart label="Reflectogram" x={x} y={y} series={series} marks={MARKS} height={180} />;
}

function seriesOf(sounds: readonly EarSound[], members: readonly SpeakerInput[]): ChartSeries[] {
  return members.flatMap(({ id, side }) =>
    EARS.map((ear): ChartSeries => {
      const own = sounds
        .filter((sound) => sound.speaker === id && sound.ear === ear)
        .filter(({ levelDb }) => levelDb !== null && levelDb >= FLOOR)
        .sort((a, b) => a.time - b.time);
      return {
        label: `${side ? side.charAt(0).toUpperCase() : 'It'}, ${ear} ear`,
        xs: own.map(({ time }) => time),
        ys: own.map(({ levelDb }) => levelDb),
        tone: side ?? 'ink',
        stems: true,
        points: true,
        dash: side === 'right',
        hollow: ear === 'right',
      };
    }),
  );
}

function axesOf(series: readonly ChartSeries[]) {
  const times = series.flatMap(({ xs }) => xs);
  const levels = series.flatMap(({ ys }) => ys.filter((value) => value !== null));
  const last = Math.max(SHORTEST, ...times);
  const low = Math.min(-12, ...levels.map((db) => Math.floor((db - 1) / 6) * 6));
  return {
    x: {
      label: 'time after it, ms',
      range: [-0.03 * last, 1.03 * last] as const,
      format: (ms: number) => formatTime(ms),
    },
    y: {
      label: 'Level re direct sound, dB',
      range: [low, Math.max(3, ...levels.map((db) => Math.ceil(db + 1)))] as const,
      format: (db: number) => formatLevel(db),
    },
  };
}
