/** Changes of kept plans that are not on screen. */
import { writePlan } from '../../plan/schema';
import { SENTENCES } from './keeping-store';
import { type Locks, takeLock } from './plan-lock';
import { readKept } from './read-kept';
import { type Shelf, SNAPSHOTS_KEPT } from './shelf';

export type ShelfEditAnswer = { ok: true; planId: string } | { ok: false; message: string };

/** Puts a copy of a kept plan on the shelf, as the plan `copyId`. */
export async function duplicateOn(
  shelf: Shelf,
  planId: string,
  copyId: string,
  savedAt: number,
): Promise<ShelfEditAnswer> {
  const kept = await readKept(shelf, planId);
  if (!kept.ok) return kept;
  if (kept.read.newer) return { ok: false, message: SENTENCES.newer };
  const title = `${kept.read.plan.title} (copy)`;
  const text = writePlan({ ...kept.read.plan, title });
  await shelf.write({ planId: copyId, title, text, savedAt, seen: null, keep: SNAPSHOTS_KEPT });
  return { ok: true, planId: copyId };
}

/** Gives a kept plan another title, unless another tab is writing it. */
export async function renameOn(
  shelf: Shelf,
  locks: Locks | null,
  planId: string,
  title: string,
  savedAt: number,
): Promise<ShelfEditAnswer> {
  const lock = await takeLock(locks, planId, { onLost() {} });
  if (!lock) return { ok: false, message: 'this plan is open in another tab: rename it there' };
  try {
    const kept = await readKept(shelf, planId);
    if (!kept.ok) return kept;
    if (kept.read.newer) return { ok: false, message: SENTENCES.newer };
    const text = writePlan({ ...kept.read.plan, title });
    const seen = kept.generation;
    await shelf.write({ planId, title, text, savedAt, seen, keep: SNAPSHOTS_KEPT });
    return { ok: true, planId };
  } finally {
    lock.release();
  }
}
