import {
  dimensionLine,
  type Point2,
  type RingForm,
  type RingInput,
  ringSection,
  strokeOf,
} from '../../geometry';
import type { PrintedWords } from '../words/use-words';

export interface SectionOnPaperProps {
  input: RingInput;
  form: RingForm;
  /** Most it may take on paper, mm. */
  room: Point2;
  label: string;
  words: PrintedWords;
}

/** Room for the measures round the drawing, mm. */
const AROUND = { side: 22, top: 19, bottom: 15 } as const;
const STYLE = { arrow: 1.8, gap: 0.9, letter: 1.9 } as const;
const OFF = 7;
const TEXT = 3.1;

/** Scales a drawing is printed in where true size does not fit. */
const SCALES = [1, 0.75, 0.5, 0.25, 0.1];

/** The largest of the usual scales with which the section fits. */
export function scaleFor(input: RingInput, form: RingForm, room: Point2): number {
  const { low, high } = ringSection(input, form);
  const fits = Math.min(
    (room[0] - 2 * AROUND.side) / (high[0] - low[0]),
    (room[1] - AROUND.top - AROUND.bottom) / (high[1] - low[1]),
  );
  return SCALES.find((scale) => scale <= fits) ?? fits;
}

/** The ring cut along its thin and its thick side, on its panel, with its measures. */
export function SectionOnPaper({ input, form, room, label, words }: SectionOnPaperProps) {
  const { t, n } = words;
  const drawn = ringSection(input, form);
  const scale = scaleFor(input, form, room);
  const width = (drawn.high[0] - drawn.low[0]) * scale + 2 * AROUND.side;
  const height = (drawn.high[1] - drawn.low[1]) * scale + AROUND.top + AROUND.bottom;
  const at = ([x, y]: Point2): Point2 => [
    AROUND.side + (x - drawn.low[0]) * scale,
    AROUND.top + (drawn.high[1] - y) * scale,
  ];
  const mm = (value: number) => n.length(value, n.unit === 'mm' ? 1 : 2);
  const both = (ends: readonly [Point2, Point2]) => [at(ends[0]), at(ends[1])] as const;
  const wedge = form.thickSide !== null;
  const panel = at([0, 0])[1];
  const dimensions = [
    dimensionLine(both(drawn.front), OFF + 8, mm(input.outer), STYLE),
    dimensionLine(both(drawn.bore), OFF, mm(input.bore), STYLE),
    dimensionLine(both(drawn.thin), OFF - 2, mm(form.sections.thinOuter), STYLE),
    ...(wedge
      ? [
          dimensionLine(
            both([drawn.thick[1], drawn.thick[0]]),
            OFF - 2,
            mm(form.sections.thickOuter),
            STYLE,
          ),
        ]
      : []),
  ];
  return (
    <svg
      className="ring-on-paper"
      width={`${width.toFixed(3)}mm`}
      height={`${height.toFixed(3)}mm`}
      viewBox={`0 0 ${width.toFixed(3)} ${height.toFixed(3)}`}
      role="img"
      aria-label={label}
      data-scale={scale}
    >
      <path className="ring-ground" d={`M2 ${panel}H${width - 2}v1.6H2Z`} />
      {drawn.walls.map((wall, i) => (
        <path
          key={i === 0 ? 'thin' : 'thick'}
          className="ring-cut"
          data-wall={i === 0 ? 'thin' : 'thick'}
          d={`${strokeOf(wall.map(at))}Z`}
        />
      ))}
      <path className="ring-chain" d={strokeOf([at(drawn.axis[0]), at(drawn.axis[2])])} />
      {wedge && <path className="ring-dash" d={strokeOf(drawn.normal.map(at))} />}
      {dimensions.map((one) => (
        <g key={one.d}>
          <path className="ring-measure" d={one.d} />
          <text
            x={one.text[0]}
            y={one.text[1]}
            fontSize={TEXT}
            textAnchor={one.anchor}
            transform={`rotate(${one.turn.toFixed(2)} ${one.text[0].toFixed(2)} ${one.text[1].toFixed(2)})`}
          >
            {one.label}
          </text>
        </g>
      ))}
      <g fontSize={TEXT}>
        <text x={2} y={panel + 11}>
          {t(wedge ? 'ring.thin-side' : 'ring.panel')}
        </text>
        {wedge && (
          <>
            <text x={width / 2} y={panel + 11} textAnchor="middle" fontWeight={650}>
              {t('ring.angle', { deg: n.angle(form.wedgeDeg, 1) })}
            </text>
            <text x={width - 2} y={panel + 11} textAnchor="end">
              {t('ring.thick-side')}
            </text>
          </>
        )}
      </g>
    </svg>
  );
}
