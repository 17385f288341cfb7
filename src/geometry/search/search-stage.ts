import type { Refusal } from '../cabin/model';
import type { PlanInput } from '../input';
import type { MakeFitter } from '../map/fits';
import { finishStageInSteps } from './finish-stage';
import { hearStageInSteps } from './hear-stage';
import { prepareStage } from './prepare-stage';
import type { StageAnswer, StageRequest } from './stage-types';
import type { SearchProgress } from './types';

export type StageSearchResult = { ok: true; answer: StageAnswer } | { ok: false; error: Refusal };

/**
 * The best spots for several pairs together: each pair's whole grid, then the best combinations of
 * their feasible spots by the sum of their scores and the path spread of each side, no two speakers
 * in one another's way. Yields as it goes, so that whoever runs it can stop.
 */
export function* searchStageInSteps(
  plan: PlanInput,
  request: StageRequest,
  makeFitter?: MakeFitter,
): Generator<SearchProgress, StageSearchResult> {
  const prepared = prepareStage(plan, request, makeFitter);
  if (!prepared.ok) return prepared;
  const heard = yield* hearStageInSteps(prepared.ready);
  return { ok: true, answer: yield* finishStageInSteps(prepared.ready, heard) };
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
