/** The demo's story says only what the engine finds. */
import { describe, expect, test } from 'vitest';
import { evaluatePlan } from '../src/geometry';
import { demoPlan } from '../src/plan/demo';
import { readPlanData } from '../src/plan/schema';

function atDriver(option: 'a' | 'b') {
  const answer = evaluatePlan(demoPlan());
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  const result = answer.options.find(({ id }) => id === option);
  const seat = result?.seats.find(({ id }) => id === 'front-left');
  if (!seat) throw new Error('the demo has no front-left seat');
  const of = (speaker: string) => {
    const arrival = seat.arrivals.find((one) => one.speaker === speaker);
    if (!arrival) throw new Error(`the demo has no ${speaker}`);
    return arrival;
  };
  const mids = seat.pairs.find(({ pair }) => pair === 'midrange');
  return { left: of('midrange-left'), right: of('midrange-right'), difference: mids?.difference };
}

describe('the demo', () => {
  test('is a plan the program itself would open without a word', () => {
    expect(readPlanData(JSON.parse(JSON.stringify(demoPlan())))).toMatchObject({
      ok: true,
      warnings: [],
    });
  });

  test('has two options of three pairs that differ by their mids alone', () => {
    const [a, b] = demoPlan().options;
    for (const option of [a, b])
      expect(new Set(option?.speakers.map(({ pair }) => pair)).size).toBe(3);
    const others = (option: typeof a) => option?.speakers.filter(({ role }) => role !== 'midrange');
    expect(others(a)).toEqual(others(b));
    expect(a).not.toEqual(b);
  });

  test('“the left one is about 430 mm nearer”, “that falls to about 300 mm”', () => {
    expect(demoPlan().story).toMatch(/about 430 mm nearer.*falls to about 300 mm/);
    expect(Math.abs((atDriver('a').difference ?? 0) + 430)).toBeLessThanOrEqual(15);
    expect(Math.abs((atDriver('b').difference ?? 0) + 300)).toBeLessThanOrEqual(15);
  });

  test('“nothing stands between them and the driver, who sits within 25° of their axis”', () => {
    expect(demoPlan().story).toContain(
      'nothing stands between them and the driver, who sits within 25° of their axis',
    );
    const { left, right } = atDriver('a');
    for (const arrival of [left, right]) {
      expect(arrival.blockedBy).toEqual([]);
      expect(arrival.path).toBe(arrival.direct);
      expect(arrival.offAxisDeg).toBeLessThanOrEqual(25);
    }
  });

  test('“both look well past the driver, and the legs … stand before both”', () => {
    expect(demoPlan().story).toContain(
      'both look well past the driver, and the legs of the people in front stand before both',
    );
    const { left, right } = atDriver('b');
    for (const { offAxisDeg, blockedBy } of [left, right]) {
      expect(offAxisDeg).toBeGreaterThan(30);
      expect(blockedBy.join()).toMatch(/occupant-front-(left|right)-(left|right)-(thigh|shin)/);
    }
  });
});
