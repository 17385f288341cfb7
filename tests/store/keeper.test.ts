import { describe, expect, test } from 'vitest';
import { setTitle } from '../../src/plan/edits';
import { SNAPSHOTS_KEPT } from '../../src/store/keeping/shelf';
import { smallPlan } from './fixtures';
import { createBrowser } from './keeper-rig';

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
