/**
 * The last edits of a page that is being left. The browser's database needs a few turns to write,
 * which a page on its way out no longer gets; local storage writes at once. The next start puts
 * the entry on the shelf, unless the database had it after all.
 */
import { checksum } from './checksum';
import type { PlanLock } from './plan-lock';
import { type Shelf, SNAPSHOTS_KEPT } from './shelf';

export interface JournalEntry {
  planId: string;
  /** The generation the page had seen last; null when the plan was not on the shelf. */
  seen: number | null;
  title: string;
  text: string;
  savedAt: number;
}

export interface Journal {
  put(entry: JournalEntry): void;
  entries(): JournalEntry[];
  drop(planId: string): void;
}

const PREFIX = 'earpath-unkept ';

/** A storage that refuses or is full makes a journal that holds nothing: it is the second net. */
export function createJournal(storage: () => Storage): Journal {
  const quietly = <T>(use: (storage: Storage) => T, otherwise: T): T => {
    try {
      return use(storage());
    } catch {
      return otherwise;
    }
  };
  return {
    put: (entry) =>
      quietly((there) => {
        const check = checksum(entry.text);
        there.setItem(PREFIX + entry.planId, JSON.stringify({ ...entry, check }));
      }, undefined),
    entries: () =>
      quietly((there) => {
        const keys = Array.from({ length: there.length }, (_, i) => there.key(i));
        return keys.flatMap((key) => {
          if (!key?.startsWith(PREFIX)) return [];
          const entry = read(there.getItem(key));
          if (!entry) there.removeItem(key);
          return entry ? [entry] : [];
        });
      }, []),
    drop: (planId) => quietly((there) => there.removeItem(PREFIX + planId), undefined),
  };
}

function read(json: string | null): JournalEntry | null {
  try {
    const { check, ...entry } = JSON.parse(json ?? '') as JournalEntry & { check: string };
    return checksum(entry.text) === check ? entry : null;
  } catch {
    return null;
  }
}

/**
 * Puts what pages have left unwritten on the shelf, as long as no other tab is at it and the shelf
 * has the plan as the page had left it.
 */
export async function settleJournal(
  shelf: Shelf,
  journal: Journal,
  lockFor: (planId: string) => Promise<PlanLock | null>,
): Promise<void> {
  for (const entry of journal.entries()) {
    const { planId } = entry;
    const lock = await lockFor(planId);
    if (!lock) continue;
    try {
      const [newest] = await shelf.snapshots(planId);
      if ((newest?.generation ?? null) === entry.seen) {
        await shelf.write({ ...entry, keep: SNAPSHOTS_KEPT });
        await shelf.setLastOpen(planId);
      }
      journal.drop(planId);
    } finally {
      lock.release();
    }
  }
}
