/** A measure in a drawing: two lines out from what is measured, one between with arrow heads. */

export type At = readonly [number, number];

export interface DimensionLine {
  d: string;
  text: At;
  /** Turn of the text, degrees; never upside down. */
  turn: number;
  anchor: 'start' | 'middle' | 'end';
  label: string;
}

const ARROW = 5;
const GAP = 3;
/** Width of a letter, pixels, roughly. */
const LETTER = 6.5;

export const strokeOf = (points: readonly At[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}`;

/** @param off how far from what is measured, pixels; positive to the left of the way from a to b */
export function dimension([a, b]: readonly [At, At], off: number, label: string): DimensionLine {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  // The page's y goes down: left of the way is (uy, −ux).
  const [nx, ny] = [uy, -ux];
  const put = (p: At, along: number, out: number): At => [
    p[0] + ux * along + nx * out,
    p[1] + uy * along + ny * out,
  ];
  const sign = Math.sign(off) || 1;
  const [from, to] = [put(a, 0, off), put(b, 0, off)];
  const lines = [
    strokeOf([put(a, 0, sign * GAP), put(a, 0, off + sign * GAP)]),
    strokeOf([put(b, 0, sign * GAP), put(b, 0, off + sign * GAP)]),
    strokeOf([from, to]),
    strokeOf([put(from, ARROW, 2.2), from, put(from, ARROW, -2.2)]),
    strokeOf([put(to, -ARROW, 2.2), to, put(to, -ARROW, -2.2)]),
  ];
  const way = (Math.atan2(dy, dx) * 180) / Math.PI;
  const middle = (out: number): At => [
    (from[0] + to[0]) / 2 + nx * out,
    (from[1] + to[1]) / 2 + ny * out,
  ];
  // What is too short to be written along is written beside, level.
  if (label.length * LETTER > size && Math.abs(nx) > 0.3) {
    const [x, y] = middle(sign * 7);
    const anchor = nx * sign > 0 ? 'start' : 'end';
    return { d: lines.join(''), text: [x, y + 4], turn: 0, anchor, label };
  }
  const turn = way > 90 ? way - 180 : way <= -90 ? way + 180 : way;
  // Over the line as it is read.
  const over = turn === way ? 4 : -4;
  return { d: lines.join(''), text: middle(over), turn, anchor: 'middle', label };
}
