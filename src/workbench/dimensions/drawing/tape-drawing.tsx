import type { CabinModel } from '../../../geometry';
import { detailBox } from './detail';
import { type FlatShape, flatShapes } from './outline';
import { boxOf, type Fit, fitToPaper, type Point, pathThrough, project } from './project';
import { angleMarks, onPaper, tapeMarks } from './tape';
import './drawing.css';

const WIDTH = 420;
const HEIGHT = 270;

const VIEW_WORDS = {
  side: 'seen from the left side',
  plan: 'seen from above, nose to the left',
  front: 'seen looking forward from inside',
} as const;

export interface TapeDrawingProps {
  cabin: CabinModel;
  dimension: string;
  /** The dimension's plain name, for the drawing's description. */
  name: string;
  /** The value as shown, with its unit. */
  value: string;
  unit: 'mm' | 'deg';
}

/** The cabin as it is dimensioned now, with the tape laid where the dimension is measured. */
export function TapeDrawing({ cabin, dimension, name, value, unit }: TapeDrawingProps) {
  const tape = cabin.dimensionLines.find((line) => line.dimension === dimension);
  if (!tape) return null;
  const shapes = flatShapes(cabin, tape.view);
  const from = project(tape.view, tape.from);
  const to = project(tape.view, tape.to);
  const cabinBox = boxOf(
    shapes.filter(({ kind }) => kind !== 'body').flatMap(({ points }) => points),
  );
  if (!cabinBox) return null;
  const box = detailBox(cabinBox, from, to, WIDTH / HEIGHT);
  const paper = fitToPaper(box, WIDTH, HEIGHT, 0);
  const centre: Point = [
    (cabinBox.left + cabinBox.right) / 2,
    (cabinBox.top + cabinBox.bottom) / 2,
  ];
  const words = VIEW_WORDS[tape.view];
  return (
    <figure className="tape-drawing">
      <svg
        viewBox={`0 0 ${paper.width} ${paper.height.toFixed(0)}`}
        role="img"
        aria-label={`Where to hold the tape for ${name}: ${value}, the car ${words}`}
      >
        <FlatShapes shapes={shapes} paper={paper} />
        {unit === 'deg' ? (
          <Angle
            from={paper.at(from)}
            to={paper.at(to)}
            degrees={cabin.dimensions[dimension] ?? 0}
            value={value}
          />
        ) : (
          <Tape from={paper.at(from)} to={paper.at(to)} clearOf={paper.at(centre)} value={value} />
        )}
      </svg>
      <figcaption>{`The car ${words}.`}</figcaption>
    </figure>
  );
}

export function FlatShapes({ shapes, paper }: { shapes: readonly FlatShape[]; paper: Fit }) {
  return shapes.map((shape) => (
    <path
      key={shape.id}
      className={`flat flat-${shape.kind}`}
      d={pathThrough(shape.points.map(paper.at), shape.closed)}
    />
  ));
}

function Tape(props: { from: Point; to: Point; clearOf: Point; value: string }) {
  const marks = tapeMarks(props.from, props.to, props.clearOf, props.value);
  return (
    <g className="tape">
      {marks.extensions.map((d) => (
        <path key={d} className="tape-fine" d={d} />
      ))}
      <path className="tape-line" d={marks.line} />
      {marks.arrows.map((d) => (
        <path key={d} className="tape-arrow" d={d} />
      ))}
      <End at={props.from} />
      <End at={props.to} />
      <Value at={marks.label} text={props.value} />
    </g>
  );
}

function Angle(props: { from: Point; to: Point; degrees: number; value: string }) {
  const marks = angleMarks(props.from, props.to, props.degrees);
  return (
    <g className="tape">
      <path className="tape-line" d={marks.legs[0]} />
      <path className="tape-fine" d={marks.legs[1]} />
      <path className="tape-line" d={marks.arc} />
      {marks.arrows.map((d) => (
        <path key={d} className="tape-arrow" d={d} />
      ))}
      <Value at={marks.label} text={props.value} />
    </g>
  );
}

const End = ({ at: [x, y] }: { at: Point }) => <circle className="tape-end" cx={x} cy={y} r={3} />;

function Value({ at, text }: { at: Point; text: string }) {
  const [x, y] = onPaper(at, text, WIDTH, HEIGHT);
  return (
    <text className="tape-value" x={x.toFixed(1)} y={y.toFixed(1)}>
      {text}
    </text>
  );
}
