/** Plans with their numbers, as a paper is given them. */
import { createEvaluator, type ReferencePoint } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import type { PlanRecipe } from '../../../src/plan/edits';
import type { Plan } from '../../../src/plan/types';
import type { PaperFacts } from '../../../src/sheets/facts';
import type { Block, Told } from '../../../src/sheets/page';
import { createPlanStore } from '../../../src/store/plan-store';

/** The demo, changed; the option of that number. */
export function factsOf(recipes: readonly PlanRecipe[] = [], option = 0): PaperFacts {
  const store = createPlanStore(demoPlan());
  for (const recipe of recipes) store.edit('change', recipe);
  return factsOfPlan(store.getState().plan, option);
}

export function factsOfPlan(plan: Plan, option = 0): PaperFacts {
  const answer = createEvaluator()(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [chosen, result] = [plan.options[option], answer.options[option]];
  if (!chosen || !result) throw new Error(`there is no option ${option}`);
  return {
    plan,
    cabin: answer.cabin,
    option: chosen,
    result,
    results: answer.options,
    seat: result.seats[0] ?? null,
  };
}

/** On page 3 of 7. */
export const TOLD: Told = { page: 3, pages: 7, pageOf: () => null };

export function contentOf(blocks: readonly Block[], id: string) {
  const block = blocks.find((one) => one.id === id);
  if (!block || block.kind === 'table') throw new Error(`there is no piece ${id}`);
  return typeof block.content === 'function' ? block.content(TOLD) : block.content;
}

/** The text of a piece of markup, with a blank between elements. */
export const plainText = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('\u00a0', ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();

export const referenceNamed = (
  references: readonly ReferencePoint[],
  name: string,
  nameOf: (one: ReferencePoint) => string,
): ReferencePoint => {
  const found = references.filter((one) => nameOf(one) === name);
  if (found.length !== 1) throw new Error(`${found.length} points are called “${name}”`);
  return found[0] as ReferencePoint;
};
