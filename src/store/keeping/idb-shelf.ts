/** The shelf in the browser's own database, on this machine. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { checksum } from './checksum';
import {
  ConflictError,
  type Shelf,
  type ShelfEntry,
  type Snapshot,
  type WriteRequest,
} from './shelf';

interface Schema extends DBSchema {
  plans: { key: string; value: ShelfEntry };
  snapshots: { key: [string, number]; value: Snapshot & { planId: string } };
  meta: { key: string; value: { key: string; value: number | string | null } };
}

/** Raised when the stores themselves change; the older page then lets go of the database. */
const DATABASE_VERSION = 1;

export interface ShelfEvents {
  /** A newer page wants the database: this one has closed it and keeps nothing more. */
  onOutdated(): void;
  /** The browser closed the database by itself. */
  onLost(): void;
}

const everySnapshot = (planId: string) =>
  IDBKeyRange.bound([planId, Number.NEGATIVE_INFINITY], [planId, Number.POSITIVE_INFINITY]);

/** @throws what the browser throws where storage is refused or the database is a newer one */
export async function openIdbShelf(name: string, events: ShelfEvents): Promise<Shelf> {
  const db: IDBPDatabase<Schema> = await openDB<Schema>(name, DATABASE_VERSION, {
    upgrade(fresh) {
      fresh.createObjectStore('plans', { keyPath: 'planId' });
      fresh.createObjectStore('snapshots', { keyPath: ['planId', 'generation'] });
      fresh.createObjectStore('meta', { keyPath: 'key' });
    },
    blocking() {
      db.close();
      events.onOutdated();
    },
    terminated: () => events.onLost(),
  });

  return {
    async list() {
      const entries = await db.getAll('plans');
      return entries.sort((a, b) => b.generation - a.generation);
    },
    async snapshots(planId) {
      const found = await db.getAll('snapshots', everySnapshot(planId));
      return found.sort((a, b) => b.generation - a.generation);
    },
    async write(request: WriteRequest) {
      const { planId, title, text, savedAt, seen, keep } = request;
      const check = checksum(text);
      // One transaction: killed at any moment, all of it is there or none.
      const tx = db.transaction(['plans', 'snapshots', 'meta'], 'readwrite');
      // Awaited below: without a handler of its own a failed transaction would be reported twice.
      const done = tx.done.catch((error: unknown) => error);
      try {
        const plans = tx.objectStore('plans');
        const snapshots = tx.objectStore('snapshots');
        const meta = tx.objectStore('meta');
        const entry = await plans.get(planId);
        // A plan no longer on the shelf was thrown away elsewhere; whoever edits it keeps it anew.
        if (entry && entry.generation !== seen) throw new ConflictError();
        const generation = Number((await meta.get('generation'))?.value ?? 0) + 1;
        const keys = await snapshots.getAllKeys(everySnapshot(planId));
        for (const key of keys.slice(0, Math.max(0, keys.length - (keep - 1)))) {
          await snapshots.delete(key);
        }
        await meta.put({ key: 'generation', value: generation });
        await snapshots.put({ planId, generation, text, check, savedAt });
        await plans.put({ planId, title, generation, savedAt });
        const failed = await done;
        if (failed) throw failed;
        return generation;
      } catch (error) {
        try {
          tx.abort();
        } catch {
          // Already aborted by the error itself.
        }
        const cause = await done;
        // A request cut off by its transaction tells less than the transaction's own reason.
        const cutOff = error instanceof DOMException && error.name === 'AbortError';
        throw cutOff && cause ? cause : error;
      }
    },
    async remove(planId) {
      const tx = db.transaction(['plans', 'snapshots', 'meta'], 'readwrite');
      await tx.objectStore('plans').delete(planId);
      await tx.objectStore('snapshots').delete(everySnapshot(planId));
      const open = await tx.objectStore('meta').get('open');
      if (open?.value === planId) await tx.objectStore('meta').delete('open');
      await tx.done;
    },
    async lastOpen() {
      const open = await db.get('meta', 'open');
      return typeof open?.value === 'string' ? open.value : null;
    },
    async setLastOpen(planId) {
      await db.put('meta', { key: 'open', value: planId });
    },
    close: () => db.close(),
  };
}
