/** A plan that came in a link: looked at, until a copy of it is kept. */
import { useEffect } from 'react';
import { flushKeeping, keepingStore, planStore } from '../../store';
import { openKeptPlan, openPlan, openRead } from './opening';

/** Why a plan from a link stays as it is. */
export const LINKED = 'it came in a link and is not kept on this machine: keep a copy to change it';

/** What stands at the start of a fragment that carries a plan; the rest is read where it is needed. */
const CARRIES = '#plan=';

/** Id of the plan that was open before; `null`: none that is kept. */
let before: string | null = null;

/**
 * Opens the plan a link carries, to be looked at; where it carries none that can be read, says why
 * and leaves the open plan as it is.
 * @param link a whole address, or what follows its #
 * @returns true when it was opened
 */
export async function openLink(link: string): Promise<boolean> {
  const { judgeLink } = await import('./judge-link');
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

/** Opens what the page's own address carries, now and whenever another link is followed. */
export function useSharedLink(): void {
  useEffect(() => {
    const look = () => {
      if (location.hash.startsWith(CARRIES)) void openLink(location.hash);
    };
    look();
    addEventListener('hashchange', look);
    return () => removeEventListener('hashchange', look);
  }, []);
}
