import { describe, expect, test } from 'vitest';
import { mountSpeaker, placeSpeakerAt, setTitle } from '../../src/plan/edits';
import { createPlanStore } from '../../src/store/plan-store';
import { smallPlan } from './fixtures';

const spot = (u: number) => mountSpeaker('a', 'midrange-left', { panel: 'board-left', u, v: 0.6 });

describe('the open plan', () => {
  test('one edit is one undo step, and redo brings it back', () => {
    const store = createPlanStore(smallPlan());
    store.edit('rename the plan', setTitle('Other'));
    expect(store.getState().past).toHaveLength(1);
    store.undo();
    expect(store.getState().plan).toEqual(smallPlan());
    store.redo();
    expect(store.getState().plan.title).toBe('Other');
  });

  test('an edit that changes nothing leaves no undo step', () => {
    const store = createPlanStore(smallPlan());
    store.edit('rename the plan', setTitle('Small plan'));
    store.edit('move it nowhere', spot(0.3));
    store.edit('move a speaker there is not', placeSpeakerAt('a', 'nobody', [0, 0, 0]));
    expect(store.getState().past).toHaveLength(0);
  });

  test('a new edit forgets what was undone', () => {
    const store = createPlanStore(smallPlan());
    store.edit('one', setTitle('One'));
    store.undo();
    store.edit('two', setTitle('Two'));
    store.redo();
    expect(store.getState().plan.title).toBe('Two');
    expect(store.getState().future).toHaveLength(0);
  });

  test('one gesture of many moves is one undo step', () => {
    const store = createPlanStore(smallPlan());
    store.beginGesture('move left mid');
    for (let i = 0; i <= 50; i++) store.moveGesture(spot(0.3 + i / 100));
    expect(store.getState().plan).toEqual(smallPlan());
    expect(store.shown().options[0]?.speakers[0]?.mount?.u).toBeCloseTo(0.8, 12);
    store.commitGesture();
    expect(store.getState().past.map(({ label }) => label)).toEqual(['move left mid']);
    store.undo();
    expect(store.getState().plan).toEqual(smallPlan());
  });

  test('a cancelled gesture puts everything back and leaves no undo step', () => {
    const store = createPlanStore(smallPlan());
    store.beginGesture('move left mid');
    store.moveGesture(spot(0.9));
    store.cancelGesture();
    expect(store.shown()).toEqual(smallPlan());
    store.commitGesture();
    expect(store.getState().past).toHaveLength(0);
  });

  test('undo in the middle of a gesture cancels the gesture only', () => {
    const store = createPlanStore(smallPlan());
    store.edit('rename the plan', setTitle('Other'));
    store.beginGesture('move left mid');
    store.moveGesture(spot(0.9));
    store.undo();
    expect(store.getState().plan.title).toBe('Other');
    expect(store.getState().gesture).toBeNull();
  });

  test('a plan that may only be looked at takes no edit, no gesture and no undo', () => {
    const store = createPlanStore(smallPlan());
    store.edit('rename the plan', setTitle('Other'));
    store.setReadOnly('open elsewhere');
    store.edit('rename the plan', setTitle('Third'));
    store.beginGesture('move left mid');
    store.moveGesture(spot(0.9));
    store.commitGesture();
    store.undo();
    expect(store.getState().plan.title).toBe('Other');
    store.setReadOnly(null);
    store.undo();
    expect(store.getState().plan.title).toBe('Small plan');
  });

  test('a number that is not finite never gets into the plan', () => {
    const store = createPlanStore(smallPlan());
    const nowhere = placeSpeakerAt('a', 'subwoofer', [Number.NaN, 0, 0]);
    expect(() => store.edit('move it', nowhere)).toThrow(/"move it" expected finite numbers/);
    store.beginGesture('move it');
    store.moveGesture(placeSpeakerAt('a', 'subwoofer', [1, 2, 3]));
    store.moveGesture(placeSpeakerAt('a', 'subwoofer', [Number.POSITIVE_INFINITY, 0, 0]));
    store.commitGesture();
    expect(store.getState().plan.options[0]?.speakers[2]?.position).toEqual([1, 2, 3]);
  });
});
