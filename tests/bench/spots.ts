/**
 * What a map and a search of 20,000 spots cost. The work is dealt out to workers in equal shares,
 * so one of two shares, alone on a core, takes as long as the whole does on two.
 */
import {
  buildCabin,
  finishSearchInSteps,
  hearGridInSteps,
  joinShares,
  type MapQuantity,
  mapSpots,
  prepareSearch,
  type SearchRequest,
  searchStage,
} from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';

export const SPOTS = 20_000;
const SHARE = { index: 0, of: 2 };

/** A whole pass takes long: the quickest of a few is the least disturbed, ms. */
function quickest(work: () => void, runs = 3): number {
  let least = Infinity;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

function lastOf<P, T>(steps: Generator<P, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The step at which a count of spots comes nearest {@link SPOTS}: by halving. */
function stepFor(count: (step: number) => number): number {
  let [fine, coarse] = [4, 100];
  for (let i = 0; i < 14; i++) {
    const middle = (fine + coarse) / 2;
    if (count(middle) > SPOTS) fine = middle;
    else coarse = middle;
  }
  return coarse;
}

export interface SpotTimes {
  /** Difference, angle, obstruction on every mountable panel. */
  map: number;
  /** The same on the panels where mids are commonly mounted. */
  mapOfRole: number;
  mapWithReflections: number;
  /** A mirrored pair, every constraint, four aims: half the grid, and what comes after. */
  search: number;
  /** Three pairs together on grids of 20 mm, on one core. */
  stage: number;
}

export function spotTimes(): SpotTimes {
  const plan = demoPlan();
  const built = buildCabin(plan);
  if (!built.ok) throw new Error(built.error.message);
  const mountable = built.cabin.panels.filter((panel) => panel.mountable);
  const every = mountable.map(({ id }) => id);
  const ofRole = mountable.filter(({ roles }) => roles.includes('midrange')).map(({ id }) => id);
  const map = (panels: readonly string[], step: number, more: readonly MapQuantity[] = []) => {
    const quantities: MapQuantity[] = ['difference', 'offAxisDeg', 'obstructionDb', ...more];
    const request = { option: 'a', speaker: 'midrange-left', quantities, panels, step };
    const answer = mapSpots(plan, request, SHARE);
    if (!answer.ok) throw new Error(answer.error.message);
  };
  const area = (panels: readonly string[]) => (step: number) => {
    const request = { option: 'a', speaker: 'midrange-left', quantities: [], panels, step };
    // No spot is worked out: the share is past the end.
    const answer = mapSpots(plan, request, { index: 1, of: 1 });
    return answer.ok ? answer.map.done.length : Infinity;
  };
  const [everyStep, roleStep] = [stepFor(area(every)), stepFor(area(ofRole))];

  const request = (step: number): SearchRequest => ({
    option: 'a',
    pair: 'midrange',
    step,
    aim: { kind: 'seat', seat: 'front-left' },
    require: { fits: true, free: true, maxOffAxisDeg: 60 },
  });
  const searchStep = stepFor((step) => {
    const prepared = prepareSearch(plan, request(step));
    return prepared.ok ? prepared.ready.spots.left.length : Infinity;
  });
  const prepared = prepareSearch(plan, request(searchStep));
  if (!prepared.ok) throw new Error(prepared.error.message);
  const { ready } = prepared;
  const other = lastOf(hearGridInSteps(ready, { index: 1, of: 2 }));
  const pairs = ['tweeter', 'midrange', 'midbass'].map((pair) => ({ pair }));
  return {
    map: quickest(() => map(every, everyStep)),
    mapOfRole: quickest(() => map(ofRole, roleStep)),
    mapWithReflections: quickest(() => map(every, everyStep, ['firstReflectionTime'])),
    search: quickest(() => {
      const heard = joinShares([lastOf(hearGridInSteps(ready, SHARE)), other]);
      lastOf(finishSearchInSteps(ready, heard));
    }),
    stage: quickest(() => {
      const found = searchStage(plan, { option: 'a', pairs });
      if (!found.ok) throw new Error(found.error.message);
    }, 1),
  };
}
