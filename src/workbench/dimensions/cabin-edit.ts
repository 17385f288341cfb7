import { produce } from 'immer';
import { buildCabin } from '../../geometry';
import type { Plan } from '../../plan/types';
import { planStore, type Recipe } from '../../store';

/**
 * A change of the cabin, made only if a cabin comes of it; otherwise the plan stays as it was.
 * @returns null when done, or the engine's sentence on what disagrees
 */
export function editCabin(label: string, recipe: Recipe): string | null {
  const why = refusalOf(planStore.getState().plan, recipe);
  if (why === null) planStore.edit(label, recipe);
  return why;
}

/**
 * Why a change would leave no cabin, or null. Where there is none to begin with, every change is a
 * way out and none is refused.
 */
export function refusalOf(plan: Plan, recipe: Recipe): string | null {
  const next = buildCabin(produce(plan, recipe));
  return next.ok || !buildCabin(plan).ok ? null : next.error.message;
}
