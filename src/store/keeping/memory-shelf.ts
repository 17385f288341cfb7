/** The shelf where the browser allows none: everything is there until the page is closed. */
import { checksum } from './checksum';
import { ConflictError, type Shelf, type ShelfEntry, type Snapshot } from './shelf';

export function createMemoryShelf(): Shelf {
  const plans = new Map<string, ShelfEntry & { snapshots: Snapshot[] }>();
  let generation = 0;
  let open: string | null = null;
  return {
    async list() {
      return [...plans.values()]
        .map(({ snapshots: _, ...entry }) => entry)
        .sort((a, b) => b.generation - a.generation);
    },
    async snapshots(planId) {
      return [...(plans.get(planId)?.snapshots ?? [])];
    },
    async write({ planId, title, text, savedAt, seen, keep }) {
      const known = plans.get(planId);
      if (known && known.generation !== seen) throw new ConflictError();
      generation++;
      const snapshot = { generation, text, check: checksum(text), savedAt };
      const snapshots = [snapshot, ...(known?.snapshots ?? [])].slice(0, keep);
      plans.set(planId, { planId, title, generation, savedAt, snapshots });
      return generation;
    },
    async remove(planId) {
      plans.delete(planId);
      if (open === planId) open = null;
    },
    async lastOpen() {
      return open;
    },
    async setLastOpen(planId) {
      open = planId;
    },
    close() {},
  };
}
