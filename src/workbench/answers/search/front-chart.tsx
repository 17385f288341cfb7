import { type LengthUnit, lengthNumber } from '../../../plan/units';
import { digitsOf } from '../../parts/chart/ticks';
import { useWidth } from '../../parts/use-width';
import type { Found, Measure, Proposal } from './found';
import { axisOver, type FrontAxis, pointOf, weightiest } from './front-axes';
import { MEASURE_NAMES, measureText } from './measure-words';
import { chooseProposal } from './search-store';

const HEIGHT = 240;
const EDGE = { left: 46, right: 14, top: 20, bottom: 40 };

const UNITS: Readonly<Record<Measure, string>> = {
  difference: '',
  pathSpread: '',
  offAxisDeg: '°',
  obstructionDb: 'dB',
  firstReflectionTime: 'ms',
};

interface FrontChartProps {
  found: Found;
  chosen: string | null;
  unit: LengthUnit;
}

/** The front against the two aims that weigh most: a dot a spot, the answers by their numbers. */
export function FrontChart({ found, chosen, unit }: FrontChartProps) {
  const [ref, width] = useWidth<HTMLDivElement>(420);
  const axes = weightiest(found);
  if (!axes) return null;
  const at = (one: Pick<Proposal, 'measures'>) => pointOf(one, axes);
  const placed = (list: readonly Proposal[]) =>
    list.flatMap((one) => {
      const point = at(one);
      return point ? [{ one, point }] : [];
    });
  const front = placed(found.front);
  const answers = placed(found.answers);
  const now = found.now && at(found.now);
  const all = [...front, ...answers].map(({ point }) => point).concat(now ? [now] : []);
  if (all.length === 0) return null;
  const x = axisOver(
    axes[0],
    all.map(([a]) => a),
    Math.max(2, Math.floor(width / 90)),
  );
  const y = axisOver(
    axes[1],
    all.map(([, b]) => b),
    5,
  );
  const px = (v: number) => place(v, x, EDGE.left, width - EDGE.right);
  const py = (v: number) => place(v, y, HEIGHT - EDGE.bottom, EDGE.top);
  const left = found.front.length - front.length;
  const chosenPoint = [...answers, ...front].find(({ one }) => one.key === chosen)?.point;
  return (
    <div ref={ref} className="front-chart">
      <svg
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={chartSentence(found, axes, unit)}
      >
        {y.ticks.map((v) => (
          <g key={v}>
            <path className="front-grid" d={`M${EDGE.left} ${py(v)}H${width - EDGE.right}`} />
            <text x={EDGE.left - 6} y={py(v) + 4} textAnchor="end">
              {tickText(y, v, unit)}
            </text>
          </g>
        ))}
        {x.ticks.map((v) => (
          <g key={v}>
            <path className="front-grid" d={`M${px(v)} ${EDGE.top}V${HEIGHT - EDGE.bottom}`} />
            <text x={px(v)} y={HEIGHT - EDGE.bottom + 15} textAnchor="middle">
              {tickText(x, v, unit)}
            </text>
          </g>
        ))}
        <text className="front-title" x={width - EDGE.right} y={HEIGHT - 6} textAnchor="end">
          {axisTitle(axes[0], unit)} →
        </text>
        <text className="front-title" x={4} y={12}>
          ↑ {axisTitle(axes[1], unit)}
        </text>
        {front.map(({ one, point: [a, b] }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table beside it does the same by keyboard
          <circle
            key={one.key}
            className="front-dot"
            cx={px(a)}
            cy={py(b)}
            r={4}
            onClick={() => chooseProposal(one.key)}
          />
        ))}
        {now && (
          <g className="front-now">
            <path d={`M${px(now[0]) - 5} ${py(now[1]) - 5}h10v10h-10z`} />
            <text x={Math.min(px(now[0]) + 9, width - 30)} y={py(now[1]) + 4}>
              now
            </text>
          </g>
        )}
        {chosenLast(answers, chosen).map(({ one, point: [a, b] }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table above it does the same by keyboard
          <g
            key={one.key}
            className="front-answer"
            data-chosen={one.key === chosen}
            onClick={() => chooseProposal(one.key)}
          >
            <circle cx={px(a)} cy={py(b)} r={9} />
            <text x={px(a)} y={py(b) + 4} textAnchor="middle">
              {one.key}
            </text>
          </g>
        ))}
        {chosenPoint && (
          <circle className="front-chosen" cx={px(chosenPoint[0])} cy={py(chosenPoint[1])} r={12} />
        )}
      </svg>
      {left > 0 && (
        <p className="footnote">
          {left} of the front have no value on one of these axes and are only in the table.
        </p>
      )}
    </div>
  );
}

/** Where numbers lie on one another the one looked at is to be read. */
const chosenLast = <T extends { one: Proposal }>(list: readonly T[], chosen: string | null): T[] =>
  [...list].sort((a, b) => Number(a.one.key === chosen) - Number(b.one.key === chosen));

const place = (v: number, { range: [low, high] }: FrontAxis, from: number, to: number): number =>
  from + ((v - low) / (high - low || 1)) * (to - from);

const isLength = (measure: Measure) => measure === 'difference' || measure === 'pathSpread';

function tickText({ measure, ticks }: FrontAxis, v: number, unit: LengthUnit): string {
  if (isLength(measure)) return lengthNumber(v, unit, unit === 'in' ? 1 : 0);
  const step = ticks.length > 1 ? (ticks[1] as number) - (ticks[0] as number) : 1;
  return v.toFixed(digitsOf(step));
}

/** "Difference, mm"; which way is better, since for reflections it is the other one. */
function axisTitle(measure: Measure, unit: LengthUnit): string {
  const of = isLength(measure) ? unit : UNITS[measure];
  const better = measure === 'firstReflectionTime' ? ', later is better' : ', less is better';
  return `${MEASURE_NAMES[measure]}, ${of}${better}`;
}

function chartSentence(
  found: Found,
  [x, y]: readonly [Measure, Measure],
  unit: LengthUnit,
): string {
  const answers = found.answers.map(
    ({ key, measures }) =>
      `${key}: ${measureText(x, measures[x], unit)}, ${measureText(y, measures[y], unit)}`,
  );
  return `${MEASURE_NAMES[x]} against ${MEASURE_NAMES[y].toLowerCase()} of ${found.front.length} spots of the front and the answers. ${answers.join('; ')}`;
}
