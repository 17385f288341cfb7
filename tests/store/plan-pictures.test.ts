import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { idbPictureShelf } from '../../src/store/keeping/picture-shelf';
import {
  createPlanPictures,
  MOST_PICTURES,
  type PictureShelf,
  type PlanPicture,
} from '../../src/store/plan-pictures';

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
      expect(await pictures.add(picture(String(i)))).toBe(true);
    expect(await pictures.add(picture('more'))).toBe(false);
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
});
