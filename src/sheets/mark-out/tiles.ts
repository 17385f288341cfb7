/** Cuts a drawing at true size into pages that overlap. Plain numbers, mm. */
import type { Point2 } from '../../geometry';

export interface Tile {
  /** Column from the left and row from the top, from 0. */
  column: number;
  row: number;
  /** "A1": the column's letter and the row's number. */
  name: string;
  /** What of the drawing it shows: lower left and upper right corner, x right and y up. */
  low: Point2;
  high: Point2;
}

export interface Tiling {
  columns: number;
  rows: number;
  tiles: Tile[];
  /** The glue lines: where two columns, and two rows, are laid over each other. */
  xs: number[];
  ys: number[];
}

/** Neighbours show this much of the same, mm: room for tape and for marks. */
export const OVERLAP = 12;

/**
 * As few tiles as hold the drawing, which stands in their middle.
 * @param window width and height of what one page shows, mm
 */
export function tilesFor(low: Point2, high: Point2, window: Point2): Tiling {
  for (const size of window)
    if (!(size > OVERLAP))
      throw new RangeError(`tilesFor: expected windows of more than ${OVERLAP} mm, got ${size}`);
  const count = (k: 0 | 1) =>
    Math.max(1, Math.ceil((high[k] - low[k] - OVERLAP) / (window[k] - OVERLAP) - 1e-9));
  const [columns, rows] = [count(0), count(1)];
  const start = (k: 0 | 1, n: number) =>
    (low[k] + high[k]) / 2 - (n * (window[k] - OVERLAP) + OVERLAP) / 2;
  const [left, bottom] = [start(0, columns), start(1, rows)];
  const [stepX, stepY] = [window[0] - OVERLAP, window[1] - OVERLAP];
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = left + column * stepX;
      const y = bottom + (rows - 1 - row) * stepY;
      tiles.push({
        column,
        row,
        name: `${letterOf(column)}${row + 1}`,
        low: [x, y],
        high: [x + window[0], y + window[1]],
      });
    }
  const lines = (first: number, step: number, n: number) =>
    Array.from({ length: n - 1 }, (_, i) => first + (i + 1) * step + OVERLAP / 2);
  return {
    columns,
    rows,
    tiles,
    xs: lines(left, stepX, columns),
    ys: lines(bottom, stepY, rows),
  };
}

const letterOf = (column: number): string => String.fromCharCode(65 + (column % 26));
