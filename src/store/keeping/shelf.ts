/** Where kept plans lie. One shelf is in the browser's database, the other in memory only. */

/** A plan as it was kept once. */
export interface Snapshot {
  /** Rises with every write on the shelf, whatever the clock does. */
  generation: number;
  text: string;
  check: string;
  savedAt: number;
}

export interface ShelfEntry {
  planId: string;
  title: string;
  /** Of the newest snapshot: higher is kept later. */
  generation: number;
  /** When by the clock, ms since 1970: to be shown, never to be ordered by. */
  savedAt: number;
}

export interface WriteRequest {
  planId: string;
  title: string;
  text: string;
  savedAt: number;
  /**
   * The generation the writer has seen last, null for a plan it writes for the first time. When
   * another one is on the shelf by now, nothing is written: {@link ConflictError}.
   */
  seen: number | null;
  /** How many snapshots of this plan stay, the new one included. */
  keep: number;
}

export interface Shelf {
  /** Kept plans, the latest first. */
  list(): Promise<ShelfEntry[]>;
  /** What was kept of one plan, the newest first. */
  snapshots(planId: string): Promise<Snapshot[]>;
  /** All or nothing. Answers the new generation. */
  write(request: WriteRequest): Promise<number>;
  remove(planId: string): Promise<void>;
  /** The plan that was open last, or null. */
  lastOpen(): Promise<string | null>;
  setLastOpen(planId: string | null): Promise<void>;
  close(): void;
}

/** Somebody else has kept the same plan since. */
export class ConflictError extends Error {
  override name = 'ConflictError';
}

/** Snapshots kept of each plan: enough to step behind a damaged one. */
export const SNAPSHOTS_KEPT = 8;
