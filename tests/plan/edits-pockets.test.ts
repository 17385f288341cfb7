import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { isSimple, type SealedPocket } from '../../src/geometry';
import * as edits from '../../src/plan/edits';
import { readPlan, writePlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';
import { createPlanStore } from '../../src/store/plan-store';
import { smallPlan } from '../store/fixtures';

const changed = (plan: Plan, ...recipes: edits.PlanRecipe[]): Plan =>
  recipes.reduce((now, recipe) => produce(now, recipe), plan);

const pockets = (plan: Plan): readonly SealedPocket[] => plan.options[0]?.pockets ?? [];
const pocket = (plan: Plan, i = 0): SealedPocket => {
  const one = pockets(plan)[i];
  if (!one) throw new Error(`no pocket ${i}`);
  return one;
};

const BODY = { flange: 160, cutout: 140, depth: 60 };
/** Two pockets round the mids, whose boards are 600 by 800 mm. */
const drawn = (): Plan =>
  changed(
    smallPlan(),
    edits.changeSpeaker('a', 'midrange-left', { body: BODY }),
    edits.addPocketPair('a', 'midrange-left'),
  );
const SQUARE = [
  [0.1, 0.1],
  [0.5, 0.1],
  [0.5, 0.5],
  [0.1, 0.5],
] as const;
const square = (): Plan =>
  changed(
    drawn(),
    ...SQUARE.map((to, i) => edits.movePocketCorner('a', 'pocket-left', i, to)),
    ...SQUARE.map((to, i) => edits.movePocketCorner('a', 'pocket-left', i, to)),
  );

describe('drawing a pair of pockets', () => {
  test('puts a rectangle round the speaker, clear of its flange, and its mirror image on the right', () => {
    const [left, right] = pockets(drawn());
    expect(left).toMatchObject({
      id: 'pocket-left',
      panel: 'board-left',
      speakers: ['midrange-left'],
    });
    expect(right).toMatchObject({
      id: 'pocket-right',
      panel: 'board-right',
      speakers: ['midrange-right'],
    });
    expect(right?.outline).toEqual(left?.outline);
    // 600 mm wide: the spot at u = 0.3 is 180 mm in, half the flange and 60 mm are 140 mm.
    const us = left?.outline.map(([u]) => Math.round(u * 600)) ?? [];
    expect([Math.min(...us), Math.max(...us)]).toEqual([40, 320]);
    const vs = left?.outline.map(([, v]) => Math.round(v * 800)) ?? [];
    expect([Math.min(...vs), Math.max(...vs)]).toEqual([340, 620]);
    expect(readPlan(writePlan(drawn()))).toMatchObject({ ok: true, warnings: [] });
  });

  test('a second time, or round a speaker that stands free, does nothing', () => {
    const plan = drawn();
    expect(changed(plan, edits.addPocketPair('a', 'midrange-right'))).toBe(plan);
    expect(changed(plan, edits.addPocketPair('a', 'subwoofer'))).toBe(plan);
    expect(changed(plan, edits.addPocketPair('a', 'nobody'))).toBe(plan);
  });

  test('near the edge it stays on the panel', () => {
    const plan = changed(
      smallPlan(),
      edits.mountSpeaker('a', 'midrange-left', { panel: 'board-left', u: 0.02, v: 0.98 }),
      edits.addPocketPair('a', 'midrange-left'),
    );
    for (const { outline } of pockets(plan)) {
      expect(isSimple(outline)).toBe(true);
      for (const part of outline.flat()) {
        expect(part).toBeGreaterThanOrEqual(0);
        expect(part).toBeLessThanOrEqual(1);
      }
    }
    expect(readPlan(writePlan(plan)).ok).toBe(true);
  });

  test('in every cabin, round every usual midbass, it is an outline a file may have', () => {
    for (const template of ['estate', 'roadster', 'city-car', 'large-suv']) {
      const plan = changed(
        smallPlan(),
        edits.setTemplate(template),
        edits.addPair('a', 'midbass', 165),
        edits.addPocketPair('a', 'midbass-left'),
      );
      expect(pockets(plan)).toHaveLength(2);
      expect(readPlan(writePlan(plan)), template).toMatchObject({ ok: true });
    }
  });
});

describe('changing a pocket', () => {
  test('depth, walls and side; null takes a field away', () => {
    const plan = changed(
      drawn(),
      edits.changePocket('a', 'pocket-left', { depth: 90, wall: 12, lies: 'before' }),
    );
    expect(pocket(plan)).toMatchObject({ depth: 90, wall: 12, lies: 'before' });
    expect(pocket(plan, 1)).toEqual(pocket(drawn(), 1));
    const bare = pocket(
      changed(plan, edits.changePocket('a', 'pocket-left', { wall: null, lies: null })),
    );
    expect('wall' in bare || 'lies' in bare).toBe(false);
  });

  test('a speaker put into one leaves the other', () => {
    const plan = changed(
      drawn(),
      edits.changePocket('a', 'pocket-right', { speakers: ['midrange-left', 'nobody'] }),
    );
    expect(pockets(plan).map(({ speakers }) => speakers)).toEqual([[], ['midrange-left']]);
  });

  test('a corner goes where it is put, and not beyond the panel', () => {
    const plan = changed(drawn(), edits.movePocketCorner('a', 'pocket-left', 0, [-3, 0.25]));
    expect(pocket(plan).outline[0]).toEqual([0, 0.25]);
  });

  test('a corner that would make edges cross, or fall on the next one, stays', () => {
    const plan = square();
    expect(pocket(plan).outline).toEqual(SQUARE);
    // The first corner over the opposite edge: the outline would be a bow.
    expect(changed(plan, edits.movePocketCorner('a', 'pocket-left', 0, [0.6, 0.2]))).toBe(plan);
    expect(edits.cornerMayGo(pocket(plan), 0, [0.6, 0.2])).toBe(false);
    expect(changed(plan, edits.movePocketCorner('a', 'pocket-left', 0, SQUARE[1]))).toBe(plan);
    expect(changed(plan, edits.movePocketCorner('a', 'pocket-left', 0, [Number.NaN, 0]))).toBe(
      plan,
    );
    expect(edits.cornerMayGo(pocket(plan), 0, [0.2, 0.2])).toBe(true);
  });

  test('a corner is added in the middle of an edge and taken out again; three stay', () => {
    const plan = changed(square(), edits.addPocketCorner('a', 'pocket-left', 3));
    expect(pocket(plan).outline[4]?.map((n) => n.toFixed(6))).toEqual(['0.100000', '0.300000']);
    expect(pocket(changed(plan, edits.removePocketCorner('a', 'pocket-left', 4))).outline).toEqual(
      SQUARE,
    );
    const three = changed(square(), edits.removePocketCorner('a', 'pocket-left', 0));
    expect(pocket(three).outline).toHaveLength(3);
    expect(changed(three, edits.removePocketCorner('a', 'pocket-left', 0))).toBe(three);
  });

  test('one takes the mirror image of the other', () => {
    const plan = changed(square(), edits.mirrorPocket('a', 'pocket-left', 'pocket-right'));
    expect(pocket(plan, 1)).toMatchObject({ panel: 'board-right', outline: SQUARE });
  });

  test('one is removed; without any the plan has no list of them', () => {
    const one = changed(drawn(), edits.removePocket('a', 'pocket-left'));
    expect(pockets(one).map(({ id }) => id)).toEqual(['pocket-right']);
    const none = changed(one, edits.removePocket('a', 'pocket-right'));
    expect('pockets' in (none.options[0] ?? {})).toBe(false);
    expect(changed(none, edits.removePocket('a', 'pocket-right'))).toBe(none);
  });
});

describe('speakers and their pockets', () => {
  test('a removed speaker is in no pocket any more, and undo puts it back', () => {
    const store = createPlanStore(drawn());
    const before = store.getState().plan;
    store.edit('remove', edits.removeSpeaker('a', 'midrange-left', false));
    expect(pockets(store.getState().plan).map(({ speakers }) => speakers)).toEqual([
      [],
      ['midrange-right'],
    ]);
    expect(readPlan(writePlan(store.getState().plan)).ok).toBe(true);
    store.undo();
    expect(store.getState().plan).toEqual(before);
  });

  test('a drag of a corner is one undo step', () => {
    const store = createPlanStore(drawn());
    store.beginGesture('move a corner');
    for (const u of [0.01, 0.02, 0.03])
      store.moveGesture(edits.movePocketCorner('a', 'pocket-left', 0, [u, 0.4]));
    store.commitGesture();
    expect(pocket(store.getState().plan).outline[0]).toEqual([0.03, 0.4]);
    expect(store.getState().past).toHaveLength(1);
    store.undo();
    expect(store.getState().plan).toEqual(drawn());
  });

  test('small signals go to both of a tied pair, to one of an untied one, and away again', () => {
    const unit = { resonanceHz: 60, q: 0.4, vasLitres: 12 };
    const signals = (plan: Plan) => plan.options[0]?.speakers.map((s) => s.smallSignal);
    const both = changed(smallPlan(), edits.setSmallSignal('a', 'midrange-left', unit));
    expect(signals(both)).toEqual([unit, unit, undefined]);
    expect(changed(both, edits.setSmallSignal('a', 'midrange-right', null))).toEqual(smallPlan());
    const alone = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.setSmallSignal('a', 'midrange-left', unit),
    );
    expect(signals(alone)).toEqual([unit, undefined, undefined]);
  });
});
