import { bestChoice } from './combine-pairs';
import type { GridHeard } from './hear-grid';
import { countPairs, type HeardSpots, positionsOf } from './pair-spot';
import type { ReadyStage } from './prepare-stage';
import { apartOf, heardSpots, hearPair, refinePair } from './refine';
import { stageFrontInSteps } from './stage-front';
import { type StagePair, stagePairInSteps } from './stage-pairs';
import { createViewCheck, reachBetween, standBeside } from './stage-room';
import type { FoundStage, StageAnswer } from './stage-types';
import type { SearchProgress } from './types';
import { foundStage, weighStage } from './weigh-stage';

/** Progress is told in so many parts for each step of the work. */
const PART = 1000;

/** From what the pairs' grids sound like to the answer: the best combinations and the front. */
export function* finishStageInSteps(
  ready: ReadyStage,
  heard: readonly GridHeard[],
): Generator<SearchProgress, StageAnswer> {
  const { spreadWeights: weights, apart } = ready;
  const total = PART * (ready.pairs.length + ready.answers + 1);
  let parts = 0;
  const told = (fraction: number): SearchProgress => ({
    phase: 'choices',
    done: Math.floor(PART * (parts + Math.min(1, fraction))),
    total,
  });
  function* part<T>(steps: Generator<number, T>): Generator<SearchProgress, T> {
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        parts += 1;
        yield told(0);
        return step.value;
      }
      yield told(step.value);
    }
  }

  const pairs: StagePair[] = [];
  for (const [p, one] of ready.pairs.entries())
    pairs.push(yield* part(fractions(stagePairInSteps(one, heard[p] as GridHeard))));
  const candidates = pairs.map((pair) => pair.candidates);
  const stand = standsBeside(pairs);
  const sees = createViewCheck(ready.pairs);
  const spotsOf = (picks: readonly number[]): HeardSpots[] =>
    pairs.map((pair, p) => pair.spotsAt(picks[p] as number));
  const isWhole = (picks: readonly number[]) => !picks.includes(-1);
  const view = (picks: readonly number[]) => !isWhole(picks) || sees(spotsOf(picks));

  const taken: Taken[] = [];
  const known: number[][] = [];
  const answers: FoundStage[] = [];
  let complete = true;
  for (let n = 0; n < ready.answers; n++) {
    const found = yield* part(
      bestChoice(
        candidates,
        weights,
        stand,
        (picks) => taken.every(({ mayDiffer }) => mayDiffer(picks)) && view(picks),
      ),
    );
    complete &&= found.complete;
    if (!found.choice) break;
    const { picks } = found.choice;
    known.push(picks);
    const spots = refineStage(ready, spotsOf(picks), sees, taken);
    taken.push(takenAt(pairs, spots, apart));
    answers.push(foundStage(ready, spots));
  }
  answers.sort((a, b) => a.score - b.score);
  parts = ready.pairs.length + ready.answers;
  const fits = (picks: readonly number[]): boolean => {
    const last = picks.indexOf(-1) < 0 ? picks.length - 1 : picks.indexOf(-1) - 1;
    for (let q = 0; q < last; q++)
      if (!stand(q, picks[q] as number, last, picks[last] as number)) return false;
    return view(picks);
  };
  const { picks, ...frontOf } = yield* part(stageFrontInSteps(pairs, weights, fits, known));
  const front: FoundStage[] = [];
  for (const choice of picks) {
    if (front.length % 64 === 0) yield told(0);
    front.push(foundStage(ready, spotsOf(choice)));
  }
  return {
    pairs: pairs.map(({ ready: one, candidates: { scores } }) => ({
      pair: one.pair,
      tried: countPairs(one),
      feasible: scores.length,
    })),
    tried: candidates.reduce((product, { scores }) => product * scores.length, 1),
    front,
    frontOf,
    answers,
    complete,
  };
}

function* fractions<T>(steps: Generator<SearchProgress, T>): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield step.value.done / step.value.total;
  }
}

/** Asked millions of times: first by distance alone, then each close look is taken once. */
function standsBeside(pairs: readonly StagePair[]) {
  const known = new Map<string, boolean>();
  const reaches = pairs.map((one) => pairs.map((other) => reachBetween(one.ready, other.ready)));
  const isNear = (a: Float64Array, i: number, b: Float64Array, j: number, reach: number) => {
    for (let s = 6 * i; s < 6 * i + 6; s += 3)
      for (let t = 6 * j; t < 6 * j + 6; t += 3) {
        const x = (a[s] as number) - (b[t] as number);
        const y = (a[s + 1] as number) - (b[t + 1] as number);
        const z = (a[s + 2] as number) - (b[t + 2] as number);
        if (x * x + y * y + z * z <= reach * reach) return true;
      }
    return false;
  };
  return (p: number, i: number, q: number, j: number): boolean => {
    const [one, other] = [pairs[p] as StagePair, pairs[q] as StagePair];
    const reach = reaches[p]?.[q] ?? null;
    if (reach === null || !isNear(one.positions, i, other.positions, j, reach + 1e-6)) return true;
    const key = `${p} ${i} ${q} ${j}`;
    let free = known.get(key);
    if (free === undefined) {
      free = standBeside(one.ready, one.spotsAt(i), other.ready, other.spotsAt(j));
      known.set(key, free);
    }
    return free;
  };
}

/** A stage already taken as an answer: others have to be clearly different from it. */
interface Taken {
  /** Of a choice, or of one begun: whether it is, or may still come to be. */
  mayDiffer(picks: readonly number[]): boolean;
  differs(spots: readonly HeardSpots[]): boolean;
}

function takenAt(pairs: readonly StagePair[], there: readonly HeardSpots[], apart: number): Taken {
  const places = there.map(positionsOf);
  const isElsewhere = (p: number, spots: HeardSpots) =>
    apartOf(positionsOf(spots), places[p] as (typeof places)[number]) >= apart;
  // Half of the pairs, or one more spot of one of them would make a new answer.
  const least = Math.ceil(pairs.length / 2);
  const known = pairs.map(({ candidates }) => new Int8Array(candidates.scores.length));
  const isFar = (p: number, i: number): boolean => {
    const far = known[p] as Int8Array;
    if (far[i] === 0) far[i] = isElsewhere(p, (pairs[p] as StagePair).spotsAt(i)) ? 1 : -1;
    return far[i] === 1;
  };
  return {
    mayDiffer(picks) {
      let left = least;
      for (let p = 0; p < picks.length; p++) {
        const i = picks[p] as number;
        if (i < 0 || isFar(p, i)) left -= 1;
      }
      return left <= 0;
    },
    differs: (spots) => spots.filter((one, p) => isElsewhere(p, one)).length >= least,
  };
}

/** The pairs are refined in turn, each by what the whole gains while the others stay. */
function refineStage(
  ready: ReadyStage,
  start: readonly HeardSpots[],
  sees: (spots: readonly HeardSpots[]) => boolean,
  taken: readonly Taken[],
): HeardSpots[] {
  let best = [...start];
  ready.pairs.forEach((one, p) => {
    const { leftSpot, rightSpot } = best[p] as HeardSpots;
    const heard = hearPair(one, { left: leftSpot, right: rightSpot });
    if (!heard) return;
    const at = (spots: HeardSpots) => best.map((now, q) => (q === p ? spots : now));
    const isFree = (spots: HeardSpots, whole: readonly HeardSpots[]) =>
      taken.every(({ differs }) => differs(whole)) &&
      ready.pairs.every(
        (other, q) => q === p || standBeside(one, spots, other, best[q] as HeardSpots),
      ) &&
      sees(whole);
    const refined = refinePair(one, heard, (pair) => {
      const spots = heardSpots(pair);
      const whole = at(spots);
      return isFree(spots, whole) ? weighStage(ready, whole).score : Infinity;
    });
    const next = at(heardSpots(refined));
    if (weighStage(ready, next).score < weighStage(ready, best).score) best = next;
  });
  return best;
}
