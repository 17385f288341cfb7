import type { FlatPanel, Panel, Point2, Side, SpeakerInput } from '../../../geometry';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { Corner } from './corner';
import { barLength, MARGIN, wordFor } from './drawing-scale';
import type { DrawnPocket } from './pocket-groups';

export interface PocketDrawingProps {
  optionId: string;
  drawn: DrawnPocket;
  panel: Panel;
  flat: FlatPanel;
  speakers: readonly SpeakerInput[];
  /** Pixels to a millimetre. */
  scale: number;
  unit: LengthUnit;
  locked: boolean;
}

/** The outline on its panel laid flat, to scale: corners to drag, or to move by arrow keys. */
export function PocketDrawing(props: PocketDrawingProps) {
  const { optionId, drawn, panel, flat, speakers, scale, unit, locked } = props;
  const { pocket, study, name } = drawn;
  const [wide, high] = flat.size;
  const width = wide * scale + 2 * MARGIN.side;
  const height = high * scale + MARGIN.top + MARGIN.bottom;
  const onPaper = ([x, y]: Point2): Point2 => [
    MARGIN.side + x * scale,
    MARGIN.top + (high - y) * scale,
  ];
  const outline = pocket.outline.map(flat.toFlat);
  const inIt = speakers.filter(
    ({ id, mount }) => pocket.speakers.includes(id) && mount?.panel === panel.id,
  );
  const foot = height - MARGIN.bottom;
  const bar = barLength(scale, unit, Math.min(90, wide * scale * 0.4));
  const middle = width / 2;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with corners to take hold of is no fieldset
    <svg
      className="pocket-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label={
        `Outline of the ${name} on the ${panel.name}, laid flat: the panel is ` +
        `${formatLength(wide, unit)} wide and ${formatLength(high, unit)} high, seen from the cabin`
      }
    >
      <path className="pocket-panel" d={closedPath(flat.edge.map(onPaper))} />
      <path
        className={`pocket-outline ${toneOf(study.side)}`}
        d={closedPath(outline.map(onPaper))}
        data-lies={pocket.lies ?? 'behind'}
      />
      {inIt.map(({ id, mount, body }) => {
        if (!mount) return null;
        const [x, y] = onPaper(flat.toFlat([mount.u, mount.v]));
        return (
          <g key={id} className="pocket-cutout">
            {body && <circle cx={x} cy={y} r={(body.cutout / 2) * scale} />}
            <path d={`M${x - 4} ${y}h8M${x} ${y - 4}v8`} />
          </g>
        );
      })}
      <g className="pocket-notes">
        <text x={MARGIN.side} y={foot + 15}>
          {wordFor(flat.right.map((n) => -n) as [number, number, number])}
        </text>
        <text x={width - MARGIN.side} y={foot + 15} textAnchor="end">
          {wordFor(flat.right)}
        </text>
        <path
          d={`M${middle - (bar * scale) / 2} ${foot + 8}v6h${bar * scale}v-6`}
          className="pocket-bar"
        />
        <text x={middle} y={foot + 30} textAnchor="middle">
          {formatLength(bar, unit, 0)}
        </text>
      </g>
      {pocket.outline.map((_, i) => (
        <Corner
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the outline
          key={i}
          optionId={optionId}
          drawn={drawn}
          flat={flat}
          index={i}
          onPaper={onPaper}
          scale={scale}
          unit={unit}
          locked={locked}
        />
      ))}
    </svg>
  );
}

const toneOf = (side: Side | null): string => (side ? `tone-${side}` : 'tone-ink');

const closedPath = (points: readonly Point2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
