import { expect, test } from 'vitest';
import { fitOf } from '../../../src/geometry';
import { stagesOf } from '../compare/boards';
import { carPlan, onRings, searched, taken } from './stages';

test('a pair on wide rings is feasible exactly where the fit says that both stand free', () => {
  const plan = onRings(carPlan(), 160);
  const { all = [] } = searched(plan, {
    option: 'a',
    pair: 'midrange',
    panels: ['dash-top-center', 'dash-face-center', 'dash-top-left'],
    step: 45,
    seats: [{ id: 'front-left', weight: 1 }],
    require: { fits: true },
    all: true,
  });
  const count = { free: 0, byRings: 0, otherwise: 0 };
  for (const spot of all) {
    const [stage] = stagesOf(taken(plan, 'midrange', spot));
    if (!stage) throw new Error('no answer');
    const subject = { ...stage, placed: stage.result.placed };
    const said = ['midrange-left', 'midrange-right'].flatMap((id) => fitOf(subject, id));
    expect(spot.feasible, JSON.stringify(said)).toBe(said.length === 0);
    if (said.length === 0) count.free += 1;
    else if (said.every(({ sentence }) => /ring/.test(sentence) && /midrange/.test(sentence)))
      count.byRings += 1;
    else count.otherwise += 1;
  }
  expect(count.free).toBeGreaterThan(5);
  expect(count.byRings).toBeGreaterThan(2);
  expect(count.otherwise).toBeGreaterThan(5);
});
