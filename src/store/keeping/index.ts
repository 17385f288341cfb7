/** Keeping plans safe in this browser: what the page calls. */
import type { PlanStore } from '../plan-store';
import { browserNeeds, onLeaving } from './browser';
import { createKeeper } from './keeper';
import type { Keeper } from './keeper-contract';
import { createKeepingStore } from './keeping-store';

export type { Keeper, OpenAnswer } from './keeper-contract';
export type { KeepingState } from './keeping-store';
export type { ShelfEntry } from './shelf';

export const keepingStore = createKeepingStore();

let keeper: Keeper | null = null;

/**
 * Starts keeping the open plan: restores the plan open last, then writes after every edit. Called
 * once, before the page is drawn; `ready` resolves when the restored plan is in the store.
 */
export function startKeeping(planStore: PlanStore): Keeper {
  if (keeper) return keeper;
  const started = createKeeper(browserNeeds(planStore, keepingStore));
  const stopLeaving = onLeaving(started.leave);
  keeper = {
    ...started,
    stop() {
      stopLeaving();
      started.stop();
      keeper = null;
    },
  };
  return keeper;
}

function running(): Keeper {
  if (!keeper) throw new Error('keeping: expected startKeeping to have been called');
  return keeper;
}

/** Kept plans, the latest first. */
export const listPlans = () => running().list();
/** Opens a kept plan; what is on screen is kept first. */
export const openKept = (planId: string) => running().open(planId);
/** Throws a kept plan away. The open one stays on screen and is kept anew with its next edit. */
export const deleteKept = (planId: string) => running().remove(planId);
export const duplicateKept = (planId: string) => running().duplicate(planId);
/** Renames a kept plan; the open one is renamed by editing its title (setTitle). */
export const renameKept = (planId: string, title: string) => running().rename(planId, title);
/** Takes the open plan from the tab that writes it. */
export const takeOver = () => running().takeOver();
/** Tries to keep the plan again after a failure. */
export const retryKeeping = () => running().retry();
/** Writes what is not yet written. */
export const flushKeeping = () => running().flush();
export const dismissNotice = () => running().dismissNotice();
