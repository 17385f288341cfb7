import { describe, expect, test } from 'vitest';
import { setTitle } from '../../src/plan/edits';
import { createJournal } from '../../src/store/keeping/journal';
import { type Shelf, SNAPSHOTS_KEPT } from '../../src/store/keeping/shelf';
import { smallPlan } from './fixtures';
import { createBrowser } from './keeper-rig';

/** Local storage, in memory. */
function memoryStorage(): () => Storage {
  const items = new Map<string, string>();
  const storage: Storage = {
    get length() {
      return items.size;
    },
    key: (i) => [...items.keys()][i] ?? null,
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
    clear: () => items.clear(),
  };
  return () => storage;
}

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

describe('keeping the open plan', () => {
  test('an edit is kept by itself within half a second', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('Edited'));
    await wait(500);
    expect(tab.state()).toMatchObject({ status: 'kept', message: null });
    tab.keeper.stop();
    expect((await (await browser.shelf()).list()).map(({ title }) => title)).toEqual(['Edited']);
  });

  test('after a reload the plan is there as it was left', async () => {
    const browser = createBrowser();
    const before = await browser.tab();
    before.planStore.edit('rename', setTitle('Left like this'));
    await before.keeper.flush();
    before.keeper.stop();
    const after = await browser.tab({ plan: smallPlan('Demo') });
    expect(after.planStore.getState().plan).toEqual({ ...smallPlan(), title: 'Left like this' });
    expect(after.planStore.getState().readOnly).toBeNull();
  });

  test('a demo nobody has touched is not kept', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    await tab.keeper.flush();
    expect(await tab.keeper.list()).toEqual([]);
    expect(tab.state().planId).toBeNull();
  });

  test('a plan opened from a file is kept at once, beside the one before it', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('First'));
    tab.planStore.open(smallPlan('From a file'));
    await tab.keeper.flush();
    expect((await tab.keeper.list()).map(({ title }) => title)).toEqual(['From a file', 'First']);
  });

  test('edits made just before another plan is opened are kept too', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('First'));
    await tab.keeper.flush();
    tab.planStore.edit('rename', setTitle('First, changed'));
    tab.planStore.open(smallPlan('Second'));
    await tab.keeper.flush();
    const titles = (await tab.keeper.list()).map(({ title }) => title);
    expect(titles.sort()).toEqual(['First, changed', 'Second']);
  });

  test('kept plans are opened, renamed, copied and thrown away', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('First'));
    await tab.keeper.flush();
    const first = tab.state().planId as string;
    tab.planStore.open(smallPlan('Second'));
    await tab.keeper.flush();
    const second = tab.state().planId as string;

    expect(await tab.keeper.rename(first, 'First renamed')).toMatchObject({ ok: true });
    expect(await tab.keeper.open(first)).toEqual({ ok: true });
    expect(tab.title()).toBe('First renamed');
    const copy = await tab.keeper.duplicate(first);
    expect(copy.ok).toBe(true);
    await tab.keeper.remove(second);
    const titles = (await tab.keeper.list()).map(({ title }) => title);
    expect(titles).toEqual(['First renamed (copy)', 'First renamed']);
    expect(await tab.keeper.open(second)).toMatchObject({ ok: false });
    expect(tab.title()).toBe('First renamed');
  });

  test('renaming the open plan is an edit like any other', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('First'));
    await tab.keeper.flush();
    await tab.keeper.rename(tab.state().planId as string, 'Second');
    expect(tab.title()).toBe('Second');
    tab.planStore.undo();
    await tab.keeper.flush();
    expect((await tab.keeper.list()).map(({ title }) => title)).toEqual(['First']);
  });

  test('throwing the open plan away leaves it on screen, kept anew with the next edit', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('rename', setTitle('First'));
    await tab.keeper.flush();
    await tab.keeper.remove(tab.state().planId as string);
    expect(await tab.keeper.list()).toEqual([]);
    expect(tab.title()).toBe('First');
    tab.planStore.edit('rename', setTitle('Second thoughts'));
    await tab.keeper.flush();
    expect((await tab.keeper.list()).map(({ title }) => title)).toEqual(['Second thoughts']);
  });

  test('only the last few snapshots of a plan are kept, and at least five', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    for (let i = 0; i < SNAPSHOTS_KEPT + 6; i++) {
      tab.planStore.edit('rename', setTitle(`Title ${i}`));
      await tab.keeper.flush();
    }
    const shelf = await browser.shelf();
    const snapshots = await shelf.snapshots(tab.state().planId as string);
    expect(SNAPSHOTS_KEPT).toBeGreaterThanOrEqual(5);
    expect(snapshots).toHaveLength(SNAPSHOTS_KEPT);
    expect(snapshots[0]?.text).toContain(`Title ${SNAPSHOTS_KEPT + 5}`);
  });

  test('the last edits of a page left at once are there at the next start', async () => {
    const browser = createBrowser();
    const journal = createJournal(memoryStorage());
    for (const title of ['Never kept before', 'Kept before']) {
      const shelf = await browser.shelf();
      let leaving = false;
      const openShelf = async (): Promise<Shelf> => ({
        ...shelf,
        // A page on its way out gets no further turn.
        write: (request) => (leaving ? new Promise<never>(() => {}) : shelf.write(request)),
      });
      const tab = await browser.tab({ needs: { journal, openShelf, locks: null } });
      leaving = true;
      tab.planStore.edit('rename', setTitle(title));
      tab.keeper.leave();
      const after = await browser.tab({ plan: smallPlan('Demo'), needs: { journal } });
      expect(after.title()).toBe(title);
      expect(after.planStore.getState().readOnly).toBeNull();
      expect(journal.entries()).toEqual([]);
      expect(await after.keeper.list()).toHaveLength(1);
      after.keeper.stop();
    }
  });

  test('what the database had after all is not put there again', async () => {
    const browser = createBrowser();
    const journal = createJournal(memoryStorage());
    const tab = await browser.tab({ needs: { journal } });
    tab.planStore.edit('rename', setTitle('In time'));
    tab.keeper.leave();
    const [entry] = journal.entries();
    await tab.keeper.flush();
    expect(journal.entries()).toEqual([]);
    tab.planStore.edit('rename', setTitle('And later'));
    await tab.keeper.flush();
    tab.keeper.stop();
    if (!entry) throw new Error('expected an entry');
    journal.put(entry);
    const after = await browser.tab({ plan: smallPlan('Demo'), needs: { journal } });
    expect(after.title()).toBe('And later');
    const shelf = await browser.shelf();
    expect(await shelf.snapshots(entry.planId)).toHaveLength(2);
  });

  test('a journal that is refused, full or damaged is no harm', async () => {
    const refusing = createJournal(() => {
      throw new DOMException('refused', 'SecurityError');
    });
    refusing.put({ planId: 'p', seen: null, title: 't', text: 'x', savedAt: 0 });
    expect(refusing.entries()).toEqual([]);
    const storage = memoryStorage();
    storage().setItem('earpath-unkept p', '{"planId":"p","text":"half a pl');
    expect(createJournal(storage).entries()).toEqual([]);
    expect(storage()).toHaveLength(0);
  });

  test('a plan the engine refuses is kept and opened again all the same', async () => {
    const browser = createBrowser();
    const tab = await browser.tab();
    tab.planStore.edit('name a template there is not', (draft) => {
      draft.cabin.template = 'hovercraft';
    });
    await tab.keeper.flush();
    tab.keeper.stop();
    const after = await browser.tab({ plan: smallPlan('Demo') });
    expect(after.planStore.getState().plan.cabin.template).toBe('hovercraft');
  });
});
