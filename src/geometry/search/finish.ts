import type { Side } from '../input';
import { SPOT_AIMS } from '../map/penalty';
import type { Vec3 } from '../vector';
import { tradeOffFront } from './front';
import type { GridHeard } from './hear-grid';
import { costOf, MEASURED, measureInPlace, SCORE } from './measure-pair';
import {
  countPairs,
  foundSpot,
  type HeardSpots,
  heardPairAt,
  isFeasible,
  positionsOf,
} from './pair-spot';
import type { ReadySearch } from './prepare';
import { apartOf, type HeardPair, heardSpots, hearPair, refinePair } from './refine';
import type { FoundSpot, SearchAnswer, SearchProgress } from './types';

/** Pairs looked at between two signs of life. */
const TURN = 256;

/** From what the grid sounds like to the answer: scores, the front, the answers, refined. */
export function* finishSearchInSteps(
  ready: ReadySearch,
  { left, right }: GridHeard,
): Generator<SearchProgress, SearchAnswer> {
  const tried = countPairs(ready);
  const pairAt = (n: number): HeardSpots => heardPairAt(ready, { left, right }, n);
  const total = tried + ready.answers;
  const tell = (n: number): FoundSpot => foundSpot(ready, pairAt(n));

  const aims = SPOT_AIMS.filter((aim) => ready.wants[aim] > 0);
  const columns = aims.map((aim) => SPOT_AIMS.indexOf(aim));
  const measured = new Float64Array(MEASURED);
  const feasible: number[] = [];
  const scores: number[] = [];
  const costs: number[] = [];
  for (let n = 0; n < tried; n++) {
    if (n % TURN === 0) yield { done: n, total };
    const pair = pairAt(n);
    if (!isFeasible(ready, pair)) continue;
    measureInPlace(ready, left, pair.i, right, pair.j, measured);
    feasible.push(n);
    scores.push(measured[SCORE] as number);
    aims.forEach((aim, a) => {
      costs.push(costOf(aim, measured[columns[a] as number] as number));
    });
  }
  const byScore = Uint32Array.from({ length: feasible.length }, (_, f) => f).sort(
    (a, b) => (scores[a] as number) - (scores[b] as number) || a - b,
  );
  yield { done: tried, total };

  const rows = tradeOffFront(Float64Array.from(costs), aims.length);
  const front = rows
    .sort((a, b) => (scores[a] as number) - (scores[b] as number) || a - b)
    .map((f) => tell(feasible[f] as number));

  // Greedy by score: the best, then the best of those clearly elsewhere, and so on.
  const picked: { n: number; positions: Record<Side, Vec3> }[] = [];
  for (const f of byScore) {
    if (picked.length >= ready.answers) break;
    const n = feasible[f] as number;
    const positions = positionsOf(pairAt(n));
    if (picked.every((other) => apartOf(other.positions, positions) >= ready.apart))
      picked.push({ n, positions });
  }
  const answers: FoundSpot[] = [];
  for (const [p, pick] of picked.entries()) {
    yield { done: tried + p, total };
    const { leftSpot, rightSpot } = pairAt(pick.n);
    const start = hearPair(ready, { left: leftSpot, right: rightSpot });
    if (!start) continue;
    const best: HeardPair = refinePair(ready, start, (positions) =>
      picked.every((other) => other === pick || apartOf(other.positions, positions) >= ready.apart),
    );
    pick.positions = best.positions;
    answers.push(foundSpot(ready, heardSpots(best)));
  }
  answers.sort((a, b) => a.score - b.score);
  const whole: SearchAnswer = { tried, feasible: feasible.length, front, answers };
  if (ready.all) {
    const all: FoundSpot[] = [];
    for (let n = 0; n < tried; n++) {
      if (n % TURN === 0) yield { done: total, total };
      all.push(tell(n));
    }
    whole.all = all;
  }
  yield { done: total, total };
  return whole;
}
