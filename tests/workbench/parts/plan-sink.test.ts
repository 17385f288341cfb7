import { beforeEach, describe, expect, test } from 'vitest';
import { setAir } from '../../../src/plan/edits';
import { planStore } from '../../../src/store';
import { planSink } from '../../../src/workbench/parts/plan-sink';

const LABEL = 'change the temperature';
// A field draws anew with every number, and each time gets a new sink.
const sink = () => planSink(LABEL, (temperatureC) => setAir({ temperatureC }));
const temperature = () => planStore.getState().plan.air.temperatureC;
const steps = () => planStore.getState().past.map(({ label }) => label);

describe('a number sent to the plan', () => {
  beforeEach(() => {
    const { plan } = planStore.getState();
    planStore.open({ ...plan, air: { ...plan.air, temperatureC: 20 } });
  });

  test('typed, it is one undo step', () => {
    sink().commit(25);
    expect(temperature()).toBe(25);
    expect(steps()).toEqual([LABEL]);
    planStore.undo();
    expect(temperature()).toBe(20);
  });

  test('held on an arrow key, it is one undo step however far it went', () => {
    for (const value of [21, 22, 23]) sink().nudge?.(value);
    expect(planStore.shown().air.temperatureC).toBe(23);
    expect(temperature()).toBe(20);
    sink().settle?.(true);
    expect(temperature()).toBe(23);
    expect(steps()).toEqual([LABEL]);
  });

  test('given up, it leaves no trace', () => {
    sink().nudge?.(21);
    sink().settle?.(false);
    expect(temperature()).toBe(20);
    expect(steps()).toEqual([]);
  });

  test('it never ends a drag that is not its own', () => {
    planStore.beginGesture('move left tweeter');
    sink().settle?.(true);
    expect(planStore.getState().gesture?.label).toBe('move left tweeter');
    planStore.cancelGesture();
  });
});
