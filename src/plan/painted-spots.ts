/** From the number of a spot to its place and back, among the grids of a map. */
import { type GridSpot, gridSpot, type MapPanel, type SpotMap } from '../geometry';

type Grids = Pick<SpotMap, 'panels'>;

/** The grid that spot number `k` belongs to. */
export const gridOf = ({ panels }: Grids, k: number): MapPanel | null =>
  panels.find(({ first, columns, rows }) => k >= first && k < first + columns * rows) ?? null;

/** The spot of that number; `null` where the map has none. */
export function spotOfNumber(map: Grids, k: number): GridSpot | null {
  const grid = gridOf(map, k);
  return grid && gridSpot(grid, k - grid.first);
}

const cell = (t: number, count: number): number =>
  Math.min(count - 1, Math.max(0, Math.floor(t * count)));

/** The number of the spot nearest to a place on a panel; `null` where the map lacks the panel. */
export function numberNear(map: Grids, { panel, u, v }: GridSpot): number | null {
  const grid = map.panels.find((one) => one.panel === panel);
  if (!grid) return null;
  return grid.first + cell(v, grid.rows) * grid.columns + cell(u, grid.columns);
}
