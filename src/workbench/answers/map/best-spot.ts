import {
  DOES_NOT_FIT,
  type GridSpot,
  KEEP_CLEAR,
  type MapQuantity,
  type SpotMap,
} from '../../../geometry';
import { paintedAt } from '../../../plan/painted';
import { spotOfNumber } from '../../../plan/painted-spots';
import { moreIsBetter } from './map-quantities';

export interface BestSpot {
  number: number;
  spot: GridSpot;
  /** As painted. */
  value: number;
}

/** The fit is asked anew, with the twin in its place, of at most this many spots. */
const MOST_TRIED = 600;

/**
 * The best finished spot on the panels `wanted`, of those that are not hatched and where `fits`
 * holds; among equals the one nearest to `from`. `null` where there is none.
 * @param near how far a spot is from where the speaker stands, in any unit
 */
export function bestSpot(
  map: SpotMap,
  quantity: MapQuantity,
  wanted: (panel: string) => boolean,
  fits: (spot: GridSpot) => boolean,
  near: (spot: GridSpot) => number,
): BestSpot | null {
  const sign = moreIsBetter(quantity) ? -1 : 1;
  const found: { number: number; rank: number }[] = [];
  for (const { panel, first, columns, rows } of map.panels) {
    if (!wanted(panel)) continue;
    for (let number = first; number < first + columns * rows; number++) {
      const fit = map.fit[number];
      if (map.done[number] !== 1 || fit === DOES_NOT_FIT || fit === KEEP_CLEAR) continue;
      const value = paintedAt(map, quantity, number);
      if (Number.isFinite(value)) found.push({ number, rank: sign * value });
    }
  }
  found.sort((a, b) => a.rank - b.rank);
  let tried = 0;
  let best: { number: number; rank: number; far: number } | null = null;
  for (const { number, rank } of found) {
    if (best && rank - best.rank > EQUAL) break;
    const spot = spotOfNumber(map, number);
    if (!spot) continue;
    const far = near(spot);
    if (best && far >= best.far) continue;
    if (tried >= MOST_TRIED) break;
    tried += 1;
    if (fits(spot)) best = { number, rank, far };
  }
  const spot = best && spotOfNumber(map, best.number);
  return best && spot && { number: best.number, spot, value: sign * best.rank };
}

/** Values this near to each other are the same. */
const EQUAL = 1e-6;
