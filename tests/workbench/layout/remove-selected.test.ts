import { beforeEach, describe, expect, test } from 'vitest';
import { demoPlan } from '../../../src/plan/demo';
import { tiePair } from '../../../src/plan/edits';
import { planStore, sessionStore } from '../../../src/store';
import { removeSelected } from '../../../src/workbench/layout/use-keys';

const speakers = () => planStore.getState().plan.options[0]?.speakers ?? [];
const first = () => {
  const speaker = speakers().find(({ pair, side }) => pair && side === 'left');
  if (!speaker?.pair) throw new Error('the demo has no pair');
  return { id: speaker.id, pair: speaker.pair };
};
const option = () => planStore.getState().plan.options[0]?.id ?? '';

describe('the Delete key', () => {
  beforeEach(() => {
    planStore.open(demoPlan());
    sessionStore.setState({ option: option(), selection: null });
  });

  test('removes the selected speaker with its tied twin, as one undo step', () => {
    const { id, pair } = first();
    const before = speakers();
    sessionStore.setState({ selection: { kind: 'speaker', id } });
    removeSelected();
    expect(speakers().filter((s) => s.pair === pair)).toEqual([]);
    expect(speakers()).toHaveLength(before.length - 2);
    expect(sessionStore.getState().selection).toBeNull();
    planStore.undo();
    expect(speakers()).toEqual(before);
  });

  test('removes one alone when the pair is untied', () => {
    const { id, pair } = first();
    planStore.edit('untie', tiePair(option(), pair, false));
    sessionStore.setState({ selection: { kind: 'speaker', id } });
    removeSelected();
    expect(speakers().filter((s) => s.pair === pair)).toHaveLength(1);
    expect(speakers().some((s) => s.id === id)).toBe(false);
  });

  test('does nothing with nothing, or something else, selected', () => {
    const before = planStore.getState().plan;
    removeSelected();
    sessionStore.setState({ selection: { kind: 'seat', id: 'front-left' } });
    removeSelected();
    expect(planStore.getState().plan).toBe(before);
  });
});
