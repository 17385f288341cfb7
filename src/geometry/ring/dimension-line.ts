/**
 * A measure in a drawing: two lines out from what is measured, one between with arrow heads. Plain
 * SVG paths, so that page and paper draw alike; y goes down.
 */
import type { Point2 } from '../fit/outline';

export interface DimensionLine {
  d: string;
  text: Point2;
  /** Turn of the text, degrees; never upside down. */
  turn: number;
  anchor: 'start' | 'middle' | 'end';
  label: string;
}

/** How large the parts of a measure are, in the drawing's own unit. */
export interface DimensionStyle {
  arrow: number;
  gap: number;
  /** Width of a letter, roughly. */
  letter: number;
}

export const strokeOf = (points: readonly Point2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}`;

/** @param off how far from what is measured; positive to the left of the way from a to b */
export function dimensionLine(
  [a, b]: readonly [Point2, Point2],
  off: number,
  label: string,
  { arrow, gap, letter }: DimensionStyle,
): DimensionLine {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  // The page's y goes down: left of the way is (uy, −ux).
  const [nx, ny] = [uy, -ux];
  const put = (p: Point2, along: number, out: number): Point2 => [
    p[0] + ux * along + nx * out,
    p[1] + uy * along + ny * out,
  ];
  const sign = Math.sign(off) || 1;
  const [from, to] = [put(a, 0, off), put(b, 0, off)];
  const lines = [
    strokeOf([put(a, 0, sign * gap), put(a, 0, off + sign * gap)]),
    strokeOf([put(b, 0, sign * gap), put(b, 0, off + sign * gap)]),
    strokeOf([from, to]),
    strokeOf([put(from, arrow, arrow * 0.44), from, put(from, arrow, -arrow * 0.44)]),
    strokeOf([put(to, -arrow, arrow * 0.44), to, put(to, -arrow, -arrow * 0.44)]),
  ];
  const way = (Math.atan2(dy, dx) * 180) / Math.PI;
  const middle = (out: number): Point2 => [
    (from[0] + to[0]) / 2 + nx * out,
    (from[1] + to[1]) / 2 + ny * out,
  ];
  // What is too short to be written along is written beside, level.
  if (label.length * letter > size && Math.abs(nx) > 0.3) {
    const [x, y] = middle(sign * letter);
    const anchor = nx * sign > 0 ? 'start' : 'end';
    return { d: lines.join(''), text: [x, y + 0.6 * letter], turn: 0, anchor, label };
  }
  const turn = way > 90 ? way - 180 : way <= -90 ? way + 180 : way;
  // Over the line as it is read.
  const over = turn === way ? 0.6 * letter : -0.6 * letter;
  return { d: lines.join(''), text: middle(over), turn, anchor: 'middle', label };
}
