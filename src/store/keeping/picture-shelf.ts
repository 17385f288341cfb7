import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { PictureShelf, PlanPicture } from '../plan-pictures';

interface Schema extends DBSchema {
  pictures: { key: string; value: { planId: string; pictures: readonly PlanPicture[] } };
}

/**
 * Pictures in a database of their own, so that plans are written as fast as before. Opened with the
 * first use; a browser that keeps nothing fails each call.
 */
export function idbPictureShelf(name = 'earpath-pictures'): PictureShelf {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;
  const database = () => {
    opening ??= openDB<Schema>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('pictures', { keyPath: 'planId' });
      },
      terminated() {
        opening = null;
      },
    });
    opening.catch(() => {
      opening = null;
    });
    return opening;
  };
  return {
    read: async (planId) => (await (await database()).get('pictures', planId))?.pictures ?? [],
    async write(planId, pictures) {
      const db = await database();
      if (pictures.length === 0) await db.delete('pictures', planId);
      else await db.put('pictures', { planId, pictures });
    },
    plans: async () => (await database()).getAllKeys('pictures'),
  };
}
