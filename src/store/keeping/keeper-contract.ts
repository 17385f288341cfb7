import type { PlanStore } from '../plan-store';
import type { Journal } from './journal';
import type { KeepingStore } from './keeping-store';
import type { Locks } from './plan-lock';
import type { Shelf, ShelfEntry } from './shelf';
import type { ShelfEditAnswer } from './shelf-edits';

export interface KeeperNeeds {
  planStore: Pick<PlanStore, 'getState' | 'subscribe' | 'open' | 'edit' | 'setReadOnly'>;
  keepingStore: KeepingStore;
  /** Opens the shelf; a rejection means storage is refused. */
  openShelf(events: { onOutdated(): void; onLost(): void }): Promise<Shelf>;
  locks: Locks | null;
  journal: Journal | null;
  now(): number;
  newId(): string;
}

export type OpenAnswer = { ok: true } | { ok: false; message: string; raw: string | null };

export interface Keeper {
  /** Resolves once the plan that was open last is open again, or there is none. */
  ready: Promise<void>;
  /** Writes what is not yet written; resolves when it is on the shelf or has failed. */
  flush(): Promise<void>;
  /** The page is being left: what is not yet written is put where it is found again. */
  leave(): void;
  list(): Promise<ShelfEntry[]>;
  open(planId: string): Promise<OpenAnswer>;
  remove(planId: string): Promise<void>;
  /** Answers the copy's id, or a sentence. */
  duplicate(planId: string): Promise<ShelfEditAnswer>;
  rename(planId: string, title: string): Promise<ShelfEditAnswer>;
  /** Takes the open plan from the tab that writes it, as it is kept there. */
  takeOver(): Promise<OpenAnswer>;
  /** Tries again after a failure. */
  retry(): Promise<void>;
  dismissNotice(): void;
  stop(): void;
}
