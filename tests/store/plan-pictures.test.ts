import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { setTitle } from '../../src/plan/edits';
import { followPictures } from '../../src/store/follow-pictures';
import { idbPictureShelf } from '../../src/store/keeping/picture-shelf';
import {
  createPlanPictures,
  MOST_PICTURES,
  type PictureShelf,
  type PlanPicture,
} from '../../src/store/plan-pictures';
import { smallPlan } from './fixtures';
import { createBrowser } from './keeper-rig';

const picture = (id: string): PlanPicture => ({
  id,
  caption: '',
  width: 4,
  height: 3,
  bytes: new Uint8Array([1, 2, 3]),
});

let number = 0;
const freshShelf = () => idbPictureShelf(`pictures-${++number}`);
const ids = (pictures: ReturnType<typeof createPlanPictures>) =>
  pictures.getState().pictures.map(({ id }) => id);

describe('pictures of a plan', () => {
  test('are found again with their captions and in their order, and only with their own plan', async () => {
    const shelf = freshShelf();
    const pictures = createPlanPictures(shelf);
    await pictures.show('one');
    for (const id of ['a', 'b', 'c']) await pictures.add(picture(id));
    await pictures.caption('b', 'Pod');
    await pictures.move('c', -1);
    await pictures.remove('a');
    const again = createPlanPictures(shelf);
    await again.show('one');
    expect(again.getState().pictures).toEqual(pictures.getState().pictures);
    expect(ids(again)).toEqual(['c', 'b']);
    await again.show('two');
    expect(ids(again)).toEqual([]);
  });

  test('of a plan not kept yet are kept with its first edit', async () => {
    const shelf = freshShelf();
    const pictures = createPlanPictures(shelf);
    await pictures.show(null);
    await pictures.add(picture('a'));
    expect(await shelf.plans()).toEqual([]);
    await pictures.adopt('new');
    expect((await shelf.read('new')).map(({ id }) => id)).toEqual(['a']);
  });

  test('of plans thrown away go too', async () => {
    const shelf = freshShelf();
    await shelf.write('gone', [picture('a')]);
    await shelf.write('kept', [picture('b')]);
    const pictures = createPlanPictures(shelf);
    await pictures.show('open');
    await pictures.add(picture('c'));
    await pictures.tidy(['kept']);
    expect([...(await shelf.plans())].sort()).toEqual(['kept', 'open']);
  });

  test('moving the first to the front, or past the end, changes nothing', async () => {
    const pictures = createPlanPictures(freshShelf());
    await pictures.show('one');
    for (const id of ['a', 'b']) await pictures.add(picture(id));
    await pictures.move('a', -1);
    await pictures.move('b', 1);
    expect(ids(pictures)).toEqual(['a', 'b']);
  });

  test('a full book takes no more', async () => {
    const pictures = createPlanPictures(freshShelf());
    await pictures.show(null);
    for (let i = 0; i < MOST_PICTURES; i++)
      expect(await pictures.add(picture(String(i)))).toBe('added');
    expect(await pictures.add(picture('more'))).toBe('full');
    expect(ids(pictures)).toHaveLength(MOST_PICTURES);
  });

  test('fault 15: where the browser has no room they stay in memory, and it is said', async () => {
    const full: PictureShelf = {
      read: () => Promise.resolve([]),
      write: () => Promise.reject(new DOMException('', 'QuotaExceededError')),
      plans: () => Promise.resolve([]),
    };
    const pictures = createPlanPictures(full);
    await pictures.show('one');
    await pictures.add(picture('a'));
    expect(ids(pictures)).toEqual(['a']);
    expect(pictures.getState().problem).toMatch(/could not be kept/);
  });

  test('added before the shelf has answered come after those it has, and lose none', async () => {
    const shelf = freshShelf();
    await shelf.write('one', [picture('old 1'), picture('old 2')]);
    const slow = slowShelf(shelf);
    const pictures = createPlanPictures(slow);
    const shown = pictures.show('one');
    const done = [
      pictures.add(picture('new')),
      pictures.caption('old 2', 'Pod'),
      pictures.move('old 2', -1),
      pictures.remove('old 1'),
    ];
    expect(ids(pictures)).toEqual([]);
    slow.answer();
    await Promise.all([shown, ...done]);
    expect(ids(pictures)).toEqual(['old 2', 'new']);
    expect(pictures.getState().pictures[0]?.caption).toBe('Pod');
    expect(await shelf.read('one')).toEqual(pictures.getState().pictures);
  });

  test('added while slow to be found go to their own plan, though another is open by then', async () => {
    const shelf = freshShelf();
    await shelf.write('one', [picture('old')]);
    const slow = slowShelf(shelf);
    const pictures = createPlanPictures(slow);
    const shown = pictures.show('one');
    const added = pictures.add(picture('new'));
    await pictures.show(null);
    slow.answer();
    await Promise.all([shown, added]);
    expect(ids(pictures)).toEqual([]);
    expect((await shelf.read('one')).map(({ id }) => id)).toEqual(['old', 'new']);
  });

  test('that cannot be read are not written over, and it is said', async () => {
    const shelf = freshShelf();
    await shelf.write('one', [picture('old')]);
    let works = false;
    const failing: PictureShelf = {
      ...shelf,
      read: (id) => (works ? shelf.read(id) : Promise.reject(new Error('damaged'))),
    };
    const pictures = createPlanPictures(failing);
    await pictures.show('one');
    expect(pictures.getState().problem).toMatch(/could not be read: they stay as they are/);
    expect(await pictures.add(picture('new'))).toBe('added');
    expect(ids(pictures)).toEqual(['new']);
    expect(pictures.getState().problem).toMatch(/what is added now is gone/);
    expect((await shelf.read('one')).map(({ id }) => id)).toEqual(['old']);
    works = true;
    await pictures.show('one');
    expect(ids(pictures)).toEqual(['old']);
    expect(pictures.getState().problem).toBeNull();
  });

  test('fault 17: of a plan that is only looked at stay as they are', async () => {
    const shelf = freshShelf();
    await shelf.write('one', [picture('a'), picture('b')]);
    let looks = true;
    const pictures = createPlanPictures(shelf, () => looks);
    await pictures.show('one');
    expect(await pictures.add(picture('c'))).toBe('refused');
    await pictures.caption('a', 'Pod');
    await pictures.move('a', 1);
    await pictures.remove('a');
    expect(pictures.getState().pictures).toEqual([picture('a'), picture('b')]);
    expect(pictures.getState().problem).toMatch(/only be looked at here/);
    expect(await shelf.read('one')).toEqual([picture('a'), picture('b')]);
    looks = false;
    await pictures.remove('a');
    expect((await shelf.read('one')).map(({ id }) => id)).toEqual(['b']);
    expect(pictures.getState().problem).toBeNull();
  });

  test('added in memory come after those a plan opened again has on the shelf, as many as fit', async () => {
    const shelf = freshShelf();
    await shelf.write(
      'one',
      Array.from({ length: MOST_PICTURES - 1 }, (_, i) => picture(`old ${i}`)),
    );
    const pictures = createPlanPictures(shelf);
    await pictures.show(null);
    for (const id of ['a', 'b']) await pictures.add(picture(id));
    await pictures.adopt('one');
    expect(ids(pictures)).toHaveLength(MOST_PICTURES);
    expect(ids(pictures).slice(-2)).toEqual([`old ${MOST_PICTURES - 2}`, 'a']);
    expect(await shelf.read('one')).toEqual(pictures.getState().pictures);
  });
});

/** Reads are answered only when told to be. */
function slowShelf(shelf: PictureShelf): PictureShelf & { answer(): void } {
  let answer = () => {};
  const told = new Promise<void>((resolve) => {
    answer = resolve;
  });
  return { ...shelf, answer, read: (id) => told.then(() => shelf.read(id)) };
}

describe('the pictures of the plan that is open', () => {
  const keptIds = async (shelf: PictureShelf, id: string) =>
    (await shelf.read(id)).map((one) => one.id);

  test('are those of a plan opened again after another was thrown away, and none is lost', async () => {
    const tab = await createBrowser().tab();
    const shelf = freshShelf();
    const pictures = createPlanPictures(shelf);
    const stop = followPictures(pictures, tab.planStore, tab.keepingStore);
    const planId = async (): Promise<string> => {
      await tab.keeper.flush();
      return tab.state().planId as string;
    };
    tab.planStore.edit('rename', setTitle('First'));
    const first = await planId();
    for (const id of ['old 1', 'old 2']) await pictures.add(picture(id));
    expect(await keptIds(shelf, first)).toEqual(['old 1', 'old 2']);

    tab.planStore.open(smallPlan('Second'));
    await tab.keeper.remove(await planId());
    expect(tab.state().planId).toBeNull();
    expect(await tab.keeper.open(first)).toEqual({ ok: true });
    // Waits its turn behind the reading.
    await pictures.add(picture('new'));
    expect(ids(pictures)).toEqual(['old 1', 'old 2', 'new']);
    expect(await keptIds(shelf, first)).toEqual(['old 1', 'old 2', 'new']);
    stop();
    tab.keeper.stop();
  });

  test('go with a new plan from its first edit on', async () => {
    const tab = await createBrowser().tab();
    const shelf = freshShelf();
    const pictures = createPlanPictures(shelf);
    const stop = followPictures(pictures, tab.planStore, tab.keepingStore);
    await pictures.add(picture('a'));
    tab.planStore.edit('rename', setTitle('Edited'));
    await tab.keeper.flush();
    await pictures.add(picture('b'));
    expect(await keptIds(shelf, tab.state().planId as string)).toEqual(['a', 'b']);
    tab.planStore.open(smallPlan('Another'));
    expect(ids(pictures)).toEqual([]);
    stop();
    tab.keeper.stop();
  });
});
