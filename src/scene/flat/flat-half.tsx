/** One option from above: the car, its speakers by name, and the ways of their sound. */
import type { CarLine, HeadShape, Line, Side, Spot } from '../../geometry';
import { speakerName } from '../../plan/names';
import { sessionStore, useSession } from '../../store';
import type { Rect } from '../halves/split';
import { shortLineWords } from '../words/line-words';
import { shortSide } from '../words/short-side';
import type { FlatPlan, FlatSpeaker } from './flat-plan';

const path = (spots: readonly Spot[], closed: boolean): string => {
  const d = spots.map(([x, y], i) => `${i ? 'L' : 'M'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
  return closed && d ? `${d}Z` : d;
};

/** As in 3D: drawn through where free, dash-dot close past something, dashes round what is in the way. */
const DASHES: Readonly<Record<Line, string | undefined>> = {
  clear: undefined,
  grazing: '9 3 2 3',
  blocked: '5 4',
};

export function FlatHalf({ plan, rect }: { plan: FlatPlan; rect: Rect }) {
  const { car, head, speakers, narrow, toSheet } = plan;
  const onSheet = (spots: readonly Spot[], closed: boolean) => path(spots.map(toSheet), closed);
  const { left, top, width, height } = rect;
  const lines: readonly CarLine[] = car.lines;
  return (
    <svg
      className="flat-half"
      style={{ left, top }}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      <path className="flat-ground" d={onSheet(car.outline, true)} />
      {lines.map(({ kind, points, closed }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of one car never change places
        <path key={i} className={`flat-${kind}`} d={onSheet(points, closed)} />
      ))}
      {speakers.map(({ speaker, arrival, way }) => (
        <path
          key={speaker.id}
          className={`flat-way ${arrival?.line ?? 'clear'}`}
          d={path(way, false)}
          strokeDasharray={DASHES[arrival?.line ?? 'clear']}
        />
      ))}
      {head && <Head shape={head} toSheet={toSheet} />}
      {speakers.map((one) => (
        <Speaker
          key={one.speaker.id}
          one={one}
          narrow={narrow}
          among={speakers.map(({ speaker }) => speaker)}
        />
      ))}
    </svg>
  );
}

function Head({ shape, toSheet }: { shape: HeadShape; toSheet: FlatPlan['toSheet'] }) {
  const onSheet = (spots: readonly Spot[]) => spots.map(toSheet);
  return (
    <g className="flat-head">
      <path d={path(onSheet(shape.skull), true)} />
      <path d={path(onSheet(shape.nose), false)} />
      {(['left', 'right'] as const).map((ear) => {
        const [x, y] = toSheet(shape.ears[ear]);
        return <circle key={ear} cx={x} cy={y} r="2.5" />;
      })}
    </g>
  );
}

interface SpeakerProps {
  one: FlatSpeaker;
  narrow: boolean;
  among: Parameters<typeof speakerName>[1];
}

/** Its mark, and beside the car its name and how far its sound goes; a click selects it. */
function Speaker({ one: { speaker, at, arrival, label }, narrow, among }: SpeakerProps) {
  const unit = useSession((session) => session.lengthUnit);
  const chosen = useSession(
    ({ selection }) => selection?.kind === 'speaker' && selection.id === speaker.id,
  );
  const { x, y, side } = label;
  const anchor = side === 'left' ? 'end' : 'start';
  const said = arrival ? shortLineWords(arrival, unit) : '';
  const lines = narrow ? said.split(', ') : [said];
  /** Of the name; the lines of a label stand round its middle. */
  const top = y - (narrow ? 9 : 2);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: hidden from those who cannot see it; the list selects too
    <g
      className="flat-speaker"
      data-chosen={chosen}
      onClick={() => sessionStore.setState({ selection: { kind: 'speaker', id: speaker.id } })}
    >
      <path className="flat-leader" d={path([at, [x + (side === 'left' ? 4 : -4), y]], false)} />
      <Mark side={speaker.side} at={at} />
      <text className="flat-name" x={x} y={top} textAnchor={anchor}>
        {shortSide(speakerName(speaker, among))}
      </text>
      {lines.map((line, i) => (
        <text
          key={line}
          className={`flat-length ${arrival?.line ?? ''}`}
          x={x}
          y={top + 15 * (i + 1)}
          textAnchor={anchor}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** Left a square, right a circle, neither a lozenge. */
function Mark({ side, at: [x, y] }: { side: Side | undefined; at: Spot }) {
  const className = `flat-mark ${side ?? 'neither'}`;
  if (side === 'left')
    return <rect className={className} x={x - 5} y={y - 5} width="10" height="10" rx="1" />;
  if (side === 'right') return <circle className={className} cx={x} cy={y} r="5.5" />;
  return <path className={className} d={`M${x - 6.5} ${y}l6.5-6.5 6.5 6.5-6.5 6.5z`} />;
}
