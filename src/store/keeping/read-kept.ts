import { formatRefusal, type ReadPlan, readPlan } from '../../plan/schema';
import { checksum } from './checksum';
import type { Shelf } from './shelf';

export type KeptAnswer =
  | {
      ok: true;
      read: ReadPlan;
      /** The newest generation on the shelf, damaged or not. */
      generation: number;
      /** A sentence when the newest snapshot was damaged and an older one was read. */
      notice: string | null;
    }
  | {
      ok: false;
      message: string;
      /** The newest text there is, to be offered back; null where there is none. */
      raw: string | null;
    };

/**
 * The newest snapshot that is whole. References are not checked: a plan is kept in whatever state
 * its owner left it.
 */
export async function readKept(shelf: Shelf, planId: string): Promise<KeptAnswer> {
  const snapshots = await shelf.snapshots(planId);
  const [newest] = snapshots;
  if (!newest) return { ok: false, message: 'this plan is no longer kept here', raw: null };
  let why = '';
  for (const snapshot of snapshots) {
    const { text } = snapshot;
    if (typeof text !== 'string' || checksum(text) !== snapshot.check) {
      why ||= 'what was kept of it is damaged';
      continue;
    }
    const read = readPlan(text, { references: false });
    if (!read.ok) {
      why ||= formatRefusal(read.error);
      continue;
    }
    const steps = snapshots.indexOf(snapshot);
    const older = steps === 1 ? 'the one before it' : `the one ${steps} before it`;
    const notice =
      steps === 0
        ? null
        : `The newest kept state of “${read.plan.title}” could not be read (${why}); ${older} is open.`;
    return { ok: true, read, generation: newest.generation, notice };
  }
  const raw = typeof newest.text === 'string' ? newest.text : null;
  return { ok: false, message: `the plan could not be read: ${why}`, raw };
}
