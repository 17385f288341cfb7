/** What the keeper needs, taken from the browser. */
import type { PlanStore } from '../plan-store';
import { openIdbShelf } from './idb-shelf';
import { createJournal } from './journal';
import type { KeeperNeeds } from './keeper-contract';
import type { KeepingStore } from './keeping-store';
import type { Locks } from './plan-lock';

const DATABASE = 'earpath';

export function browserNeeds(planStore: PlanStore, keepingStore: KeepingStore): KeeperNeeds {
  return {
    planStore,
    keepingStore,
    openShelf: (events) => openIdbShelf(DATABASE, events),
    locks: (navigator.locks as unknown as Locks | undefined) ?? null,
    journal: createJournal(() => localStorage),
    now: () => Date.now(),
    newId,
  };
}

/** randomUUID exists only where the page came over https or from this machine. */
function newId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}

/** Calls `leave` when the page is hidden or left: the last moment a browser surely grants. */
export function onLeaving(leave: () => void): () => void {
  const hidden = () => {
    if (document.visibilityState === 'hidden') leave();
  };
  document.addEventListener('visibilitychange', hidden);
  window.addEventListener('pagehide', leave);
  return () => {
    document.removeEventListener('visibilitychange', hidden);
    window.removeEventListener('pagehide', leave);
  };
}
