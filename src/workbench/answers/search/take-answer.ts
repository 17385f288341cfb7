import { nextOptionId, optionTitle, takeSpot, takeStage } from '../../../plan/edits';
import { planStore, sessionStore } from '../../../store';
import type { Found, Proposal } from './found';
import { searchStore } from './search-store';

/** Puts a proposal on the board as a new option, beside the one searched: one step, undone as one. */
export function takeAnswer(found: Found, one: Proposal): void {
  const { plan, readOnly } = planStore.getState();
  const say = (said: string) => searchStore.setState({ said });
  if (readOnly) {
    say(readOnly);
    return;
  }
  const from = found.option.id;
  const id = nextOptionId(plan);
  const place = found.answers.indexOf(one);
  const nth = place < 0 ? undefined : place + 1;
  const [only, ...more] = one.spots;
  if (!only) return;
  planStore.edit(
    `take ${spotWord(found)} ${one.key} as an option`,
    more.length > 0 ? takeStage(from, one, nth) : takeSpot(from, only.pair, only, nth),
  );
  const made = planStore.getState().plan.options.find((option) => option.id === id);
  if (!made) {
    say('The option that was searched is no longer in the plan.');
    return;
  }
  sessionStore.setState({ option: id, selection: null });
  say(
    `${capitalOf(spotWord(found))} ${one.key} is on the board as the new option “${optionTitle(made)}”.`,
  );
}

/** What a proposal is called: one spot, or a whole set of them. */
export const spotWord = ({ pairs }: Pick<Found, 'pairs'>): string =>
  pairs.length > 1 ? 'set' : 'spot';

const capitalOf = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
