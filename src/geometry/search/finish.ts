import type { Side } from '../input';
import type { Vec3 } from '../vector';
import { tradeOffFrontInSteps } from './front';
import type { GridHeard } from './hear-grid';
import { countPairs, foundSpot, type HeardSpots, heardPairAt, positionsOf } from './pair-spot';
import type { ReadySearch } from './prepare';
import { apartOf, heardSpots, hearPair, refinePair } from './refine';
import type { FoundSpot, SearchAnswer, SearchProgress } from './types';
import { frontColumns, type WeighedGrid, weighGridInSteps } from './weigh-grid';

/** Spots told between two signs of life. */
const TURN = 256;

/** From what the grid sounds like to the answer: scores, the front, the answers, refined. */
export function* finishSearchInSteps(
  ready: ReadySearch,
  heard: GridHeard,
): Generator<SearchProgress, SearchAnswer> {
  const tried = countPairs(ready);
  const pairAt = (n: number): HeardSpots => heardPairAt(ready, heard, n);
  const end: SearchProgress = { phase: 'choices', done: tried, total: tried };
  function* tell(numbers: Iterable<number>): Generator<SearchProgress, FoundSpot[]> {
    const told: FoundSpot[] = [];
    for (const n of numbers) {
      if (told.length % TURN === 0) yield end;
      told.push(foundSpot(ready, pairAt(n)));
    }
    return told;
  }

  const grid = yield* weighGridInSteps(ready, heard, frontColumns(ready));
  const { numbers, scores, costs, columns } = grid;
  yield end;
  const rows = (yield* quietly(tradeOffFrontInSteps(costs, columns), end)).sort(
    (a, b) => (scores[a] as number) - (scores[b] as number) || a - b,
  );
  const front = yield* tell(rows.map((row) => numbers[row] as number));

  const answers: FoundSpot[] = [];
  const picked = pickApart(ready, grid, bestRow(scores, rows[0]), pairAt);
  for (const pick of picked) {
    yield end;
    const { leftSpot, rightSpot } = pairAt(pick.n);
    const start = hearPair(ready, { left: leftSpot, right: rightSpot });
    if (!start) continue;
    const isApart = (positions: Pick['positions']) =>
      picked.every((other) => other === pick || apartOf(other.positions, positions) >= ready.apart);
    const best = refinePair(ready, start, ({ positions, score }) =>
      isApart(positions) ? score : Infinity,
    );
    pick.positions = best.positions;
    answers.push(foundSpot(ready, heardSpots(best)));
  }
  answers.sort((a, b) => a.score - b.score);
  const whole: SearchAnswer = { tried, feasible: numbers.length, front, answers };
  if (ready.all) whole.all = yield* tell(Array.from({ length: tried }, (_, n) => n));
  return whole;
}

/** Signs of life alone: how far it is was told already. */
function* quietly<T>(
  steps: Generator<unknown, T>,
  sign: SearchProgress,
): Generator<SearchProgress, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield sign;
  }
}

interface Pick {
  n: number;
  positions: Record<Side, Vec3>;
}

/** The row of the best score; of several alike the one given, which is on the front. */
function bestRow(scores: Float64Array, first: number | undefined): number | undefined {
  let best = first;
  scores.forEach((score, row) => {
    if (best === undefined || score < (scores[best] as number)) best = row;
  });
  return best;
}

/**
 * Greedy by score: the best, then the best of those clearly elsewhere, and so on. Looking through
 * all of them once for each is quicker than sorting them.
 * @param first row of the best
 */
function pickApart(
  ready: ReadySearch,
  { numbers, scores }: WeighedGrid,
  first: number | undefined,
  pairAt: (n: number) => HeardSpots,
): Pick[] {
  const picked: Pick[] = [];
  const take = (row: number): Pick => {
    const n = numbers[row] as number;
    return { n, positions: positionsOf(pairAt(n)) };
  };
  while (picked.length < ready.answers && first !== undefined) {
    if (picked.length === 0) {
      picked.push(take(first));
      continue;
    }
    let best: Pick | null = null;
    let least = Infinity;
    for (let row = 0; row < numbers.length; row++) {
      if (!((scores[row] as number) < least)) continue;
      const pick = take(row);
      if (!picked.every((other) => apartOf(other.positions, pick.positions) >= ready.apart))
        continue;
      best = pick;
      least = scores[row] as number;
    }
    if (!best) break;
    picked.push(best);
  }
  return picked;
}
