import { describe, expect, test } from 'vitest';
import { setTitle } from '../../src/plan/edits';
import { writePlan } from '../../src/plan/schema';
import { openIdbShelf } from '../../src/store/keeping/idb-shelf';
import { SENTENCES } from '../../src/store/keeping/keeping-store';
import { ConflictError, type Shelf } from '../../src/store/keeping/shelf';
import { smallPlan } from '../store/fixtures';
import { createBrowser } from '../store/keeper-rig';

const refusing = (shelf: Shelf, refuse: () => boolean): Shelf => ({
  ...shelf,
  write: async (request) => {
    if (refuse()) throw new DOMException('no room', 'QuotaExceededError');
    return shelf.write(request);
  },
});

describe('faults 15: no room, or no storage', () => {
  test('when the quota is exceeded the plan stays, the page is told, and a retry keeps it', async () => {
    const browser = createBrowser();
    let full = true;
    const openShelf = async () => refusing(await browser.shelf(), () => full);
    const tab = await browser.tab({ needs: { openShelf } });
    tab.planStore.edit('rename', setTitle('Too much'));
    await tab.keeper.flush();
    expect(tab.state()).toMatchObject({ status: 'failed', message: SENTENCES.noRoom });
    expect(tab.title()).toBe('Too much');
    full = false;
    await tab.keeper.retry();
    expect(tab.state()).toMatchObject({ status: 'kept', message: null });
    expect((await tab.keeper.list()).map(({ title }) => title)).toEqual(['Too much']);
  });

  test('a full store is first given room by letting old snapshots of the plan go', async () => {
    const browser = createBrowser();
    const shelf = await browser.shelf();
    const asked: number[] = [];
    const openShelf = async (): Promise<Shelf> => ({
      ...shelf,
      write: async (request) => {
        asked.push(request.keep);
        if (request.keep > 2) throw new DOMException('no room', 'QuotaExceededError');
        return shelf.write(request);
      },
    });
    const tab = await browser.tab({ needs: { openShelf } });
    tab.planStore.edit('rename', setTitle('Tight'));
    await tab.keeper.flush();
    expect(asked).toEqual([8, 2]);
    expect(tab.state().status).toBe('kept');
  });

  test('where storage is refused plans are kept in memory, and that is said', async () => {
    const browser = createBrowser();
    const openShelf = () => Promise.reject(new DOMException('private window', 'SecurityError'));
    const tab = await browser.tab({ needs: { openShelf } });
    expect(tab.state()).toMatchObject({ status: 'memory-only', message: SENTENCES.memoryOnly });
    tab.planStore.edit('rename', setTitle('In memory'));
    await tab.keeper.flush();
    expect(tab.state()).toMatchObject({ status: 'memory-only', message: SENTENCES.memoryOnly });
    tab.planStore.open(smallPlan('Another'));
    await tab.keeper.flush();
    expect(await tab.keeper.list()).toHaveLength(2);
  });
});

describe('faults 16: killed in the middle, or damaged', () => {
  test('a write cut off at any step leaves the old state whole', async () => {
    const browser = createBrowser();
    const shelf = await browser.shelf();
    const text = writePlan(smallPlan('Old'));
    const request = { planId: 'p', title: 'Old', text, savedAt: 0, seen: null, keep: 5 };
    const generation = await shelf.write(request);
    const newer = { ...request, title: 'New', text: writePlan(smallPlan('New')), seen: generation };
    // The browser ends a page by aborting its transactions; each store's put is cut off in turn.
    for (const victim of ['meta', 'snapshots', 'plans']) {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: unknown[]) {
        const asked = (put as (...a: unknown[]) => IDBRequest).apply(this, args);
        if (this.name === victim) this.transaction.abort();
        return asked;
      } as typeof put;
      await expect(shelf.write(newer)).rejects.toThrow();
      IDBObjectStore.prototype.put = put;
      const fresh = await browser.shelf();
      expect((await fresh.list()).map(({ title }) => title)).toEqual(['Old']);
      expect((await fresh.snapshots('p')).map((snapshot) => snapshot.text)).toEqual([text]);
    }
    expect(await shelf.write(newer)).toBe(generation + 1);
  });

  test('a page killed half a second after an edit has it, or has the state before it', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('Before'));
    await tab.keeper.flush();
    tab.planStore.edit('rename', setTitle('After'));
    await new Promise((resolve) => setTimeout(resolve, 500));
    // Killed: no flush, no stop. Another start on the same storage:
    const shelf = await browser.shelf();
    const [newest] = await shelf.snapshots(tab.state().planId as string);
    expect(newest?.text).toBe(writePlan(smallPlan('After')));
  });

  test('the newest snapshot is damaged: the one before it opens, and that is told', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    for (const title of ['One', 'Two', 'Three']) {
      tab.planStore.edit('rename', setTitle(title));
      await tab.keeper.flush();
    }
    const planId = tab.state().planId as string;
    tab.keeper.stop();
    await damage(planId, (text) => text.replace('Three', 'Thrxe'));
    const after = await browser.tab({ plan: smallPlan('Demo') });
    expect(after.title()).toBe('Two');
    expect(after.state().notice).toMatch(/newest kept state of “Two” could not be read.*damaged/);
    // And the plan goes on being kept.
    after.planStore.edit('rename', setTitle('Four'));
    await after.keeper.flush();
    expect(after.state().status).toBe('kept');
  });

  test('every snapshot is damaged: the plan on screen stays, the raw text is offered', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('One'));
    await tab.keeper.flush();
    const planId = tab.state().planId as string;
    tab.keeper.stop();
    await damage(planId, (text) => text.slice(0, 100));
    const after = await browser.tab({ plan: smallPlan('Demo') });
    expect(after.title()).toBe('Demo');
    expect(after.state().notice).toMatch(/was not opened/);
    const answer = await after.keeper.open(planId);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.raw).toContain('earpath-plan');
  });
});

describe('faults 17: two tabs on one plan', () => {
  async function twoTabs(locks?: null) {
    const browser = locks === null ? createBrowser(null) : createBrowser();
    const first = await browser.tab();
    first.planStore.edit('rename', setTitle('Shared'));
    await first.keeper.flush();
    const second = await browser.tab({ plan: smallPlan('Demo') });
    return { browser, first, second };
  }

  test('the second tab looks only and says so', async () => {
    const { first, second } = await twoTabs();
    expect(second.title()).toBe('Shared');
    expect(second.planStore.getState().readOnly).toBe(SENTENCES.elsewhere);
    expect(second.state()).toMatchObject({ elsewhere: true, message: SENTENCES.elsewhere });
    second.planStore.edit('rename', setTitle('Not mine'));
    await second.keeper.flush();
    expect(second.title()).toBe('Shared');
    expect(first.planStore.getState().readOnly).toBeNull();
  });

  test('the second tab takes over: it gets the newest state, and the first one only looks', async () => {
    const { browser, first, second } = await twoTabs();
    first.planStore.edit('rename', setTitle('Newer'));
    await first.keeper.flush();
    expect(await second.keeper.takeOver()).toEqual({ ok: true });
    expect(second.title()).toBe('Newer');
    expect(second.planStore.getState().readOnly).toBeNull();
    expect(first.planStore.getState().readOnly).toBe(SENTENCES.takenOver);
    first.planStore.edit('rename', setTitle('Too late'));
    await first.keeper.flush();
    second.planStore.edit('rename', setTitle('Mine now'));
    await second.keeper.flush();
    const shelf = await browser.shelf();
    expect((await shelf.list()).map(({ title }) => title)).toEqual(['Mine now']);
    // And back again.
    expect(await first.keeper.takeOver()).toEqual({ ok: true });
    expect(first.title()).toBe('Mine now');
    expect(second.planStore.getState().readOnly).toBe(SENTENCES.takenOver);
  });

  test('where the browser has no locks, the second to write stops instead of overwriting', async () => {
    const { browser, first, second } = await twoTabs(null);
    second.planStore.edit('rename', setTitle('Second was quicker'));
    await second.keeper.flush();
    first.planStore.edit('rename', setTitle('First was later'));
    await first.keeper.flush();
    expect(first.state()).toMatchObject({ status: 'failed', message: SENTENCES.conflict });
    expect(first.planStore.getState().readOnly).toBe(SENTENCES.conflict);
    expect(first.title()).toBe('First was later');
    const shelf = await browser.shelf();
    expect((await shelf.list()).map(({ title }) => title)).toEqual(['Second was quicker']);
    expect(await first.keeper.takeOver()).toEqual({ ok: true });
    expect(first.title()).toBe('Second was quicker');
  });

  test('a newer page upgrades the database: the older one stops writing and says so', async () => {
    const browser = createBrowser();
    const old = await browser.tab();
    old.planStore.edit('rename', setTitle('Kept by the old page'));
    await old.keeper.flush();
    await new Promise<void>((resolve, reject) => {
      const request = indexedDB.open('earpath-test', 2);
      request.onsuccess = () => resolve(request.result.close());
      request.onerror = () => reject(request.error);
    });
    old.planStore.edit('rename', setTitle('Not to be written'));
    await old.keeper.flush();
    expect(old.state()).toMatchObject({ status: 'failed', message: SENTENCES.outdated });
    expect(old.title()).toBe('Not to be written');
  });
});

describe('faults 18: the clock is set back', () => {
  test('generations are ordered by a counter, whatever the clock says', async () => {
    const browser = createBrowser();
    let clock = 1_800_000_000_000;
    const tab = await browser.tab({ needs: { now: () => (clock -= 86_400_000) } });
    for (const title of ['One', 'Two', 'Three']) {
      tab.planStore.edit('rename', setTitle(title));
      await tab.keeper.flush();
    }
    tab.keeper.stop();
    const after = await browser.tab({ plan: smallPlan('Demo') });
    expect(after.title()).toBe('Three');
    const shelf = await browser.shelf();
    const snapshots = await shelf.snapshots(after.state().planId as string);
    expect(snapshots.map(({ generation }) => generation)).toEqual([3, 2, 1]);
    expect(snapshots[0]?.savedAt).toBeLessThan(snapshots[2]?.savedAt as number);
  });

  test('a writer who has not seen the newest generation writes nothing', async () => {
    const shelf = await createBrowser().shelf();
    const request = { planId: 'p', title: 't', text: 'x', savedAt: 0, keep: 5 };
    const one = await shelf.write({ ...request, seen: null });
    await shelf.write({ ...request, seen: one });
    await expect(shelf.write({ ...request, seen: one })).rejects.toBeInstanceOf(ConflictError);
    expect(await shelf.snapshots('p')).toHaveLength(2);
  });
});

/** Changes the newest snapshot's text behind the shelf's back. */
async function damage(planId: string, change: (text: string) => string): Promise<void> {
  const shelf = await openIdbShelf('earpath-test', { onOutdated() {}, onLost() {} });
  const [newest] = await shelf.snapshots(planId);
  shelf.close();
  if (!newest) throw new Error(`there is no snapshot of ${planId}`);
  await new Promise<void>((resolve, reject) => {
    const request = indexedDB.open('earpath-test');
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const tx = request.result.transaction('snapshots', 'readwrite');
      tx.objectStore('snapshots').put({ ...newest, planId, text: change(newest.text) });
      tx.oncomplete = () => {
        request.result.close();
        resolve();
      };
    };
  });
}
