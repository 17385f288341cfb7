import { afterEach, expect, test } from 'vitest';
import { prepare } from '../../../src/sheets/drawing/prepare';
import { preparing } from '../../../src/sheets/drawing/progress';
import { sessionStore } from '../../../src/store';
import { factsWith } from '../papers-facts';

afterEach(() => sessionStore.setState({ paper: null }));

test('drawings and measures are worked out in steps that are told, once for an answer', async () => {
  sessionStore.setState({ paper: 'customer' });
  const facts = factsWith('demo');
  const told: number[] = [];
  const stop = preparing.subscribe(({ steps }) => {
    if (steps) told.push(steps.done / steps.total);
  });
  const first = prepare(facts);
  expect(prepare(facts)).toBe(first);
  const { drawings, measured } = await first;
  stop();
  expect(Object.keys(drawings).sort()).toEqual(['above', 'behind', 'side']);
  expect(measured.map(({ option }) => option)).toEqual(facts.plan.options.map(({ id }) => id));
  expect(told.length).toBeGreaterThan(5);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(told.at(-1)).toBeLessThanOrEqual(1);
  expect(preparing.getState().steps).toBeNull();
});

test('going back to the board stops the work, and coming again begins it anew', async () => {
  const facts = factsWith(1);
  sessionStore.setState({ paper: null });
  await expect(prepare(facts)).rejects.toThrow('closed');
  sessionStore.setState({ paper: 'customer' });
  await expect(prepare(facts)).resolves.toHaveProperty('measured');
});
