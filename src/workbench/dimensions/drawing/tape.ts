import { type Point, pathThrough } from './project';

/** Lengths on the paper, drawing units (about a pixel): drawing practice, chosen by eye. */
const OFFSET = 16;
const GAP = 3;
const OVERRUN = 4;
const ARROW = 8;
const ARROW_HALF = 2.6;
/** Shorter than this the arrows stand outside and point inward. */
const TIGHT = 3 * ARROW;
/** About one sign of the value's lettering, wide and high; and the air round it. */
const SIGN = { width: 8.6, height: 17 };
const AIR = 5;

export interface TapeMarks {
  /** The dimension line. */
  line: string;
  /** From the measured points to the dimension line. */
  extensions: string[];
  /** Filled arrowheads. */
  arrows: string[];
  /** Where the value stands. */
  label: Point;
}

/**
 * The marks of a dimension in a drawing: the line moved clear of what it measures, away from
 * `clearOf`, with extension lines back to the points and an arrowhead at each end. The value breaks
 * the line, or stands beside it where the line is too short for both.
 */
export function tapeMarks(from: Point, to: Point, clearOf: Point, value: string): TapeMarks {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy) || 1;
  const along: Point = [dx / length, dy / length];
  let normal: Point = [-along[1], along[0]];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  if ((middle[0] - clearOf[0]) * normal[0] + (middle[1] - clearOf[1]) * normal[1] < 0)
    normal = [-normal[0], -normal[1]];

  const a = step(from, normal, OFFSET);
  const b = step(to, normal, OFFSET);
  const tight = length < TIGHT;
  const outward = tight ? ARROW * 2 : 0;
  const size = { width: value.length * SIGN.width, height: SIGN.height };
  const fits = extent(size, along) + 2 * (ARROW + AIR) < length;
  return {
    line: pathThrough([step(a, along, -outward), step(b, along, outward)]),
    extensions: [from, to].map((p) =>
      pathThrough([step(p, normal, GAP), step(p, normal, OFFSET + OVERRUN)]),
    ),
    arrows: [arrow(a, along, tight ? -1 : 1), arrow(b, along, tight ? 1 : -1)],
    label: step(
      [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      normal,
      fits ? 0 : extent(size, normal) / 2 + AIR,
    ),
  };
}

export interface AngleMarks {
  /** The measured line and the line it is measured from. */
  legs: [string, string];
  arc: string;
  arrows: string[];
  label: Point;
}

/**
 * The marks of an angle: the measured line from `from` to `to`, the upright or level line it is
 * measured from (whichever makes the given angle), an arc between the two.
 * @param valueDeg the dimension's value, degrees from upright, level or straight ahead
 */
export function angleMarks(from: Point, to: Point, valueDeg: number): AngleMarks {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.max(Math.hypot(dx, dy), 1);
  const measured = Math.atan2(dy, dx);
  const quarter = Math.PI / 2;
  const target = (Math.abs(valueDeg) * Math.PI) / 180;
  // Of the four directions along the axes, the one that makes the value with the measured line;
  // where two do alike (45°), upright wins.
  const base = [-quarter, quarter, 0, Math.PI].reduce((best, candidate) =>
    Math.abs(Math.abs(wrap(candidate - measured)) - target) + 1e-6 <
    Math.abs(Math.abs(wrap(best - measured)) - target)
      ? candidate
      : best,
  );
  const sweep = wrap(measured - base);
  const radius = Math.min(Math.max(length * 0.7, 30), 90);
  const end = (angle: number, r: number): Point => [
    from[0] + Math.cos(angle) * r,
    from[1] + Math.sin(angle) * r,
  ];
  const steps = 16;
  const arc = Array.from({ length: steps + 1 }, (_, i) => end(base + (sweep * i) / steps, radius));
  const sign = Math.sign(sweep) || 1;
  const tangent = (angle: number): Point => [-Math.sin(angle) * sign, Math.cos(angle) * sign];
  const roomy = Math.abs(sweep) * radius > TIGHT;
  return {
    legs: [pathThrough([from, end(measured, length)]), pathThrough([from, end(base, radius + 10)])],
    arc: pathThrough(arc),
    arrows: roomy
      ? [
          arrow(end(base, radius), tangent(base), 1),
          arrow(end(measured, radius), tangent(measured), -1),
        ]
      : [],
    label: end(base + sweep / 2, radius + (roomy ? 18 : 32)),
  };
}

/** How far a box reaches along a direction. */
const extent = (size: { width: number; height: number }, [x, y]: Point): number =>
  Math.abs(x) * size.width + Math.abs(y) * size.height;

/** The place of a value, moved so that all of it is on the paper. */
export function onPaper([x, y]: Point, value: string, width: number, height: number): Point {
  const half = (value.length * SIGN.width) / 2 + AIR;
  const tall = SIGN.height / 2 + AIR;
  return [Math.min(Math.max(x, half), width - half), Math.min(Math.max(y, tall), height - tall)];
}

const wrap = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

const step = (p: Point, d: Point, k: number): Point => [p[0] + d[0] * k, p[1] + d[1] * k];

/** An arrowhead with its tip at `tip`, its body lying along `sense`·`along` from it. */
function arrow(tip: Point, along: Point, sense: 1 | -1): string {
  const base = step(tip, along, sense * ARROW);
  const normal: Point = [-along[1], along[0]];
  return pathThrough([tip, step(base, normal, ARROW_HALF), step(base, normal, -ARROW_HALF)], true);
}
