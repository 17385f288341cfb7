import { produce } from 'immer';
import { buildCabin } from '../../geometry';
import type { Plan } from '../../plan/types';
import { currentAnswer, planStore, type Recipe } from '../../store';

/**
 * A change of the cabin, made only if a cabin comes of it; otherwise the plan stays as it was.
 * @returns null when done, or the engine's sentence on what disagrees
 */
export function editCabin(label: string, recipe: Recipe): string | null {
  // Where there is no cabin to begin with, every change is a way out and none is refused.
  const why = currentAnswer().ok ? refusalOf(planStore.getState().plan, recipe) : null;
  if (why === null) planStore.edit(label, recipe);
  return why;
}

/** Why no cabin would come of a plan after this change, or null when one does. */
export function refusalOf(plan: Plan, recipe: Recipe): string | null {
  const next = buildCabin(produce(plan, recipe));
  return next.ok ? null : next.error.message;
}
