import { expect, test } from 'vitest';
import type { Vec3 } from '../../../../src/geometry';
import type { SpotStart } from '../../../../src/geometry/paths/cast';
import { keepAnswers } from '../../../../src/geometry/paths/way-round/keep-answers';

test('the same line is answered once, whichever objects name it', () => {
  let asked = 0;
  const ask = keepAnswers(() => ++asked);
  const spot = (standoff: number): SpotStart => ({ panel: 'pillar', standoff, normal: [0, 0, 1] });
  const at = (x: number): Vec3 => [x, 2, 3];
  expect(ask(at(1), at(9), 'seat', spot(5), 0)).toBe(1);
  expect(ask(at(1), at(9), 'seat', spot(5), 0)).toBe(1);
  // Anything that tells it apart is another question.
  expect(ask(at(1), at(9), 'seat', spot(6), 0)).toBe(2);
  expect(ask(at(1), at(9), 'seat', null, 0)).toBe(3);
  expect(ask(at(1), at(9), 'other', spot(5), 0)).toBe(4);
  expect(ask(at(1), at(9), 'seat', spot(5), 343)).toBe(5);
  expect(ask(at(9), at(1), 'seat', spot(5), 0)).toBe(6);
});

test('a line asked about over and over is not forgotten among thousands of others', () => {
  let asked = 0;
  const ask = keepAnswers((from) => {
    asked += 1;
    return from[0];
  });
  const still: Vec3 = [-1, 0, 0];
  for (let x = 0; x < 5000; x++) {
    expect(ask([x, 0, 0], [0, 5, 0], null, null, 0)).toBe(x);
    expect(ask(still, [0, 5, 0], null, null, 0)).toBe(-1);
  }
  expect(asked).toBe(5001);
});
