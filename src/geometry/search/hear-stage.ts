import {
  countHearings,
  type GridHeard,
  hearGridInSteps,
  joinShares,
  type SearchShare,
  WHOLE_GRID,
} from './hear-grid';
import type { ReadyStage } from './prepare-stage';
import type { SearchProgress } from './types';

/** The grids of all pairs, one after the other, or a share of each. */
export function* hearStageInSteps(
  { pairs }: ReadyStage,
  share: SearchShare = WHOLE_GRID,
): Generator<SearchProgress, GridHeard[]> {
  const total = pairs.reduce((sum, ready) => sum + countHearings(ready, share), 0);
  const heard: GridHeard[] = [];
  let before = 0;
  for (const ready of pairs) {
    const steps = hearGridInSteps(ready, share);
    let step = steps.next();
    for (; !step.done; step = steps.next())
      yield { phase: 'spots', done: before + step.value.done, total };
    before += countHearings(ready, share);
    heard.push(step.value);
  }
  return heard;
}

/** Puts shares of the pairs' grids together. */
export const joinStageShares = (shares: readonly (readonly GridHeard[])[]): GridHeard[] =>
  (shares[0] ?? []).map((_, p) => joinShares(shares.map((share) => share[p] as GridHeard)));
