/** A page's keeper in Node: one database and one lock manager stand for one browser. */
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import type { Plan } from '../../src/plan/types';
import { openIdbShelf } from '../../src/store/keeping/idb-shelf';
import { createKeeper } from '../../src/store/keeping/keeper';
import type { KeeperNeeds } from '../../src/store/keeping/keeper-contract';
import { createKeepingStore } from '../../src/store/keeping/keeping-store';
import type { Locks } from '../../src/store/keeping/plan-lock';
import type { Shelf } from '../../src/store/keeping/shelf';
import { createPlanStore } from '../../src/store/plan-store';
import { createFakeLocks } from './fake-locks';
import { smallPlan } from './fixtures';

export interface Browser {
  /** Opens a tab; without anything kept it shows the plan given. */
  tab(options?: TabOptions): Promise<Tab>;
  /** The shelf as it lies on the disk. */
  shelf(): Promise<Shelf>;
}

interface TabOptions {
  plan?: Plan;
  needs?: Partial<KeeperNeeds>;
}

export interface Tab {
  planStore: ReturnType<typeof createPlanStore>;
  keepingStore: ReturnType<typeof createKeepingStore>;
  keeper: ReturnType<typeof createKeeper>;
  state: () => ReturnType<ReturnType<typeof createKeepingStore>['getState']>;
  title: () => string;
}

export function createBrowser(locks: Locks | null = createFakeLocks()): Browser {
  globalThis.indexedDB = new IDBFactory();
  let ids = 0;
  const quiet = { onOutdated() {}, onLost() {} };
  return {
    async tab({ plan = smallPlan(), needs = {} } = {}) {
      const planStore = createPlanStore(plan);
      const keepingStore = createKeepingStore();
      const keeper = createKeeper({
        planStore,
        keepingStore,
        openShelf: (events) => openIdbShelf('earpath-test', events),
        locks,
        journal: null,
        now: () => Date.now(),
        newId: () => `plan-${++ids}`,
        ...needs,
      });
      await keeper.ready;
      return {
        planStore,
        keepingStore,
        keeper,
        state: keepingStore.getState,
        title: () => planStore.getState().plan.title,
      };
    },
    shelf: () => openIdbShelf('earpath-test', quiet),
  };
}
