import type { MeasuredChannelResult } from '../../../geometry';
import { formatNumber, formatTime, withSign } from '../../../plan/units';
import { linearTicks } from '../../parts/chart/ticks';
import type { LiveRow } from './live-arrivals';

const WIDTH = 290;
const HEIGHT = 124;
const [LEFT, RIGHT, TOP, BOTTOM] = [8, WIDTH - 8, 16, HEIGHT - 28];
const MIDDLE = (TOP + BOTTOM) / 2;
/** Shown round the two arrivals, ms. */
const BEFORE = 0.5;
const AFTER = 1.3;

interface ArrivalDrawingProps {
  row: LiveRow;
  result: MeasuredChannelResult;
  offsetMs: number;
  name: string;
}

/** One response about its arrival, in ms from where it was predicted; what is expected is shaded. */
export function ArrivalDrawing({ row, result, offsetMs, name }: ArrivalDrawingProps) {
  const { differenceMs, sdMs, outlier, predictedMs, measured } = result;
  const rate = row.track.sampleRateHz ?? 48000;
  const { samples, startMs } = row.track.sound;
  const zero = predictedMs + offsetMs + (measured.delay ?? 0);
  const from = Math.min(0, differenceMs) - BEFORE;
  const to = Math.max(0, differenceMs) + AFTER;
  const x = (ms: number): number => LEFT + ((ms - from) / (to - from)) * (RIGHT - LEFT);
  const shown = inside(samples, startMs - zero, rate, from, to);
  const most = shown.reduce((high, [, value]) => Math.max(high, Math.abs(value)), 0) || 1;
  const y = (value: number): number => MIDDLE - (value / most) * ((BOTTOM - TOP) / 2 - 2);
  const ticks = linearTicks([from, to], 5).filter((tick) => x(tick) > 14 && x(tick) < WIDTH - 44);
  return (
    <figure className="measured-drawing" data-out={outlier || undefined}>
      <figcaption>
        <span>{name}</span>
        <span className="by">{withSign(formatTime(differenceMs, 3))}</span>
      </figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Response of the ${name} about its first arrival, found ${formatTime(Math.abs(differenceMs), 3)} ${differenceMs < 0 ? 'before' : 'after'} the prediction; the table above has the numbers`}
      >
        <rect
          className="expected"
          x={x(Math.max(from, -2 * sdMs))}
          y={TOP}
          width={x(Math.min(to, 2 * sdMs)) - x(Math.max(from, -2 * sdMs))}
          height={BOTTOM - TOP}
        />
        <path className="rule" d={`M${LEFT} ${MIDDLE}H${RIGHT}M${LEFT} ${BOTTOM}H${RIGHT}`} />
        {ticks.map((tick) => (
          <g key={tick}>
            <path className="rule" d={`M${x(tick)} ${BOTTOM}v7`} />
            <text x={x(tick)} y={BOTTOM + 22} textAnchor="middle">
              {formatNumber(tick, ticks.some((one) => one % 1 !== 0) ? 1 : 0)}
            </text>
          </g>
        ))}
        <text x={RIGHT} y={BOTTOM + 22} textAnchor="end">
          ms
        </text>
        <polyline
          className="sound"
          points={shown
            .map(([ms, value]) => `${x(ms).toFixed(1)},${y(value).toFixed(1)}`)
            .join(' ')}
        />
        <path className="predicted" d={`M${x(0)} ${TOP}V${BOTTOM}`} />
        <path className="predicted-head" d={`M${x(0)} ${TOP}l-5 -8h10Z`} />
        <path className="found" d={`M${x(differenceMs)} ${TOP}V${BOTTOM}`} />
        <path className="found-head" d={`M${x(differenceMs)} ${BOTTOM}l-5 8h10Z`} />
      </svg>
    </figure>
  );
}

/** The samples from one time to another, ms after zero, with one beyond on either side. */
function inside(
  samples: ArrayLike<number>,
  startMs: number,
  rate: number,
  from: number,
  to: number,
): [number, number][] {
  const perMs = rate / 1000;
  const first = Math.max(0, Math.ceil((from - startMs) * perMs));
  const last = Math.min(samples.length - 1, Math.floor((to - startMs) * perMs));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => [
    startMs + (first + i) / perMs,
    samples[first + i] as number,
  ]);
}

/** What the marks mean. */
export function DrawingKey() {
  return (
    <p className="measured-key footnote">
      <svg width="12" height="14" viewBox="0 0 12 14" aria-hidden="true">
        <path className="predicted-head" d="M6 12l-5 -8h10Z" />
      </svg>{' '}
      predicted, shaded: as far off as was to be expected;{' '}
      <svg width="12" height="14" viewBox="0 0 12 14" aria-hidden="true">
        <path className="found-head" d="M6 2l-5 8h10Z" />
      </svg>{' '}
      found. Time from the prediction, loop taken off; each response as high as it comes.
    </p>
  );
}
