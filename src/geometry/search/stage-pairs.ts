import type { Candidates } from './combine-pairs';
import type { GridHeard } from './hear-grid';
import { type HeardSpots, heardPairAt, positionsOf } from './pair-spot';
import type { ReadySearch } from './prepare';
import { PATH, PER_SEAT } from './side-heard';
import type { SearchProgress } from './types';
import { PENALTY_COLUMNS, weighGridInSteps } from './weigh-grid';

/** One pair of a stage with its feasible spots, best score first: its candidates. */
export interface StagePair {
  ready: ReadySearch;
  candidates: Candidates;
  /** One number an aim and candidate, in the order of `SPOT_AIMS`. */
  penalties: Float64Array;
  /** Left x, y, z and right x, y, z of each candidate, mm. */
  positions: Float64Array;
  spotsAt(candidate: number): HeardSpots;
}

export function* stagePairInSteps(
  ready: ReadySearch,
  heard: GridHeard,
): Generator<SearchProgress, StagePair> {
  const { numbers, scores, costs, columns } = yield* weighGridInSteps(
    ready,
    heard,
    PENALTY_COLUMNS,
  );
  const rows = Uint32Array.from(numbers.keys()).sort(
    (a, b) => (scores[a] as number) - (scores[b] as number) || a - b,
  );
  const spotsAt = (candidate: number): HeardSpots =>
    heardPairAt(ready, heard, numbers[rows[candidate] as number] as number);
  const lanes = 2 * ready.seats.length;
  const sorted = {
    scores: new Float64Array(rows.length),
    paths: new Float64Array(rows.length * lanes),
    penalties: new Float64Array(rows.length * columns),
    positions: new Float64Array(rows.length * 6),
  };
  rows.forEach((row, candidate) => {
    sorted.scores[candidate] = scores[row] as number;
    const spots = spotsAt(candidate);
    sorted.paths.set(pathsOf(ready, spots), lanes * candidate);
    const { left, right } = positionsOf(spots);
    sorted.positions.set([...left, ...right], 6 * candidate);
    sorted.penalties.set(costs.subarray(columns * row, columns * (row + 1)), columns * candidate);
  });
  const { penalties, positions, ...candidates } = sorted;
  return { ready, candidates, penalties, positions, spotsAt };
}

/** Left and right path, seat by seat. */
export const pathsOf = (
  { seats }: Pick<ReadySearch, 'seats'>,
  { left, i, right, j }: HeardSpots,
): number[] =>
  seats.flatMap((_, s) => [
    left.numbers[PER_SEAT * (seats.length * i + s) + PATH] as number,
    right.numbers[PER_SEAT * (seats.length * j + s) + PATH] as number,
  ]);
