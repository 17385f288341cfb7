/**
 * The spots of a map as one sheet of texels, each panel's grid in a rectangle of its own: value,
 * and whether there is one, whether the speaker does not fit, whether the place is kept clear.
 */
import { DOES_NOT_FIT, KEEP_CLEAR, type MapPanel } from '../../geometry';
import { paintedAt } from '../../plan/painted';
import type { PaintedMap } from '../../store';

/** Where a panel's grid lies in the atlas, texels. */
export interface Plot extends MapPanel {
  left: number;
  top: number;
}

export interface Layout {
  width: number;
  height: number;
  plots: readonly Plot[];
}

/** Numbers to a texel. */
export const CHANNELS = 4;

/** Every panel's grid beside and below the others, tallest first. */
export function layOut(panels: readonly MapPanel[]): Layout {
  const widest = Math.max(1, ...panels.map(({ columns }) => columns));
  const area = panels.reduce((sum, { columns, rows }) => sum + columns * rows, 0);
  const width = Math.max(widest, Math.ceil(Math.sqrt(area) * 1.1), 1);
  let [left, top, tall] = [0, 0, 0];
  const plots = [...panels]
    .sort((a, b) => b.rows - a.rows)
    .map((panel): Plot => {
      if (left + panel.columns > width) {
        left = 0;
        top += tall;
        tall = 0;
      }
      const plot = { ...panel, left, top };
      left += panel.columns;
      tall = Math.max(tall, panel.rows);
      return plot;
    });
  return { width, height: Math.max(1, top + tall), plots };
}

/** Maps are worked out from every eighth spot to every one: where a finer one is to come still. */
const STRIDES = [1, 2, 4, 8] as const;

/** The spot whose number stands for this one so far; −1 where nothing near is done. */
export function stands(plot: MapPanel, done: Uint8Array, column: number, row: number): number {
  for (const stride of STRIDES) {
    const k = plot.first + (row - (row % stride)) * plot.columns + (column - (column % stride));
    if (done[k] === 1) return k;
  }
  return -1;
}

/** Fills `texels` ({@link CHANNELS} numbers each) with what the map holds so far. */
export function fillInPlace(
  texels: Float32Array,
  { width, plots }: Layout,
  { map, quantity }: Pick<PaintedMap, 'map' | 'quantity'>,
): void {
  for (const plot of plots)
    for (let row = 0; row < plot.rows; row++)
      for (let column = 0; column < plot.columns; column++) {
        const at = CHANNELS * ((plot.top + row) * width + plot.left + column);
        const k = stands(plot, map.done, column, row);
        const value = k < 0 ? Number.NaN : paintedAt(map, quantity, k);
        const known = Number.isFinite(value);
        const fit = k < 0 ? 0 : map.fit[k];
        texels[at] = known ? value : 0;
        texels[at + 1] = known ? 1 : 0;
        texels[at + 2] = fit === DOES_NOT_FIT || fit === KEEP_CLEAR ? 1 : 0;
        texels[at + 3] = fit === KEEP_CLEAR ? 1 : 0;
      }
}
