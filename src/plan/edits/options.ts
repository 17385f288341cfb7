/** Options: complete sets of spots, side by side. */
import { castDraft } from 'immer';
import type { Plan, PlanOption } from '../types';
import { findOption, freeId, type PlanRecipe, plain } from './recipe';

/** The id the next added or copied option will have: the first free letter, then numbers. */
export function nextOptionId(plan: { readonly options: readonly { readonly id: string }[] }) {
  const taken = plan.options.map(({ id }) => id);
  const letter = [...'abcdefghijklmnopqrstuvwxyz'].find((id) => !taken.includes(id));
  return letter ?? freeId('option', taken);
}

/** Adds an empty option; its id is {@link nextOptionId} of the plan before. */
export function addOption(title: string): PlanRecipe {
  return (draft) => {
    draft.options.push({ id: nextOptionId(draft), title, speakers: [] });
  };
}

/**
 * Adds a copy right after the original, without what was measured in the car: a copy is made to be
 * changed, and was not built. Its id is {@link nextOptionId} of the plan before.
 */
export function copyOption(optionId: string, title?: string): PlanRecipe {
  return (draft) => {
    const at = draft.options.findIndex(({ id }) => id === optionId);
    const option = draft.options[at];
    if (!option) return;
    const { measured: _, readings: __, ...copy } = plain(option) as PlanOption;
    const named = title ?? `${copy.title ?? copy.id} (copy)`;
    draft.options.splice(
      at + 1,
      0,
      castDraft<PlanOption>({ ...copy, id: nextOptionId(draft), title: named }),
    );
  };
}

/** Takes an option away; the last one stays, a plan has at least one. */
export function removeOption(optionId: string): PlanRecipe {
  return (draft) => {
    if (draft.options.length < 2) return;
    draft.options = draft.options.filter(({ id }) => id !== optionId);
  };
}

export function renameOption(optionId: string, title: string): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (option) option.title = title;
  };
}

export const optionTitle = (option: Plan['options'][number]): string => option.title || option.id;
