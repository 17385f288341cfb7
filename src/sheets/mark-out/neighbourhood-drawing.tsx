import type { Point2 } from '../../geometry';
import type { PrintedWords } from '../words/use-words';
import type { Neighbourhood } from './neighbourhood';

export interface NeighbourhoodDrawingProps {
  seen: Neighbourhood;
  /** Most it may take on paper, mm. */
  room: Point2;
  label: string;
  words: Pick<PrintedWords, 't'>;
}

/** Numbers in circles are this large on paper, mm. */
const BADGE = 2.5;
const TEXT = 2.9;

const pathOf = (points: readonly Point2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}`;

/** The same places, pushed from each other until none is nearer than `least` to another. */
export function apart(places: readonly Point2[], least: number): Point2[] {
  const moved = places.map(([x, y]): [number, number] => [x, y]);
  for (let turn = 0; turn < 40; turn++)
    for (const [i, a] of moved.entries())
      for (const b of moved.slice(i + 1)) {
        const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
        const far = Math.sqrt(dx * dx + dy * dy);
        if (far >= least) continue;
        // Those on one place part sideways.
        const [ux, uy] = far > 1e-6 ? [dx / far, dy / far] : [1, 0];
        const half = (least - far) / 2 + 1e-6;
        a[0] -= ux * half;
        a[1] -= uy * half;
        b[0] += ux * half;
        b[1] += uy * half;
      }
  return moved;
}

/** The panel and its neighbours as seen from the cabin; tapes by their numbers, the spot a cross. */
export function NeighbourhoodDrawing({ seen, room, label, words }: NeighbourhoodDrawingProps) {
  const { low, high, outlines, points } = seen;
  const scale = Math.min(room[0] / (high[0] - low[0]), room[1] / (high[1] - low[1]));
  const width = (high[0] - low[0]) * scale;
  const height = (high[1] - low[1]) * scale;
  const at = ([x, y]: Point2): Point2 => [(x - low[0]) * scale, (high[1] - y) * scale];
  const spot = at([0, 0]);
  const badges = apart(points.map(at), 2 * BADGE + 0.4);
  const { t } = words;
  return (
    <svg
      className="mark-near"
      width={`${width.toFixed(2)}mm`}
      height={`${height.toFixed(2)}mm`}
      viewBox={`0 0 ${width.toFixed(2)} ${height.toFixed(2)}`}
      role="img"
      aria-label={label}
    >
      <rect className="mark-ground" width={width} height={height} />
      {outlines.map(({ id, own, points: outline }) => (
        <path
          key={id}
          className={own ? 'mark-panel mark-own' : 'mark-panel'}
          d={`${pathOf(outline.map(at))}Z`}
        />
      ))}
      {points.map((point, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: a tape is its place in the list
          key={i}
          className={i < 3 ? 'mark-tape' : 'mark-tape mark-check'}
          d={pathOf([spot, at(point)])}
        />
      ))}
      {badges.map(([x, y], i) => {
        const [px, py] = at(points[i] as Point2);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a tape is its place in the list
          <g key={i}>
            <path className="mark-lead" d={`M${px} ${py}L${x} ${y}`} />
            <circle className="mark-point" cx={px} cy={py} r={0.6} />
            <circle className="mark-badge" cx={x} cy={y} r={BADGE} />
            <text className="mark-number" x={x} y={y + 1} fontSize={TEXT} textAnchor="middle">
              {i + 1}
            </text>
          </g>
        );
      })}
      <path className="mark-spot" d={`M${spot[0] - 3} ${spot[1]}h6M${spot[0]} ${spot[1] - 3}v6`} />
      <text className="mark-way" x={1.5} y={3.8} fontSize={TEXT}>
        {t('mark.way-up', { way: seen.up })}
      </text>
      <text className="mark-way" x={width - 1.5} y={height - 1.5} fontSize={TEXT} textAnchor="end">
        {t('mark.way-right', { way: seen.right })}
      </text>
    </svg>
  );
}
