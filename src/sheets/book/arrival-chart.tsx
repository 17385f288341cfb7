import type { Side } from '../../geometry';
import { pathOf } from '../drawing/car-lines';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs, piece } from '../page';
import { capital } from '../parts/capital';
import type { PrintedWords } from '../words/use-words';

/** mm of paper: a row, the names before the axis, the axis under the rows. */
const ROW = 6.2;
const NAMES = 46;
const AXIS = 9;
/** Rows on one drawing: more go on to the next, so that none is cut. */
const ROWS = 30;
/** Steps a reader counts in without thinking, ms. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10];

interface Row {
  id: string;
  name: string;
  side: Side | undefined;
  time: number;
  after: number;
  blocked: boolean;
}

/**
 * All speakers on one axis of time, before and after the tune's delays.
 * @param delays ms by speaker  @param width mm of paper
 */
export function chartBlocks(
  facts: PaperFacts,
  delays: ReadonlyMap<string, number>,
  words: PrintedWords,
  width: number,
): Block[] {
  const { option, seat } = facts;
  const { t, names } = words;
  const rows = option.speakers.flatMap((speaker): Row[] => {
    const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
    if (!arrival) return [];
    return [
      {
        id: speaker.id,
        name: capital(names.speaker(speaker, option.speakers)),
        side: speaker.side,
        time: arrival.time,
        after: arrival.time + (delays.get(speaker.id) ?? 0),
        blocked: arrival.line === 'blocked',
      },
    ];
  });
  const title = heading('chart', t('book.chart'));
  if (rows.length === 0 || !seat)
    return [title, ...paragraphs('chart-none', t('customer.speakers.none'))];
  const span = spanOf(rows);
  const parts = Array.from({ length: Math.ceil(rows.length / ROWS) }, (_, i) =>
    rows.slice(i * ROWS, (i + 1) * ROWS),
  );
  return [
    title,
    ...parts.map((part, i) =>
      piece(
        `chart-${i}`,
        <Chart
          rows={part}
          span={span}
          width={width}
          words={words}
          label={t('book.chart.label', { seat: names.seat(seat.id) })}
        />,
        { keepWithNext: i === parts.length - 1 },
      ),
    ),
    piece('chart-key', <p className="paper-small">{t('book.chart.key')}</p>),
  ];
}

interface Span {
  from: number;
  to: number;
  step: number;
}

function spanOf(rows: readonly Row[]): Span {
  const times = rows.flatMap(({ time, after }) => [time, after]);
  const [low, high] = [Math.min(...times), Math.max(...times)];
  const room = Math.max((high - low) * 0.06, 0.1);
  const step = STEPS.find((one) => (high - low + 2 * room) / one <= 10) ?? 20;
  return { from: Math.max(0, low - room), to: high + room, step };
}

interface ChartProps {
  rows: readonly Row[];
  span: Span;
  width: number;
  words: PrintedWords;
  label: string;
}

function Chart({ rows, span, width, words: { t, n }, label }: ChartProps) {
  const height = rows.length * ROW + AXIS;
  const bottom = rows.length * ROW;
  const x = (time: number) =>
    NAMES + ((time - span.from) / (span.to - span.from)) * (width - NAMES - 2);
  const first = Math.ceil(span.from / span.step);
  const ticks = Array.from(
    { length: Math.floor(span.to / span.step) - first + 1 },
    (_, i) => (first + i) * span.step,
  );
  const digits = span.step < 1 ? 1 : 0;
  return (
    <svg
      className="car-picture"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm` }}
      role="img"
      aria-label={label}
    >
      {ticks.map((time) => (
        <g key={time}>
          <path d={`M${x(time)} 0V${bottom}`} stroke="#d3cec1" strokeWidth={0.15} />
          <text x={x(time)} y={bottom + 3.6} fontSize={2.6} textAnchor="middle" fill="#55524a">
            {n.number(time, digits)}
          </text>
        </g>
      ))}
      <text x={width - 1} y={bottom + 7.6} fontSize={2.6} textAnchor="end" fill="#55524a">
        {t('book.chart.ms')}
      </text>
      {rows.map(({ id, name, side, time, after, blocked }, i) => {
        const y = (i + 0.5) * ROW;
        return (
          <g key={id}>
            <text x={0} y={y + 1} fontSize={2.8} fill="#16150f">
              {name}
            </text>
            <path
              d={pathOf([
                [x(time), y],
                [x(after), y],
              ])}
              stroke="#16150f"
              strokeWidth={0.35}
              strokeDasharray={side === 'right' ? '1.2 0.8' : undefined}
            />
            <Mark x={x(after)} y={y} side={side} filled={false} />
            <Mark x={x(time)} y={y} side={side} filled />
            {blocked && (
              <path
                d={`M${x(time) - 2.6} ${y - 1.7}v3.4M${x(time) - 3.5} ${y - 1.7}v3.4`}
                stroke="#16150f"
                strokeWidth={0.4}
              />
            )}
          </g>
        );
      })}
      <path d={`M${NAMES} ${bottom}H${width}`} stroke="#16150f" strokeWidth={0.25} />
    </svg>
  );
}

/** Left a square, right a circle, neither a lozenge. */
function Mark(props: { x: number; y: number; side: Side | undefined; filled: boolean }) {
  const { x, y, side, filled } = props;
  const colour = side === 'left' ? '#1b4f86' : side === 'right' ? '#7a2e6e' : '#3a382f';
  const look = { fill: filled ? colour : 'white', stroke: colour, strokeWidth: 0.4 };
  if (side === 'left') return <rect x={x - 1.6} y={y - 1.6} width={3.2} height={3.2} {...look} />;
  if (side === 'right') return <circle cx={x} cy={y} r={1.75} {...look} />;
  return <path d={`M${x - 2} ${y}l2 -2 2 2 -2 2z`} {...look} />;
}
