import type { Side } from '../../geometry';
import { formatTime } from '../../plan/units';
import type { Board } from '../parts/use-board';
import { useWidth } from '../parts/use-width';
import { SpeakerHead, SpeakerRow } from './speaker-button';
import { type TimeAxis, timeAxis } from './time-axis';

const HEIGHT = 28;
const MIDDLE = HEIGHT / 2;

/**
 * All speakers on one time axis: the filled mark is the arrival, the open one stands where the
 * delay puts it. A table, so that every value can be read without the drawing.
 */
export function StripChart({ board }: { board: Board }) {
  const [head, width] = useWidth<HTMLTableCellElement>(320);
  const { option, seat } = board;
  if (!option || !seat || option.speakers.length === 0) return null;
  const rows = option.speakers.flatMap((speaker) => {
    const arrival = seat.arrivals.find((a) => a.speaker === speaker.id);
    const delay = seat.delays.find((d) => d.speaker === speaker.id);
    return arrival && delay
      ? [{ speaker, time: arrival.time, delay: delay.roundedDelay, line: arrival.line }]
      : [];
  });
  const axis = timeAxis(
    rows.flatMap((row) => [row.time, row.time + row.delay]),
    width,
  );
  const together = Math.max(...rows.map((row) => row.time));
  return (
    <>
      <table className="numbers strip">
        <caption className="unseen">
          Arrival times of all speakers on one axis, before and after delay. With the delays all
          arrive {formatTime(together)} after they start.
        </caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Speaker
            </th>
            <th scope="col" className="strip-axis" ref={head}>
              <span className="unseen">Time axis</span>
              <AxisDrawing axis={axis} width={width} together={together} />
            </th>
            <th scope="col">Arrives</th>
            <th scope="col">Delay</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ speaker, time, delay, line }) => (
            <SpeakerRow key={speaker.id} id={speaker.id}>
              <SpeakerHead speaker={speaker} among={option.speakers} />
              <td className="strip-track">
                <Track
                  axis={axis}
                  width={width}
                  time={time}
                  after={time + delay}
                  together={together}
                  side={speaker.side}
                  blocked={line === 'blocked'}
                />
              </td>
              <td>{formatTime(time)}</td>
              <td>{delay === 0 ? <span className="dim">none</span> : `+${formatTime(delay)}`}</td>
            </SpeakerRow>
          ))}
        </tbody>
      </table>
      <p className="footnote">
        These delays bring all speakers together. A filled mark is when the sound arrives, an open
        one when it does with its delay; two bars before a mark say that its line is blocked.
      </p>
    </>
  );
}

function AxisDrawing({
  axis,
  width,
  together,
}: {
  axis: TimeAxis;
  width: number;
  together: number;
}) {
  // A label cut in half at the edge would be read wrong.
  const shown = axis.ticks
    .filter(({ time }) => axis.x(time) > 24 && axis.x(time) < width - 14)
    .map(({ label }) => label);
  return (
    <svg width={width} height="26" aria-hidden="true">
      {axis.ticks.map(({ time, label }) => (
        <g key={label}>
          {shown.includes(label) && (
            <text className="tick-label" x={axis.x(time)} y="13" textAnchor="middle">
              {label === shown[0] ? `${label} ms` : label}
            </text>
          )}
          <path className="tick-line" d={`M${axis.x(time)} 19v7`} />
        </g>
      ))}
      <path className="together-line" d={`M${axis.x(together)} 17v9`} />
    </svg>
  );
}

interface TrackProps {
  axis: TimeAxis;
  width: number;
  time: number;
  after: number;
  together: number;
  side: Side | undefined;
  blocked: boolean;
}

function Track({ axis, width, time, after, together, side, blocked }: TrackProps) {
  const [x, end] = [axis.x(time), axis.x(after)];
  return (
    <svg width={width} height={HEIGHT} aria-hidden="true" className={`track ${side ?? 'neither'}`}>
      {axis.ticks.map((tick) => (
        <path key={tick.label} className="tick-line" d={`M${axis.x(tick.time)} 0V${HEIGHT}`} />
      ))}
      <path className="together-line" d={`M${axis.x(together)} 0V${HEIGHT}`} />
      <path className="delay-line" d={`M${x} ${MIDDLE}H${end}`} />
      <Mark x={end} side={side} className="mark-after" />
      <Mark x={x} side={side} className="mark-before" />
      {blocked && (
        <path className="mark-wall" d={`M${x - 13} ${MIDDLE - 8}v16M${x - 17} ${MIDDLE - 8}v16`} />
      )}
      <text className="mark-letter" x={x} y={MIDDLE + 4} textAnchor="middle">
        {side === 'left' ? 'L' : side === 'right' ? 'R' : ''}
      </text>
    </svg>
  );
}

/** Left a square, right a circle, neither a lozenge. */
function Mark({ x, side, className }: { x: number; side: Side | undefined; className: string }) {
  if (side === 'left')
    return <rect className={className} x={x - 8} y={MIDDLE - 8} width="16" height="16" rx="2" />;
  if (side === 'right') return <circle className={className} cx={x} cy={MIDDLE} r="8.5" />;
  return <path className={className} d={`M${x - 9} ${MIDDLE}l9-9 9 9-9 9z`} />;
}
