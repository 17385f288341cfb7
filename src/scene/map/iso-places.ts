/** Where the lines of equal value could carry their number. */
import type { MapPanel, SpotMap } from '../../geometry';
import { paintedAt } from '../../plan/painted';
import type { PaintedMap } from '../../store';

export interface IsoPlace {
  panel: string;
  u: number;
  v: number;
  level: number;
}

/** Crossings of one line nearer to each other than this on its panel's grid are one place. */
const APART = 9;

/**
 * Places on each panel where a line of equal value crosses from one spot to the next, the middle
 * ones first; a few for each level, so that one may be in sight. Only among finished spots.
 */
export function isoPlaces({ map, quantity, levels }: PaintedMap, most = 2): IsoPlace[] {
  return map.panels.flatMap((grid) =>
    levels.flatMap((level) => chosen(crossings(map, quantity, grid, level), grid, level, most)),
  );
}

type Cross = [column: number, row: number];

function crossings(
  map: SpotMap,
  quantity: PaintedMap['quantity'],
  grid: MapPanel,
  level: number,
): Cross[] {
  const { columns, rows, first } = grid;
  const found: Cross[] = [];
  const at = (column: number, row: number) =>
    paintedAt(map, quantity, first + row * columns + column);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const here = at(column, row);
      for (const [dc, dr] of [
        [1, 0],
        [0, 1],
      ] as const) {
        if (column + dc >= columns || row + dr >= rows) continue;
        const next = at(column + dc, row + dr);
        if (!((here < level && next >= level) || (here >= level && next < level))) continue;
        const t = (level - here) / (next - here);
        found.push([column + dc * t, row + dr * t]);
      }
    }
  return found;
}

function chosen(crosses: Cross[], grid: MapPanel, level: number, most: number): IsoPlace[] {
  const { panel, columns, rows } = grid;
  const off = ([c, r]: Cross) =>
    Math.max(Math.abs((c + 0.5) / columns - 0.5), Math.abs((r + 0.5) / rows - 0.5));
  const kept: Cross[] = [];
  for (const cross of [...crosses].sort((a, b) => off(a) - off(b))) {
    if (kept.length >= most) break;
    if (off(cross) > 0.47) break;
    if (kept.every(([c, r]) => Math.hypot(c - cross[0], r - cross[1]) >= APART)) kept.push(cross);
  }
  return kept.map(([c, r]) => ({ panel, u: (c + 0.5) / columns, v: (r + 0.5) / rows, level }));
}
