import { beforeEach, describe, expect, it } from 'vitest';
import { demoPlan } from '../../src/plan/demo';
import { copyOption, removeOption } from '../../src/plan/edits';
import { keepBeside } from '../../src/store/keep-beside';
import { createPlanStore, type PlanStore } from '../../src/store/plan-store';
import { createSessionStore, type SessionStore } from '../../src/store/session-store';

let plans: PlanStore;
let session: SessionStore;

beforeEach(() => {
  plans = createPlanStore(demoPlan());
  session = createSessionStore();
  plans.edit('copy the option', copyOption('a'));
  keepBeside(plans, session);
  session.setState({ option: 'a', beside: 'b' });
});

const beside = () => session.getState().beside;

describe('the option drawn beside the board', () => {
  it('stays while other things change', () => {
    plans.edit('rename', (plan) => {
      plan.title = 'Another name';
    });
    session.setState({ view: 'plan', selection: { kind: 'seat', id: 'front-left' } });
    expect(beside()).toBe('b');
  });

  it('is let go when it is removed, also by undo', () => {
    plans.edit('remove', removeOption('b'));
    expect(beside()).toBeNull();
    session.setState({ beside: 'c' });
    plans.undo();
    expect(beside()).toBe('c');
    plans.undo();
    expect(beside()).toBeNull();
  });

  it('is let go when it comes on the board, by choice or because the other was removed', () => {
    session.setState({ option: 'b' });
    expect(beside()).toBeNull();
    // The copy stands next to what it was made from, so it takes its place.
    session.setState({ option: 'a', beside: 'c' });
    plans.edit('remove', removeOption('a'));
    expect(beside()).toBeNull();
  });

  it('changes places with the one on the board in one step', () => {
    session.setState({ option: 'b', beside: 'a' });
    expect(session.getState()).toMatchObject({ option: 'b', beside: 'a' });
  });

  it('is refused when the plan has no such option', () => {
    session.setState({ beside: 'nowhere' });
    expect(beside()).toBeNull();
  });

  it('is let go with the plan, also where the next one has an option of that id', () => {
    plans.open(demoPlan());
    expect(beside()).toBeNull();
  });
});
