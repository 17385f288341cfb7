import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrivalReadings, type ComparedArrival, compareArrivals } from '../../../src/geometry';
import { normalFrom, seeded } from './synthetic';

/** Channels a, b, c …: predicted and measured, ms. */
const channels = (
  pairs: readonly (readonly [predicted: number, measured: number])[],
  change: Partial<ComparedArrival> = {},
): ComparedArrival[] =>
  pairs.map(([predictedMs, measuredMs], i) => ({
    id: 'abcdefghijklmnop'[i] as string,
    predictedMs,
    measuredMs,
    measuredSdMs: 0.003,
    predictedSdMs: 0.004,
    ...change,
  }));

const near = (a: number, b: number, by = 1e-9) => expect(Math.abs(a - b)).toBeLessThan(by);

describe('measured arrivals against predicted ones', () => {
  test('by hand: the loop is taken off, and what is left is told channel by channel', () => {
    // Offsets 10.00, 10.01, 9.99, 10.004: median 10.002, all inside; their mean is 10.001.
    const all = compareArrivals(
      channels([
        [3, 13],
        [4, 14.01],
        [5, 14.99],
        [2, 12.004],
      ]),
    );
    near(all.offsetMs, 10.001);
    near(all.offsetSdMs, 0.005 / 2);
    for (const [i, ms] of [-0.001, 0.009, -0.011, 0.003].entries()) {
      near(all.channels[i]?.differenceMs ?? 9, ms);
      near(all.channels[i]?.sdMs ?? 9, 0.005);
    }
    // Twice 0.005: the third is beyond what was to be expected, and yet no blunder.
    expect(all.channels.map(({ within }) => within)).toEqual([true, true, false, true]);
    expect(all).toMatchObject({ agrees: false, outliers: [], tooFew: null });
    near(all.rmsMs, Math.sqrt((1 + 81 + 121 + 9) / 4) / 1000);
  });

  test('by hand: a channel far off is named and moves nothing', () => {
    const all = compareArrivals(
      channels([
        [3, 13],
        [4, 14.002],
        [5, 17.5],
        [2, 11.998],
      ]),
    );
    expect(all.outliers).toEqual(['c']);
    near(all.offsetMs, 10);
    near(all.channels[2]?.differenceMs ?? 9, 2.5);
    expect(all.channels.map(({ within }) => within)).toEqual([true, true, false, true]);
    expect(all.agrees).toBe(false);
  });

  test('of several outliers the farthest is named first', () => {
    const off = [0, 0.1, 0, -0.2, 0, 0.001, 0];
    const all = compareArrivals(channels(off.map((ms) => [1, 1 + ms])));
    expect(all.outliers).toEqual(['d', 'b']);
  });

  test('a channel measured better counts more for the loop', () => {
    const [a, b, c] = channels([
      [1, 1],
      [1, 1.004],
      [1, 1.004],
    ]);
    const sharp = { ...(a as ComparedArrival), measuredSdMs: 0, predictedSdMs: 0.0025 };
    // Weights 4 : 1 : 1.
    near(compareArrivals([sharp, b, c] as ComparedArrival[]).offsetMs, 0.008 / 6);
  });

  test('what the processor adds is no error', () => {
    const delayed = channels([
      [3, 13],
      [4, 14],
      [5, 15],
    ]).map((one, i) => ({ ...one, measuredMs: one.measuredMs + i, delayMs: i }));
    const all = compareArrivals(delayed);
    expect(all.agrees).toBe(true);
    near(all.rmsMs, 0);
  });

  test('where all scatter far beyond what was claimed, none is singled out, and none agrees by luck', () => {
    const off = [-0.1, 0.08, 0.11, -0.07, 0.12, -0.09];
    const all = compareArrivals(channels(off.map((ms) => [1, 1 + ms])));
    expect(all.outliers).toEqual([]);
    expect(all.channels.every(({ within }) => !within)).toBe(true);
  });

  test('of one or two channels it is said what they cannot show', () => {
    const one = compareArrivals(channels([[3, 13]]));
    expect(one).toMatchObject({ agrees: true, outliers: [] });
    expect(one.tooFew).toMatch(/^a single channel/);
    const two = compareArrivals(
      channels([
        [3, 13],
        [3, 14],
      ]),
    );
    expect(two.tooFew).toMatch(/^of two channels/);
    expect(two.outliers).toEqual([]);
    expect(two.agrees).toBe(false);
    near(two.channels[0]?.differenceMs ?? 9, -0.5);
  });

  test('missing numbers and uncertainties are the caller’s mistake', () => {
    const some = channels([[1, 1]]);
    expect(() => compareArrivals([])).toThrow('a channel at least');
    expect(() => compareArrivals([...some, ...some])).toThrow('"a" is given twice');
    expect(() => compareArrivals(channels([[1, Number.NaN]]))).toThrow('"a" has NaN ms measured');
    expect(() =>
      compareArrivals(channels([[1, 1]], { measuredSdMs: 0, predictedSdMs: 0 })),
    ).toThrow('an uncertainty above 0 for "a", got 0 and 0 ms');
  });

  const time = fc.double({ min: 0, max: 20, noNaN: true });
  const some = fc
    .array(fc.tuple(time, fc.double({ min: -0.2, max: 0.2, noNaN: true })), {
      minLength: 1,
      maxLength: 12,
    })
    .map((pairs) => channels(pairs.map(([predicted, off]) => [predicted, predicted + off])));

  test('a longer loop changes the loop and nothing else', () => {
    fc.assert(
      fc.property(some, fc.double({ min: -50, max: 50, noNaN: true }), (all, loop) => {
        const plain = compareArrivals(all);
        const later = compareArrivals(
          all.map((one) => ({ ...one, measuredMs: one.measuredMs + loop })),
        );
        near(later.offsetMs - loop, plain.offsetMs);
        for (const [i, one] of plain.channels.entries())
          near(later.channels[i]?.differenceMs ?? 99, one.differenceMs);
        expect(later.outliers).toEqual(plain.outliers);
      }),
      { numRuns: 100 },
    );
  });

  test('the order of the channels changes only their order', () => {
    fc.assert(
      fc.property(some, fc.integer(), (all, seed) => {
        const random = seeded(seed);
        const shuffled = all
          .map((one) => ({ one, by: random() }))
          .sort((a, b) => a.by - b.by)
          .map(({ one }) => one);
        const [a, b] = [compareArrivals(all), compareArrivals(shuffled)];
        near(a.offsetMs, b.offsetMs);
        expect(new Set(a.outliers)).toEqual(new Set(b.outliers));
        for (const one of a.channels)
          near(b.channels.find(({ id }) => id === one.id)?.differenceMs ?? 99, one.differenceMs);
      }),
      { numRuns: 100 },
    );
  });

  test('of 2,000 honest channels some 95 in 100 are within, and hardly one is an outlier', () => {
    const normal = normalFrom(seeded(20_260_802));
    let [within, outliers] = [0, 0];
    for (let run = 0; run < 200; run++) {
      const all = compareArrivals(
        channels(Array.from({ length: 10 }, (_, i) => [i, 7 + i + 0.005 * normal()])),
      );
      within += all.channels.filter((one) => one.within).length;
      outliers += all.outliers.length;
    }
    expect(within / 2000).toBeGreaterThan(0.94);
    // Taking the loop from the same channels makes them fit a little better than strangers.
    expect(within / 2000).toBeLessThan(0.98);
    expect(outliers).toBeLessThan(10);
  });
});

describe('accepted differences as readings', () => {
  const speedOfSound = 343.2;
  const comparison = compareArrivals(
    channels([
      [3, 13],
      [4, 14.006],
      [5, 15.5],
      [2, 11.994],
    ]),
  );
  const source = {
    seat: 'front-left',
    speedOfSound,
    channels: ['a', 'b', 'c', 'd'].map((id, i) => ({ id, path: 1000 + i, measuredSdMs: 0.003 })),
  };

  test('are paths in mm, with what they are uncertain by; outliers stay out', () => {
    const readings = arrivalReadings(comparison, source);
    expect(readings.map(({ speaker }) => speaker)).toEqual(['a', 'b', 'd']);
    const b = readings[1];
    near(b?.pathDifference ?? 0, 0.006 * speedOfSound, 1e-6);
    near(b?.path ?? 0, 1001 + 0.006 * speedOfSound, 1e-6);
    near(b?.sd ?? 0, Math.sqrt(0.003 ** 2 + 0.005 ** 2 / 3) * speedOfSound);
    expect(b?.seat).toBe('front-left');
  });

  test('are none of a single channel, whose difference the loop has swallowed', () => {
    const single = compareArrivals(channels([[3, 13.4]]));
    const [one] = single.channels;
    expect(one?.differenceMs).toBe(0);
    expect(arrivalReadings(single, source)).toEqual([]);
    expect(arrivalReadings(single, { ...source, accepted: ['a'] })).toEqual([]);
    const two = compareArrivals(
      channels([
        [3, 13],
        [4, 14.006],
      ]),
    );
    expect(arrivalReadings(two, source)).toHaveLength(2);
  });

  test('are those the user accepts, outliers too', () => {
    const readings = arrivalReadings(comparison, { ...source, accepted: ['c'] });
    expect(readings).toHaveLength(1);
    near(readings[0]?.pathDifference ?? 0, 0.5 * speedOfSound, 1e-6);
    expect(() => arrivalReadings(comparison, { ...source, accepted: ['z'] })).toThrow('"z"');
    expect(() => arrivalReadings(comparison, { ...source, speedOfSound: 0 })).toThrow('got 0');
  });
});
