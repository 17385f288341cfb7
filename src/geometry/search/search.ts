import type { Refusal } from '../cabin/model';
import type { PlanInput } from '../input';
import type { MakeFitter } from '../map/fits';
import { finishSearchInSteps } from './finish';
import { hearGridInSteps } from './hear-grid';
import { prepareSearch } from './prepare';
import type { SearchAnswer, SearchProgress, SearchRequest } from './types';

export type SearchResult = { ok: true; answer: SearchAnswer } | { ok: false; error: Refusal };

/**
 * The best spots for one pair: every spot of the grid, or every combination of a left and a right
 * one, is tried; the front and the answers are of all of them. Yields as it goes, so that whoever
 * runs it can stop. The request is taken to be well formed; what the plan does not have is refused.
 */
export function* searchInSteps(
  plan: PlanInput,
  request: SearchRequest,
  makeFitter?: MakeFitter,
): Generator<SearchProgress, SearchResult> {
  const prepared = prepareSearch(plan, request, makeFitter);
  if (!prepared.ok) return prepared;
  const heard = yield* hearGridInSteps(prepared.ready);
  return { ok: true, answer: yield* finishSearchInSteps(prepared.ready, heard) };
}

/** {@link searchInSteps} in one go. */
export function searchSpots(
  plan: PlanInput,
  request: SearchRequest,
  makeFitter?: MakeFitter,
): SearchResult {
  const steps = searchInSteps(plan, request, makeFitter);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
