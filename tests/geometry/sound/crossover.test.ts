import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Crossover,
  crossoverProblem,
  highPass,
  lowPass,
  usuallyInverted,
} from '../../../src/geometry/sound/crossover';
import {
  type CrossedPair,
  crossoverAtSeat,
  crossoverSum,
  lateness,
  NULL_DEPTH_DB,
} from '../../../src/geometry/sound/crossover-sum';
import { real } from '../arbitraries';

const SPEED = 343.2;
const crossover: fc.Arbitrary<Crossover> = fc.oneof(
  fc.record({
    family: fc.constant('butterworth' as const),
    order: fc.integer({ min: 1, max: 8 }),
    frequencyHz: real(50, 8000),
  }),
  fc.record({
    family: fc.constant('linkwitz-riley' as const),
    order: fc.constantFrom(2, 4, 6, 8),
    frequencyHz: real(50, 8000),
  }),
);
const speaker = fc.record({
  path: real(200, 2500),
  delay: real(0, 5),
  levelDb: real(-20, 3),
});
const pair: fc.Arbitrary<CrossedPair> = fc.record({
  crossover,
  low: speaker,
  high: speaker,
  speed: fc.constant(SPEED),
});

describe('a crossover', () => {
  test('is refused in a sentence when its order or frequency makes no sense', () => {
    const fine: Crossover = { family: 'linkwitz-riley', order: 4, frequencyHz: 3200 };
    expect(crossoverProblem(fine)).toBe(null);
    expect(crossoverProblem({ ...fine, order: 3 })).toContain('its order is even, got 3');
    expect(crossoverProblem({ ...fine, order: 9 })).toContain('from 1 to 8, got 9');
    expect(crossoverProblem({ ...fine, order: 2.5 })).toContain('got 2.5');
    expect(crossoverProblem({ ...fine, frequencyHz: 0 })).toContain('above 0 Hz, got 0');
    expect(crossoverProblem({ ...fine, frequencyHz: Number.NaN })).toContain('got NaN');
    expect(crossoverProblem({ ...fine, family: 'x' as never })).toContain('got "x"');
    expect(() => lowPass({ ...fine, order: 3 }, 1000)).toThrow('lowPass: a Linkwitz-Riley');
    expect(() => highPass(fine, 0)).toThrow('expected f > 0 Hz, got 0');
  });

  test('swaps the poles of the upper speaker at orders 2 and 6 only', () => {
    const swapped = [1, 2, 3, 4, 5, 6, 7, 8].filter((order) =>
      usuallyInverted({ family: 'butterworth', order, frequencyHz: 1000 }),
    );
    expect(swapped).toEqual([2, 6]);
  });

  test('keeps both halves 90° apart for each order, at every frequency', () => {
    fc.assert(
      fc.property(crossover, real(0.05, 20), (c, w) => {
        const l = lowPass(c, c.frequencyHz * w);
        const h = highPass(c, c.frequencyHz * w);
        const turn = (Math.atan2(h[1], h[0]) - Math.atan2(l[1], l[0])) / (Math.PI / 2) - c.order;
        // A whole number of full turns.
        expect(Math.abs(turn / 4 - Math.round(turn / 4))).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('two speakers at a seat', () => {
  test('in time and with the usual poles make the ideal sum', () => {
    fc.assert(
      fc.property(pair, real(0.1, 10), (p, w) => {
        // The path that is longer gets no delay, the other the difference.
        const gap = (p.high.path - p.low.path) / SPEED;
        const aligned: CrossedPair = {
          ...p,
          low: { ...p.low, delay: Math.max(0, gap) },
          high: { ...p.high, delay: Math.max(0, -gap) },
        };
        expect(Math.abs(lateness(aligned))).toBeLessThan(1e-9);
        const sum = crossoverSum(aligned, p.crossover.frequencyHz * w);
        expect(Math.abs(sum.deviationDb)).toBeLessThan(1e-6);
      }),
    );
  });

  test('are never louder than both in phase, nor quieter than their difference', () => {
    fc.assert(
      fc.property(pair, real(0.1, 10), (p, w) => {
        const { lowDb, highDb, sumDb } = crossoverSum(p, p.crossover.frequencyHz * w);
        const [a, b] = [10 ** (lowDb / 20), 10 ** (highDb / 20)];
        expect(10 ** (sumDb / 20)).toBeLessThanOrEqual(a + b + 2e-5);
        expect(10 ** (sumDb / 20)).toBeGreaterThanOrEqual(Math.abs(a - b) - 2e-5);
      }),
    );
  });

  test('sum alike wherever both stand, as long as one is as much later than the other', () => {
    fc.assert(
      fc.property(pair, real(0, 500), (p, more) => {
        const f = p.crossover.frequencyHz;
        const farther: CrossedPair = {
          ...p,
          low: { ...p.low, path: p.low.path + more },
          high: { ...p.high, path: p.high.path + more },
        };
        expect(Math.abs(lateness(farther) - lateness(p))).toBeLessThan(1e-9);
        const change = crossoverSum(farther, f).phaseDeg - crossoverSum(p, f).phaseDeg;
        expect(Math.abs(change - 360 * Math.round(change / 360))).toBeLessThan(1e-4);
      }),
    );
  });

  test('swapping the poles of both changes nothing, of one turns a Linkwitz-Riley sum into a null', () => {
    const lr4: Crossover = { family: 'linkwitz-riley', order: 4, frequencyHz: 3200 };
    const one = { path: 900, delay: 0, levelDb: 0 };
    const p: CrossedPair = { crossover: lr4, low: one, high: one, speed: SPEED };
    const both = { ...one, inverted: true };
    expect(crossoverSum({ ...p, low: both, high: both }, 2500)).toEqual(crossoverSum(p, 2500));
    const { nulls, atCrossover } = crossoverAtSeat({ ...p, high: both });
    expect(nulls.map((dip) => Math.round(dip.frequencyHz))).toEqual([3200]);
    expect(atCrossover.deviationDb).toBeLessThan(-60);
  });

  test('every null told lies in the range, deep enough, and lower than beside it', () => {
    fc.assert(
      fc.property(pair, (p) => {
        const { nulls, curve } = crossoverAtSeat(p);
        for (const { frequencyHz: f, deviationDb } of nulls) {
          expect(deviationDb).toBeLessThanOrEqual(NULL_DEPTH_DB);
          expect(f).toBeGreaterThan(p.crossover.frequencyHz / 4);
          expect(f).toBeLessThan(p.crossover.frequencyHz * 4);
          for (const beside of [f * 0.999, f * 1.001])
            expect(crossoverSum(p, beside).deviationDb).toBeGreaterThanOrEqual(deviationDb - 1e-6);
        }
        for (const point of curve) {
          expect(Number.isFinite(point.sumDb) && Number.isFinite(point.deviationDb)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('no null is missed, however far apart the times are', () => {
    const p: CrossedPair = {
      crossover: { family: 'butterworth', order: 1, frequencyHz: 2000 },
      low: { path: 1000, delay: 0, levelDb: 0 },
      high: { path: 1000, delay: 40, levelDb: 0 },
      speed: SPEED,
    };
    // One by one: every hertz that lies lower than both its neighbours, and deep enough.
    const at = (f: number) => crossoverSum(p, f).deviationDb;
    const expected: number[] = [];
    for (let f = 501; f < 8000; f++)
      if (at(f) < at(f - 1) && at(f) <= at(f + 1) && at(f) <= NULL_DEPTH_DB + 0.05)
        expected.push(f);
    const found = crossoverAtSeat(p).nulls.map((dip) => dip.frequencyHz);
    expect(expected.length).toBeGreaterThan(10);
    for (const f of expected) expect(found.some((one) => Math.abs(one - f) < 2)).toBe(true);
  });

  test('levels may depend on frequency, as directivity and obstruction do', () => {
    const lr4: Crossover = { family: 'linkwitz-riley', order: 4, frequencyHz: 2000 };
    const low = { path: 900, delay: 0, levelDb: (f: number) => (f > 1500 ? -200 : 0) };
    const high = { path: 1000, delay: 0, levelDb: 0 };
    const p: CrossedPair = { crossover: lr4, low, high, speed: SPEED };
    const { atCrossover } = crossoverAtSeat(p);
    expect(atCrossover.lowDb).toBe(-100);
    expect(Math.abs(atCrossover.sumDb + 6.0206)).toBeLessThan(1e-3);
    expect(Math.abs(atCrossover.deviationDb)).toBeLessThan(1e-3);
  });
});
