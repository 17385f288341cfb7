import type { Refusal } from '../cabin/model';
import type { PlanInput, Side } from '../input';
import { createSpotFitter, type MakeFitter } from '../map/fits';
import { DIFFERENCE_SCALE } from '../map/penalty';
import { spotRoom } from '../map/spot-room';
import { standAt } from '../map/stand';
import { distance, type Vec3 } from '../vector';
import { bestChoice, type Candidates } from './combine-pairs';
import { type GridHeard, hearGridInSteps } from './hear-grid';
import { MEASURED, measureInPlace, SCORE } from './measure-pair';
import {
  countPairs,
  foundSpot,
  type HeardSpots,
  heardPairAt,
  isFeasible,
  positionsOf,
  reachOf,
} from './pair-spot';
import { preparePair, prepareShared, type ReadySearch, Refused } from './prepare';
import { apartOf, heardSpots, hearPair, refinePair } from './refine';
import { PATH, PER_SEAT } from './side-heard';
import type { FoundStage, StageAnswer, StageRequest } from './stage-types';
import type { SearchProgress } from './types';

export type StageSearchResult = { ok: true; answer: StageAnswer } | { ok: false; error: Refusal };

/** Weight of the path spread where the request names none. Choice of ours, no source. */
const USUAL_SPREAD = 0.5;

/** One pair with its feasible spots, best score first. */
interface ReadyPair {
  ready: ReadySearch;
  heard: GridHeard;
  numbers: readonly number[];
  candidates: Candidates;
}

/**
 * The best spots for several pairs together: each pair's whole grid, then the best combination of
 * their feasible spots by the sum of their scores and the path spread of each side, no two speakers
 * in one another's way. Refuses as a search for one pair does, with `pairs[n].` before the field.
 */
export function* searchStageInSteps(
  plan: PlanInput,
  request: StageRequest,
  makeFitter: MakeFitter = createSpotFitter,
): Generator<SearchProgress, StageSearchResult> {
  const made = spotRoom(plan);
  if (!made.ok) return made;
  let readies: ReadySearch[];
  try {
    const shared = prepareShared(plan, request, made.room);
    const moving = request.pairs.map(({ pair }) => pair);
    readies = request.pairs.map((pair, n) => {
      if (moving.indexOf(pair.pair) < n)
        throw new Refused(`pairs[${n}].pair`, `the pair "${pair.pair}" is already searched for`);
      return preparePair(shared, pair, `pairs[${n}].`, moving, makeFitter, false);
    });
  } catch (reason) {
    if (reason instanceof Refused)
      return { ok: false, error: { path: reason.path, message: reason.message } };
    throw reason;
  }
  const total = readies.reduce((sum, ready) => sum + countSpots(ready), 0);
  let done = 0;
  const pairs: ReadyPair[] = [];
  for (const ready of readies) {
    const steps = hearGridInSteps(ready);
    let step = steps.next();
    for (; !step.done; step = steps.next()) {
      yield { done, total };
      done += 1;
    }
    pairs.push(candidatesOf(ready, step.value));
  }

  const [first] = readies;
  if (!first)
    return { ok: false, error: { path: 'pairs', message: 'must name at least one pair' } };
  const spreadWeight = request.want?.pathSpread ?? USUAL_SPREAD;
  const weights = first.weights.map((weight) => (weight * spreadWeight) / DIFFERENCE_SCALE);
  const stand = standsBeside(pairs);
  const taken: HeardSpots[][] = [];
  const answers: FoundStage[] = [];
  let complete = true;
  for (let n = 0; n < first.answers; n++) {
    const steps = bestChoice(
      pairs.map(({ candidates }) => candidates),
      weights,
      stand,
      (picks) => {
        const here = spotsOf(pairs, picks);
        return taken.every((there) => isElsewhere(here, there, first.apart));
      },
    );
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield { done: total, total };
    complete &&= step.value.complete;
    const { choice } = step.value;
    if (!choice) break;
    const spots = refineStage(pairs, spotsOf(pairs, choice.picks), weights, taken, first.apart);
    taken.push(spots);
    answers.push(told(pairs, spots, weights));
    yield { done: total, total };
  }
  answers.sort((a, b) => a.score - b.score);
  return {
    ok: true,
    answer: {
      pairs: pairs.map(({ ready, numbers }) => ({
        pair: ready.pair,
        tried: countPairs(ready),
        feasible: numbers.length,
      })),
      tried: pairs.reduce((product, { numbers }) => product * numbers.length, 1),
      answers,
      complete,
    },
  };
}

/** {@link searchStageInSteps} in one go. */
export function searchStage(
  plan: PlanInput,
  request: StageRequest,
  makeFitter?: MakeFitter,
): StageSearchResult {
  const steps = searchStageInSteps(plan, request, makeFitter);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const countSpots = ({ mirrored, spots }: ReadySearch): number =>
  spots.left.length + (mirrored ? 0 : spots.right.length);

function candidatesOf(ready: ReadySearch, heard: GridHeard): ReadyPair {
  const measured = new Float64Array(MEASURED);
  const found: { n: number; score: number }[] = [];
  for (let n = 0; n < countPairs(ready); n++) {
    const pair = heardPairAt(ready, heard, n);
    if (!isFeasible(ready, pair)) continue;
    measureInPlace(ready, pair.left, pair.i, pair.right, pair.j, measured);
    found.push({ n, score: measured[SCORE] as number });
  }
  found.sort((a, b) => a.score - b.score || a.n - b.n);
  const numbers = found.map(({ n }) => n);
  return {
    ready,
    heard,
    numbers,
    candidates: {
      scores: Float64Array.from(found, ({ score }) => score),
      paths: Float64Array.from(
        numbers.flatMap((n) => pathsOf(ready, heardPairAt(ready, heard, n))),
      ),
    },
  };
}

/** Left and right path, seat by seat. */
const pathsOf = ({ seats }: ReadySearch, { left, i, right, j }: HeardSpots): number[] =>
  seats.flatMap((_, s) => [
    left.numbers[PER_SEAT * (seats.length * i + s) + PATH] as number,
    right.numbers[PER_SEAT * (seats.length * j + s) + PATH] as number,
  ]);

const spotsOf = (pairs: readonly ReadyPair[], picks: readonly number[]): HeardSpots[] =>
  pairs.map(({ ready, heard, numbers }, p) =>
    heardPairAt(ready, heard, numbers[picks[p] as number] as number),
  );

const isElsewhere = (
  here: readonly HeardSpots[],
  there: readonly HeardSpots[],
  apart: number,
): boolean =>
  here.some(
    (spots, p) => apartOf(positionsOf(spots), positionsOf(there[p] as HeardSpots)) >= apart,
  );

/** Whether candidates of two pairs leave each other room; each question is answered once. */
function standsBeside(pairs: readonly ReadyPair[]) {
  const known = new Map<string, boolean>();
  return (p: number, i: number, q: number, j: number): boolean => {
    const [one, other] = [pairs[p] as ReadyPair, pairs[q] as ReadyPair];
    if (!one.ready.limits.fits && !other.ready.limits.fits) return true;
    const a = heardPairAt(one.ready, one.heard, one.numbers[i] as number);
    const b = heardPairAt(other.ready, other.heard, other.numbers[j] as number);
    if (!mayMeet(one.ready, a, other.ready, b)) return true;
    const key = `${p} ${i} ${q} ${j}`;
    let free = known.get(key);
    if (free === undefined) {
      free = !clash(one.ready, a, other.ready, b);
      known.set(key, free);
    }
    return free;
  };
}

const SIDES = ['left', 'right'] as const;

function mayMeet(one: ReadySearch, a: HeardSpots, other: ReadySearch, b: HeardSpots): boolean {
  const [here, there] = [positionsOf(a), positionsOf(b)];
  return SIDES.some((side) =>
    SIDES.some(
      (across) =>
        distance(here[side], there[across]) <
        reachOf(one.movers[side].speaker) + reachOf(other.movers[across].speaker),
    ),
  );
}

function clash(one: ReadySearch, a: HeardSpots, other: ReadySearch, b: HeardSpots): boolean {
  const beside = SIDES.map((side) =>
    standAt(other.movers[side], side === 'left' ? b.leftSpot : b.rightSpot, other.room),
  );
  return SIDES.some((side) => {
    const spot = side === 'left' ? a.leftSpot : a.rightSpot;
    const { speaker, placed } = standAt(one.movers[side], spot, one.room);
    return one.fits.fits(speaker, placed) && !one.fits.fits(speaker, placed, beside);
  });
}

function scoreOf(
  pairs: readonly ReadyPair[],
  spots: readonly HeardSpots[],
  weights: readonly number[],
): { score: number; pathSpread: number } {
  const measured = new Float64Array(MEASURED);
  let score = 0;
  pairs.forEach(({ ready }, p) => {
    const { left, i, right, j } = spots[p] as HeardSpots;
    measureInPlace(ready, left, i, right, j, measured);
    score += measured[SCORE] as number;
  });
  const all = pairs.map(({ ready }, p) => pathsOf(ready, spots[p] as HeardSpots));
  let pathSpread = 0;
  let most = 0;
  for (let lane = 0; lane < 2 * weights.length; lane++) {
    const here = all.map((paths) => paths[lane] as number);
    const spread = Math.max(...here) - Math.min(...here);
    pathSpread = Math.max(pathSpread, spread);
    most = Math.max(most, spread * (weights[Math.floor(lane / 2)] as number));
  }
  return { score: score + most, pathSpread };
}

/** Each pair in turn is refined by itself, and stays so where that makes the whole better. */
function refineStage(
  pairs: readonly ReadyPair[],
  start: readonly HeardSpots[],
  weights: readonly number[],
  taken: readonly (readonly HeardSpots[])[],
  apart: number,
): HeardSpots[] {
  let best = [...start];
  pairs.forEach(({ ready }, p) => {
    const { leftSpot, rightSpot } = best[p] as HeardSpots;
    const heard = hearPair(ready, { left: leftSpot, right: rightSpot });
    if (!heard) return;
    const isFree = (positions: Record<Side, Vec3>) => {
      // Refining asks often, and seldom near another pair: by reach alone.
      const others = best.filter((_, q) => q !== p);
      return others.every((other, k) => {
        const q = k < p ? k : k + 1;
        const there = positionsOf(other);
        const reach = reachOf((pairs[q] as ReadyPair).ready.movers.left.speaker);
        const own = reachOf(ready.movers.left.speaker);
        return SIDES.every((side) =>
          SIDES.every((across) => distance(positions[side], there[across]) >= reach + own),
        );
      });
    };
    const refined = heardSpots(refinePair(ready, heard, isFree));
    const next = best.map((spots, q) => (q === p ? refined : spots));
    const isBetter = scoreOf(pairs, next, weights).score < scoreOf(pairs, best, weights).score;
    if (isBetter && taken.every((there) => isElsewhere(next, there, apart))) best = next;
  });
  return best;
}

function told(
  pairs: readonly ReadyPair[],
  spots: readonly HeardSpots[],
  weights: readonly number[],
): FoundStage {
  const { score, pathSpread } = scoreOf(pairs, spots, weights);
  return {
    spots: pairs.map(({ ready }, p) => ({
      pair: ready.pair,
      ...foundSpot(ready, spots[p] as HeardSpots),
    })),
    measures: { pathSpread },
    score,
  };
}
