import { mirrorWords } from '../cabin/mirror';
import type { Panel } from '../cabin/model';
import { pointOnPatch } from '../cabin/patch';
import { distance } from '../vector';

/** Spots spread evenly over a panel's u and v, in the middles of columns × rows cells. */
export interface PanelGrid {
  panel: string;
  columns: number;
  rows: number;
}

export interface GridSpot {
  panel: string;
  u: number;
  v: number;
}

/** A curve is measured by this many chords: its length to well under a percent. */
const CHORDS = 8;

/** A length this little over a whole number of steps counts as that number, in steps. */
const WHOLE = 1e-6;

/**
 * The grid of a panel whose cells are nowhere longer than about `step` mm along u or v. Cells lie
 * alike from either end, so mirrored panels have mirrored grids.
 */
export function panelGrid({ id, patch }: Panel, step: number): PanelGrid {
  if (!(step > 0)) throw new RangeError(`panelGrid: expected a step above 0 mm, got ${step}`);
  const longest = (at: (along: number, across: number) => readonly [number, number]): number => {
    let most = 0;
    for (const across of [0, 0.5, 1]) {
      let length = 0;
      let last = pointOnPatch(patch, ...at(0, across));
      for (let k = 1; k <= CHORDS; k++) {
        const next = pointOnPatch(patch, ...at(k / CHORDS, across));
        length += distance(last, next);
        last = next;
      }
      most = Math.max(most, length);
    }
    return most;
  };
  const cells = (length: number) => Math.max(1, Math.ceil(length / step - WHOLE));
  return {
    panel: id,
    columns: cells(longest((u, v) => [u, v])),
    rows: cells(longest((v, u) => [u, v])),
  };
}

export const gridSize = ({ columns, rows }: PanelGrid): number => columns * rows;

/** Spot number `k` of a grid, row by row. */
export const gridSpot = ({ panel, columns, rows }: PanelGrid, k: number): GridSpot => ({
  panel,
  u: ((k % columns) + 0.5) / columns,
  v: (Math.floor(k / columns) + 0.5) / rows,
});

/** The panel on the other side; one on the centreline is its own. */
export const twinPanel = mirrorWords;

/**
 * The number of the mirrored spot on the twin panel's grid: the same u, v on a left and a right
 * panel are mirror images; across a panel on the centreline u runs from the car's left to its right.
 * @param isAcross whether it is such a panel, where that is known: names are slow to read
 */
export function twinSpot(
  { panel, columns }: PanelGrid,
  k: number,
  isAcross = twinPanel(panel) === panel,
): number {
  if (!isAcross) return k;
  const column = k % columns;
  return k - column + (columns - 1 - column);
}
