import { SPOT_AIMS } from '../map/penalty';
import type { GridHeard } from './hear-grid';
import { costOf, MEASURED, measureInPlace, PENALTIES, SCORE } from './measure-pair';
import { countPairs, type HeardSpots, heardPairAt, isFeasible } from './pair-spot';
import type { ReadySearch } from './prepare';
import type { SearchProgress } from './types';

/** Every feasible pair of spots of a grid with its numbers, as plain typed arrays. */
export interface WeighedGrid {
  /** Numbers of the pairs, rising; see `heardPairAt`. */
  numbers: Uint32Array;
  scores: Float64Array;
  /** So many costs a pair, in the columns' order; smaller is better, none is NaN. */
  costs: Float64Array;
  columns: number;
}

/** A cost of a pair from what `measureInPlace` wrote. */
export type CostColumn = (measured: Float64Array) => number;

/** Pairs looked at between two signs of life. */
const TURN = 1024;

/** Millions of them stay within memory: what is not feasible takes no room. */
export function* weighGridInSteps(
  ready: ReadySearch,
  heard: GridHeard,
  columns: readonly CostColumn[],
): Generator<SearchProgress, WeighedGrid> {
  const total = countPairs(ready);
  const { left, right } = heard;
  const room = ready.mirrored ? count(left.feasible) : count(left.feasible) * count(right.feasible);
  const numbers = new Uint32Array(room);
  const scores = new Float64Array(room);
  const costs = new Float64Array(room * columns.length);
  const measured = new Float64Array(MEASURED);
  const across = ready.mirrored ? 1 : ready.spots.right.length;
  let found = 0;
  let looks = 0;
  for (let n = 0; n < total; n++) {
    if (looks++ % TURN === 0) yield { phase: 'choices', done: n, total };
    if (left.feasible[ready.mirrored ? n : Math.floor(n / across)] !== 1) {
      // Nothing on the right mends a spot on the left.
      n += across - 1 - (n % across);
      continue;
    }
    const pair: HeardSpots = heardPairAt(ready, heard, n);
    if (!isFeasible(ready, pair)) continue;
    measureInPlace(ready, left, pair.i, right, pair.j, measured);
    numbers[found] = n;
    scores[found] = measured[SCORE] as number;
    for (let c = 0; c < columns.length; c++)
      costs[columns.length * found + c] = (columns[c] as CostColumn)(measured);
    found += 1;
  }
  return {
    numbers: numbers.subarray(0, found),
    scores: scores.subarray(0, found),
    costs: costs.subarray(0, found * columns.length),
    columns: columns.length,
  };
}

const count = (feasible: Uint8Array): number => feasible.reduce((sum, yes) => sum + yes, 0);

/** The penalties of all aims, in the order of `SPOT_AIMS`; they add up to the score. */
export const PENALTY_COLUMNS: readonly CostColumn[] = SPOT_AIMS.map(
  (_, a) => (measured) => measured[PENALTIES + a] as number,
);

/**
 * What a front is over: the measures of the aims wanted, as they are told. They do not see how seats
 * weigh, so with seats of unlike weight the best score can lie off the front.
 */
export function frontColumns({ wants }: ReadySearch): CostColumn[] {
  return SPOT_AIMS.flatMap((aim, a): CostColumn[] =>
    wants[aim] > 0 ? [(measured) => costOf(aim, measured[a] as number)] : [],
  );
}
