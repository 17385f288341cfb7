/** A plan that came in a link: opened, kept as a copy, or left for the plan open before. */
import { flushKeeping, keepingStore, planStore } from '../../store';
import { judgeLink } from './judge-link';
import { openKeptPlan, openPlan, openRead } from './opening';
import { CARRIES, LINKED } from './shared-link';

/** Id of the plan that was open before; `null`: none that is kept. */
let before: string | null = null;

/**
 * Opens the plan a link carries, to be looked at; where it carries none that can be read, says why
 * and leaves the open plan as it is.
 * @param link a whole address, or what follows its #
 * @returns true when it was opened
 */
export async function openLink(link: string): Promise<boolean> {
  const own = planStore.getState().readOnly === LINKED ? before : keepingStore.getState().planId;
  const opened = await openRead('The link', judgeLink(link, LINKED));
  if (opened) before = own;
  else forgetFragment();
  return opened;
}

/** Keeps a copy of the plan from the link, which may then be changed. */
export async function keepCopy(): Promise<void> {
  await openPlan(planStore.getState().plan);
  await flushKeeping();
  forgetFragment();
}

/** The kept plan that was open before the link, to be gone back to. */
export const planBefore = (): string | null => before;

export async function backToBefore(): Promise<void> {
  if (before !== null && (await openKeptPlan(before, 'The plan open before'))) forgetFragment();
}

/** The plan leaves the address, so that loading the page again opens what is kept here. */
function forgetFragment(): void {
  if (location.hash.startsWith(CARRIES))
    history.replaceState(history.state, '', location.pathname + location.search);
}
