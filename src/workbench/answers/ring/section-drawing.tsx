import { useId } from 'react';
import {
  dimensionLine,
  type Point2,
  type RingForm,
  type RingInput,
  ringSection,
  strokeOf,
} from '../../../geometry';
import { formatLength, formatNumber, type LengthUnit } from '../../../plan/units';

export interface SectionDrawingProps {
  input: RingInput;
  form: RingForm;
  unit: LengthUnit;
  width: number;
  /** "left mid": whose ring. */
  name: string;
}

/** Room for the measures round the drawing, pixels; none is drawn higher than this. */
const ROOM = { side: 76, top: 58, bottom: 46 } as const;
const HIGHEST = 300;
/** Measures stand off what they measure, pixels. */
const OFF = 20;
const STYLE = { arrow: 5, gap: 3, letter: 6.5 } as const;

/** The ring cut along its thin and its thick side, on its panel, with its measures. */
export function SectionDrawing({ input, form, unit, width, name }: SectionDrawingProps) {
  const hatch = useId();
  const drawn = ringSection(input, form);
  const [wide, high] = [drawn.high[0] - drawn.low[0], drawn.high[1] - drawn.low[1]];
  const scale = Math.min((width - 2 * ROOM.side) / wide, HIGHEST / high);
  const height = high * scale + ROOM.top + ROOM.bottom;
  const left = (width - wide * scale) / 2;
  const at = ([x, y]: Point2): Point2 => [
    left + (x - drawn.low[0]) * scale,
    ROOM.top + (drawn.high[1] - y) * scale,
  ];
  const mm = (value: number) => formatLength(value, unit, unit === 'mm' ? 1 : 2);
  const [foot, front, end] = drawn.axis.map(at) as [Point2, Point2, Point2];
  const normal = drawn.normal.map(at) as [Point2, Point2];
  const panel = at([0, 0])[1];
  const wedge = form.thickSide !== null;
  // Along the front, above it; heights beside the ring, one where they are alike.
  const dimension = (ends: readonly [Point2, Point2], off: number, label: string) =>
    dimensionLine(ends, off, label, STYLE);
  const dimensions = [
    dimension(drawn.front.map(at) as [Point2, Point2], OFF + 22, mm(input.outer)),
    dimension(drawn.bore.map(at) as [Point2, Point2], OFF, mm(input.bore)),
    dimension(drawn.thin.map(at) as [Point2, Point2], OFF - 6, mm(form.sections.thinOuter)),
    ...(wedge
      ? [dimension([at(drawn.thick[1]), at(drawn.thick[0])], OFF - 6, mm(form.sections.thickOuter))]
      : []),
  ];
  return (
    <svg
      className="ring-section"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={
        `Section of the ring of the ${name}: ${mm(input.outer)} outside, bore ${mm(input.bore)}, ` +
        (wedge
          ? `${mm(form.sections.thinOuter)} at its thin and ${mm(form.sections.thickOuter)} at its thick ` +
            `side, wedge ${formatNumber(form.wedgeDeg, 1)}°`
          : `${mm(form.sections.middle)} thick`)
      }
    >
      <defs>
        <pattern
          id={hatch}
          width={6}
          height={6}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="ring-hatch" d="M0 0V6" />
        </pattern>
      </defs>
      <path className="ring-panel" d={`M8 ${panel}H${width - 8}v7H8Z`} />
      {drawn.walls.map((wall, i) => (
        <path
          key={i === 0 ? 'thin' : 'thick'}
          className="ring-wall"
          fill={`url(#${hatch})`}
          d={`${strokeOf(wall.map(at))}Z`}
        />
      ))}
      <path className="ring-axis" d={strokeOf([foot, end])} />
      {wedge && <path className="ring-normal" d={strokeOf(normal)} />}
      {wedge && <WedgeArc front={front} spot={normal[0]} foot={foot} />}
      {drawn.screws.map((screw, i) => {
        const [x, y] = at(screw);
        return (
          <path
            key={i === 0 ? 'thin' : 'thick'}
            className="ring-screw"
            d={`M${x} ${y - 5}v10M${x - 3} ${y}h6`}
          />
        );
      })}
      {dimensions.map((one) => (
        <g key={one.d} className="ring-dimension">
          <path d={one.d} />
          <text
            x={one.text[0]}
            y={one.text[1]}
            textAnchor={one.anchor}
            transform={`rotate(${one.turn.toFixed(2)} ${one.text[0].toFixed(1)} ${one.text[1].toFixed(1)})`}
          >
            {one.label}
          </text>
        </g>
      ))}
      <Notes deg={wedge ? form.wedgeDeg : null} width={width} y={panel + 36} />
    </svg>
  );
}

/** Between the panel's normal and the axis, inside the bore where there is room. */
function WedgeArc({ front, spot, foot }: { front: Point2; spot: Point2; foot: Point2 }) {
  const far = (p: Point2) => Math.sqrt((p[0] - front[0]) ** 2 + (p[1] - front[1]) ** 2);
  const radius = far(spot) * 0.75;
  const on = (p: Point2): string =>
    [0, 1]
      .map(
        (k) => (front[k] as number) + (((p[k] as number) - (front[k] as number)) / far(p)) * radius,
      )
      .join(' ');
  return <path className="ring-wedge" d={`M${on(spot)}A${radius} ${radius} 0 0 0 ${on(foot)}`} />;
}

function Notes({ deg, width, y }: { deg: number | null; width: number; y: number }) {
  if (deg === null)
    return (
      <text className="ring-note" x={10} y={y}>
        panel
      </text>
    );
  return (
    <g className="ring-note">
      <text x={10} y={y}>
        thin side
      </text>
      <text x={width / 2} y={y} textAnchor="middle" className="ring-angle">
        {`wedge ${formatNumber(deg, 1)}°`}
      </text>
      <text x={width - 10} y={y} textAnchor="end">
        thick side
      </text>
    </g>
  );
}
