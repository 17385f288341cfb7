import { planStore, type Recipe } from '../../store';

/** Makes an edit that adds speakers to an option; the id of the first one added, or null. */
export function addedTo(optionId: string, label: string, recipe: Recipe): string | null {
  const speakers = () =>
    planStore.getState().plan.options.find(({ id }) => id === optionId)?.speakers ?? [];
  const before = new Set(speakers().map(({ id }) => id));
  planStore.edit(label, recipe);
  return speakers().find(({ id }) => !before.has(id))?.id ?? null;
}
