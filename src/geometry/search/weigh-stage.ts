import { SPOT_AIMS } from '../map/penalty';
import { spreadOf } from './combine-pairs';
import { isWorse, MEASURED, measureInPlace, PENALTIES } from './measure-pair';
import { foundSpot, type HeardSpots } from './pair-spot';
import type { ReadyStage } from './prepare-stage';
import { pathsOf } from './stage-pairs';
import type { FoundStage } from './stage-types';
import type { SpotMeasures, SpotPenalties } from './types';

interface WeighedStage {
  penalties: FoundStage['penalties'];
  /** mm: not weighted. */
  pathSpread: number;
  score: number;
}

/** One spot for each pair, all together. */
export function weighStage(
  { pairs, spreadWeights }: ReadyStage,
  spots: readonly HeardSpots[],
): WeighedStage {
  const lanes = 2 * spreadWeights.length;
  const low = new Float64Array(lanes).fill(Infinity);
  const high = new Float64Array(lanes).fill(-Infinity);
  const sums = SPOT_AIMS.map(() => 0);
  const measured = new Float64Array(MEASURED);
  pairs.forEach((ready, p) => {
    const here = spots[p] as HeardSpots;
    measureInPlace(ready, here.left, here.i, here.right, here.j, measured);
    for (let a = 0; a < sums.length; a++)
      sums[a] = (sums[a] as number) + (measured[PENALTIES + a] as number);
    pathsOf(ready, here).forEach((path, lane) => {
      low[lane] = Math.min(low[lane] as number, path);
      high[lane] = Math.max(high[lane] as number, path);
    });
  });
  const pathSpread = spreadOf(spreadWeights, low, high);
  return {
    penalties: {
      ...(Object.fromEntries(SPOT_AIMS.map((aim, a) => [aim, sums[a]])) as SpotPenalties),
      pathSpread,
    },
    pathSpread: Math.max(...high.map((path, lane) => path - (low[lane] as number))),
    score: sums.reduce((all, sum) => all + sum, 0) + pathSpread,
  };
}

/** A stage as it is told. */
export function foundStage(ready: ReadyStage, spots: readonly HeardSpots[]): FoundStage {
  const told = ready.pairs.map((one, p) => ({
    pair: one.pair,
    ...foundSpot(one, spots[p] as HeardSpots),
  }));
  const { penalties, pathSpread, score } = weighStage(ready, spots);
  const measures = Object.fromEntries(
    SPOT_AIMS.map((aim) => {
      const all = told.map((spot) => spot.measures[aim]);
      return [aim, all.reduce((worst, one) => (isWorse(aim, one, worst) ? one : worst))];
    }),
  ) as SpotMeasures;
  return { spots: told, measures: { ...measures, pathSpread }, penalties, score };
}
