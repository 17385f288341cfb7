import { afterEach, describe, expect, test } from 'vitest';
import { evaluatePlan } from '../../src/geometry';
import { mountSpeaker } from '../../src/plan/edits';
import { currentAnswer, currentOption, planStore, sessionStore } from '../../src/store';

const pathOf = (option: number): number => {
  const answer = currentAnswer();
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.options[option]?.seats[0]?.arrivals[0]?.path ?? Number.NaN;
};

/** Drags the left tweeter of the first option to `u`. */
const dragTo = (u: number) => {
  const speaker = planStore.getState().plan.options[0]?.speakers[0];
  if (!speaker?.mount) throw new Error('the demo’s first speaker is mounted');
  planStore.moveGesture(mountSpeaker('a', speaker.id, { ...speaker.mount, u }));
};

afterEach(() => {
  planStore.cancelGesture();
  sessionStore.setState({ option: '' });
});

describe('the answer in a drag', () => {
  test('follows for the option on the board, and is whole again once the drag ends', () => {
    const before = [pathOf(0), pathOf(1)];
    planStore.beginGesture('drag');
    dragTo(0.2);
    expect(pathOf(0)).not.toBe(before[0]);
    expect(pathOf(1)).toBe(before[1]);
    planStore.commitGesture();
    const answer = evaluatePlan(planStore.getState().plan);
    expect(currentAnswer()).toEqual(answer);
    planStore.undo();
    expect([pathOf(0), pathOf(1)]).toEqual(before);
  });

  test('is that of another option as soon as that one is put on the board', () => {
    currentAnswer();
    planStore.beginGesture('move a seat');
    planStore.moveGesture((draft) => {
      draft.seats = [{ id: 'front-left', slide: 30 }, { id: 'front-right' }];
    });
    currentAnswer();
    sessionStore.setState({ option: 'b' });
    const whole = evaluatePlan(planStore.shown());
    if (!whole.ok) throw new Error(whole.error.message);
    expect(currentOption()).toEqual(whole.options[1]);
  });
});
