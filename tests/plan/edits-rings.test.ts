import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import type { SpeakerInput } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { type PlanRecipe, setRing, tiePair } from '../../src/plan/edits';
import { formatRefusal, readPlan, writePlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';
import { createPlanStore } from '../../src/store/plan-store';

const changed = (...recipes: PlanRecipe[]): Plan =>
  recipes.reduce((so, recipe) => produce(so, recipe), demoPlan());

const speaker = (plan: Plan, id: string): SpeakerInput => {
  const found = plan.options[0]?.speakers.find((one) => one.id === id);
  if (!found) throw new Error(`there is no speaker ${id}`);
  return found;
};

describe('the ring a speaker stands on', () => {
  test('is given to both of a tied pair, changed for both, and taken from both', () => {
    const on = changed(setRing('a', 'midrange-left', {}));
    expect(speaker(on, 'midrange-left').ring).toEqual({});
    expect(speaker(on, 'midrange-right').ring).toEqual({});
    const wider = produce(on, setRing('a', 'midrange-right', { outer: 110, seat: 'sunk' }));
    expect(speaker(wider, 'midrange-left').ring).toEqual({ outer: 110, seat: 'sunk' });
    const usual = produce(wider, setRing('a', 'midrange-left', { outer: null }));
    expect(speaker(usual, 'midrange-right').ring).toEqual({ seat: 'sunk' });
    expect(produce(usual, setRing('a', 'midrange-left', null))).toEqual(demoPlan());
  });

  test('of an untied pair is each one’s own', () => {
    const plan = changed(
      tiePair('a', 'midrange', false),
      setRing('a', 'midrange-left', { outer: 110 }),
    );
    expect(speaker(plan, 'midrange-left').ring).toEqual({ outer: 110 });
    expect(speaker(plan, 'midrange-right').ring).toBeUndefined();
  });

  test('of a pair tied again is the leading side’s, on both sides or on none', () => {
    const apart = changed(
      tiePair('a', 'midrange', false),
      setRing('a', 'midrange-left', { outer: 110 }),
    );
    const both = produce(apart, tiePair('a', 'midrange', true, 'left'));
    expect(speaker(both, 'midrange-right').ring).toEqual({ outer: 110 });
    expect(speaker(both, 'midrange-left').ring).toEqual({ outer: 110 });
    const none = produce(apart, tiePair('a', 'midrange', true, 'right'));
    expect('ring' in speaker(none, 'midrange-left')).toBe(false);
    expect('ring' in speaker(none, 'midrange-right')).toBe(false);
    // Tying alone changes nothing else.
    const tied = produce(apart, tiePair('a', 'midrange', true));
    expect(tied.options[0]?.speakers).toEqual(apart.options[0]?.speakers);
  });

  test('is one undo step', () => {
    const store = createPlanStore(demoPlan());
    store.edit('put the mids on rings', setRing('a', 'midrange-left', {}));
    expect(speaker(store.getState().plan, 'midrange-right').ring).toEqual({});
    store.undo();
    expect(store.getState().plan).toEqual(demoPlan());
    store.redo();
    expect(speaker(store.getState().plan, 'midrange-right').ring).toEqual({});
  });

  test('comes back from a file as it was written', () => {
    const plan = changed(
      setRing('a', 'midrange-left', {
        outer: 110,
        bore: 76,
        leastThickness: 5,
        rimRadius: 2.5,
        seat: 'sunk',
        flangeThickness: 4.5,
        screwCircle: 80,
        screws: 6,
      }),
      setRing('a', 'tweeter-left', {}),
    );
    const answer = readPlan(writePlan(plan));
    if (!answer.ok) throw new Error(formatRefusal(answer.error));
    expect(answer.warnings).toEqual([]);
    expect(answer.plan).toEqual(plan);
    expect(writePlan(answer.plan)).toBe(writePlan(plan));
  });

  test.each([
    [{ outer: 0 }, 'ring.outer: must be more than 0'],
    [{ rimRadius: -1 }, 'ring.rimRadius: must be between 0 and 100'],
    [{ seat: 'flush' }, 'ring.seat: must be one of "proud", "sunk"'],
    [{ screws: 1 }, 'ring.screws: must be between 2 and 24'],
    [{ bore: '75' }, 'ring.bore: must be a number, got the text "75"'],
  ])('what it cannot be is refused with its path: %j', (ring, words) => {
    const plan = JSON.parse(writePlan(demoPlan()));
    plan.options[0].speakers[0].ring = ring;
    const answer = readPlan(JSON.stringify(plan));
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(formatRefusal(answer.error)).toContain(words);
  });
});
