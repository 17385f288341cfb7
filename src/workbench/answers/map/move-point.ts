import {
  gridSpot,
  type MapPanel,
  type Panel,
  pointOnPatch,
  sub,
  type Vec3,
} from '../../../geometry';

export type PointArrow = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

export const isPointArrow = (key: string): key is PointArrow =>
  key === 'ArrowLeft' || key === 'ArrowRight' || key === 'ArrowUp' || key === 'ArrowDown';

/**
 * The spot one further by an arrow key, as its number on the grid; the same at the edge. Up is up,
 * or forward on a level panel; right is to the car's right, or rearward on a panel along its side.
 */
export function movedPoint(panel: Panel, grid: MapPanel, cell: number, arrow: PointArrow): number {
  const { columns, rows } = grid;
  const { u, v } = gridSpot(grid, cell);
  const along = sub(at(panel, u + 0.01, v), at(panel, u - 0.01, v));
  const across = sub(at(panel, u, v + 0.01), at(panel, u, v - 0.01));
  const [uUp, vUp] = [upward(along), upward(across)];
  // The one of u and v that rises more is up and down; the other is right and left.
  const uIsUp = Math.abs(uUp) > Math.abs(vUp);
  const vertical = arrow === 'ArrowUp' || arrow === 'ArrowDown';
  const forward = arrow === 'ArrowUp' || arrow === 'ArrowRight';
  const rise = uIsUp ? uUp : vUp;
  const right = rightward(uIsUp ? across : along);
  const sign = (vertical ? rise : right) >= 0 === forward ? 1 : -1;
  const byU = vertical === uIsUp;
  const column = (cell % columns) + (byU ? sign : 0);
  const row = Math.floor(cell / columns) + (byU ? 0 : sign);
  if (column < 0 || column >= columns || row < 0 || row >= rows) return cell;
  return row * columns + column;
}

const at = ({ patch }: Panel, u: number, v: number): Vec3 =>
  pointOnPatch(patch, Math.min(1, Math.max(0, u)), Math.min(1, Math.max(0, v)));

const size = ([x, y, z]: Vec3): number => Math.sqrt(x * x + y * y + z * z) || 1;

/** How much a direction rises, or goes forward, as a share of its length. */
const upward = (way: Vec3): number => (way[2] - way[0] * 0.5) / size(way);

/** How much it goes to the right; of one that does neither, rearward. */
const rightward = (way: Vec3): number => (Math.abs(way[1]) > 0.3 * size(way) ? way[1] : way[0]);
