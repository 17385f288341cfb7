import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  correlationDelay,
  type EdgeArrival,
  type EdgeSettings,
  edgeArrival,
  firstArrivals,
} from '../../../src/geometry';
import { bell, leadOf, response, type Shape, seeded, sinc } from './synthetic';

/** So that ms are samples. */
const RATE = 1000;
const arrival = (samples: ArrayLike<number>, settings?: EdgeSettings): EdgeArrival => {
  const found = edgeArrival({ samples, sampleRateHz: RATE }, settings);
  if ('problem' in found) throw new Error(found.problem);
  return found;
};

const SHAPES: [string, Shape][] = [
  ['as sharp as the sample rate holds', sinc],
  ['a sample to either side wide', bell(1)],
];
const RUNS = 100;

/** Delays of many fractions, drawn once. */
const random = seeded(20_260_801);
const DELAYS = Array.from({ length: RUNS }, () => 400 + 100 * random());

describe.each(SHAPES)('the first arrival of an impulse %s', (_, shape) => {
  test('without noise lies where its edge crosses −12 dB, to a fiftieth of a sample', () => {
    const lead = leadOf(shape, 10 ** (-12 / 20));
    for (const at of [400, 400.25, 400.5, 400.9]) {
      const found = arrival(response([{ shape, at }]));
      expect(Math.abs(found.ms - (at - lead))).toBeLessThan(0.02);
      expect(Math.abs(found.peakMs - at)).toBeLessThan(0.02);
      expect(found).toMatchObject({ inverted: false, raisedByNoise: false });
    }
  });

  test.each([40, 30, 20])(
    'at %i dB over the noise is found within half a sample (a soft one in 95 of 100 at 20 dB)',
    (snrDb) => {
      let misses = 0;
      for (const [i, at] of DELAYS.entries()) {
        const found = arrival(response([{ shape, at }], snrDb, 1000 + i));
        const lead = leadOf(shape, 10 ** (found.thresholdDb / 20));
        if (!(Math.abs(found.ms - (at - lead)) <= 0.5)) misses++;
      }
      // At 20 dB noise moves the softer edge by a sixth of a sample, as its standard deviation.
      expect(misses).toBeLessThanOrEqual(snrDb > 20 || shape === sinc ? 0 : 5);
    },
  );
});

describe('two channels alike but for level and poles', () => {
  test.each([40, 30, 20])(
    'at %i dB over the noise, their difference is found within half a sample, both ways, in 98 of 100 runs or more',
    (snrDb) => {
      const misses = { edge: 0, correlation: 0, poles: 0 };
      for (const [i, at] of DELAYS.entries()) {
        const other = DELAYS[(i + 37) % RUNS] as number;
        const channel = (id: string, samples: Float64Array) => ({
          id,
          response: { sampleRateHz: 48000, samples },
        });
        const [, found] = firstArrivals(
          [
            channel('one', response([{ shape: sinc, at }], snrDb, 2000 + i)),
            channel(
              'two',
              response([{ shape: sinc, at: other }], snrDb, 3000 + i).map((x) => -0.3 * x),
            ),
          ],
          { reference: 'one' },
        );
        const one = edgeArrival({
          sampleRateHz: 48000,
          samples: response([{ shape: sinc, at }], snrDb, 2000 + i),
        });
        const off = (ms: number | undefined) =>
          'ms' in one ? Math.abs(((ms ?? 99) - one.ms) * 48 - (other - at)) : 99;
        const { edge, correlation } = found ?? {};
        if (!(edge && 'ms' in edge && off(edge.ms) <= 0.5)) misses.edge++;
        if (!(correlation && 'ms' in correlation && off(correlation.ms) <= 0.5))
          misses.correlation++;
        if (!(correlation && 'ms' in correlation && correlation.inverted)) misses.poles++;
      }
      const most = snrDb > 20 ? 0 : 2;
      expect(misses.edge).toBeLessThanOrEqual(most);
      expect(misses.correlation).toBeLessThanOrEqual(most);
      expect(misses.poles).toBe(0);
    },
  );
});

describe('the peak after the edge', () => {
  test.each([40, 30, 20])(
    'of a sharp impulse at %i dB lies within half a sample of its delay',
    (snrDb) => {
      const misses = DELAYS.filter((at, i) => {
        const { peakMs } = arrival(response([{ shape: sinc, at }], snrDb, 4000 + i));
        return !(Math.abs(peakMs - at) <= 0.5);
      });
      expect(misses).toEqual([]);
    },
  );
});

describe('what the first arrival tells of itself', () => {
  test('a louder reflection later does not hide the direct sound', () => {
    const impulses = [
      { shape: sinc, at: 400.4, level: 0.4 },
      { shape: sinc, at: 460, level: 1 },
    ];
    const found = arrival(response(impulses, 50));
    expect(Math.abs(found.peakMs - 400.4)).toBeLessThan(0.1);
    // Unless the threshold is asked to be above it.
    expect(arrival(response(impulses, 50), { belowPeakDb: 6 }).peakMs).toBeGreaterThan(455);
  });

  test('the noise before it is told to a decibel or two', () => {
    for (const snrDb of [20, 40, 60]) {
      const { noiseDb } = arrival(response([{ shape: sinc, at: 600 }], snrDb, 5));
      expect(Math.abs((noiseDb ?? 0) + snrDb)).toBeLessThan(2);
    }
    expect(arrival(response([{ shape: sinc, at: 20.5 }])).noiseDb).toBeNull();
  });

  test('the threshold is raised above high noise, and that is said', () => {
    const found = arrival(response([{ shape: bell(3), at: 600 }], 20, 6));
    expect(found.raisedByNoise).toBe(true);
    expect(found.thresholdDb).toBeGreaterThan(-9);
    expect(found.thresholdDb).toBeLessThan(-4);
  });

  test('its standard deviation is that of many measurements', () => {
    const shape = bell(3);
    const errors: number[] = [];
    let told = 0;
    for (const [i, at] of DELAYS.entries()) {
      const found = arrival(response([{ shape, at }], 30, 6000 + i));
      errors.push(found.ms - at + leadOf(shape, 10 ** (found.thresholdDb / 20)));
      told += (found.sdMs ?? Number.NaN) / RUNS;
    }
    const sd = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / RUNS);
    expect(sd / told).toBeGreaterThan(0.75);
    expect(sd / told).toBeLessThan(1.33);
  });

  test('swapped poles are told', () => {
    expect(arrival(response([{ shape: sinc, at: 300.5, level: -1 }], 40)).inverted).toBe(true);
  });

  test('scaling changes nothing, and a later start moves it', () => {
    const samples = response([{ shape: sinc, at: 300.3 }], 30, 9);
    const { ms } = arrival(samples);
    expect(Math.abs(arrival(samples.map((x) => x * 1e-5)).ms - ms)).toBeLessThan(1e-6);
    const later = edgeArrival({ samples, sampleRateHz: 48000, startMs: -2 });
    expect('ms' in later && Math.abs(later.ms + 2 - ms / 48)).toBeLessThan(1e-9);
  });

  test.each([
    ['silence', new Float64Array(100), /silent/],
    ['nothing at all', new Float64Array(0), /silent/],
    [
      'noise alone',
      response([], 0, 11),
      /^nothing stands out of the noise: .* only \d+ dB above it/,
    ],
    [
      'sound from the first sample on',
      response([{ shape: bell(4), at: 0 }]),
      /^the response begins in the middle/,
    ],
  ])('%s has no arrival, and it is said why', (_, samples, why) => {
    const found = edgeArrival({ samples, sampleRateHz: RATE });
    expect('problem' in found && found.problem).toMatch(why);
  });

  test('no number, no rate and a threshold at the peak are the caller’s mistake', () => {
    expect(() => arrival([0, Number.NaN])).toThrow('sample 1 is NaN');
    expect(() => edgeArrival({ samples: [1], sampleRateHz: 0 })).toThrow('got 0');
    expect(() => arrival([0, 1], { belowPeakDb: 0 })).toThrow('got 0 and 14');
  });
});

describe('correlation', () => {
  test('of a sound with itself is 1, whatever its level, and 0 late', () => {
    const samples = response([{ shape: sinc, at: 300.3 }], 30, 12);
    for (const weighting of ['plain', 'phase'] as const) {
      const found = correlationDelay(
        samples,
        samples.map((x) => 7 * x),
        { sampleRateHz: RATE, weighting },
      );
      expect(Math.abs(found?.ms ?? 9)).toBeLessThan(1e-6);
      expect(Math.abs((found?.likeness ?? 0) - 1)).toBeLessThan(1e-9);
    }
  });

  test('counts late one way and early the other', () => {
    const pulse = (at: number, seed: number) => response([{ shape: bell(2), at }], 40, seed);
    fc.assert(
      fc.property(fc.double({ min: 100, max: 900, noNaN: true }), fc.nat(1000), (at, seed) => {
        const [a, b] = [pulse(500, seed), pulse(at, seed + 1)];
        const there = correlationDelay(a, b, { sampleRateHz: RATE })?.ms ?? 99;
        const back = correlationDelay(b, a, { sampleRateHz: RATE })?.ms ?? 99;
        expect(Math.abs(there - (at - 500))).toBeLessThan(0.1);
        expect(Math.abs(there + back)).toBeLessThan(1e-4);
      }),
      { numRuns: 20 },
    );
  });

  test('with every frequency counted alike is as sharp as the rate allows', () => {
    const [a, b] = [250.2, 333.7].map((at, i) => response([{ shape: sinc, at }], 30, 20 + i));
    const found = correlationDelay(a ?? [], b ?? [], { sampleRateHz: RATE, weighting: 'phase' });
    expect(Math.abs((found?.ms ?? 0) - 83.5)).toBeLessThan(0.1);
  });

  test('looks only at the band it is given', () => {
    // A hum of 50 Hz has six times the impulses' energy, and would decide it otherwise.
    const hummed = (at: number) =>
      response([{ shape: sinc, at }]).map((x, i) => x + 0.1 * Math.sin(0.1 * Math.PI * i));
    const [a, b] = [hummed(300.2), hummed(341.9)];
    const whole = correlationDelay(a, b, { sampleRateHz: RATE });
    const band = correlationDelay(a, b, { sampleRateHz: RATE, bandHz: [100, 450] });
    expect(Math.abs((whole?.ms ?? 0) - 41.7)).toBeGreaterThan(1);
    expect(Math.abs((band?.ms ?? 0) - 41.7)).toBeLessThan(0.5);
  });

  test('with silence there is none', () => {
    expect(correlationDelay(new Float64Array(8), [1, 0], { sampleRateHz: RATE })).toBeNull();
  });
});

describe('channels of one set-up', () => {
  const RATE_HZ = 48000;
  const channel = (id: string, shape: Shape, at: number, snrDb: number, seed: number) => ({
    id,
    response: { sampleRateHz: RATE_HZ, samples: response([{ shape, at }], snrDb, seed) },
  });

  test('alike are timed by edge and by correlation, and both agree', () => {
    const found = firstArrivals([
      channel('left', sinc, 400.3, 40, 31),
      channel('right', sinc, 437.8, 45, 32),
      channel('centre', sinc, 419.1, 30, 33),
    ]);
    // The quietest one serves as the reference.
    expect(
      found.map(
        ({ correlation }) => correlation && 'against' in correlation && correlation.against,
      ),
    ).toEqual(['right', null, 'right']);
    for (const [i, at] of [400.3, 437.8, 419.1].entries()) {
      const one = found[i];
      if (!one || 'problem' in one.edge) throw new Error('no edge');
      expect(Math.abs(one.edge.peakMs * 48 - at)).toBeLessThan(0.2);
      if (one.correlation && 'ms' in one.correlation) {
        const { edge } = found[1] as { edge: EdgeArrival };
        expect(Math.abs((one.correlation.ms - edge.ms) * 48 - (at - 437.8))).toBeLessThan(0.2);
        expect(one.agree).toBe(true);
        expect(one.correlation.likeness).toBeGreaterThan(0.7);
      }
    }
  });

  test('where edge and correlation disagree, it is told by how much', () => {
    // A broad impulse crosses its threshold long before its middle, a sharp one just before it.
    const [, broad] = firstArrivals(
      [channel('sharp', bell(2), 400, 60, 41), channel('broad', bell(7), 400, 60, 42)],
      { reference: 'sharp' },
    );
    expect(broad?.agree).toBe(false);
    // 5 · √(2 ln 10^(12/20)) samples between the edges, none between the middles.
    const samples = 5 * Math.sqrt(2 * Math.log(10 ** 0.6));
    expect(Math.abs((broad?.disagreementMs ?? 0) * 48 - samples)).toBeLessThan(0.5);
  });

  test('with nothing in common the correlation says nothing', () => {
    const tone =
      (cycles: number): Shape =>
      (t) =>
        bell(12)(t) * Math.cos(2 * Math.PI * cycles * t);
    const [, other] = firstArrivals(
      [channel('low', tone(0.05), 400, 60, 51), channel('high', tone(0.3), 400, 60, 52)],
      { reference: 'low' },
    );
    expect(other?.agree).toBeNull();
  });

  test('a silent channel is told, the others are timed all the same', () => {
    const silent = {
      id: 'off',
      response: { sampleRateHz: RATE_HZ, samples: new Float64Array(900) },
    };
    const found = firstArrivals([silent, channel('left', sinc, 400, 40, 61)]);
    expect(found[0]).toMatchObject({ edge: { problem: 'the response is silent' }, agree: null });
    expect(found[1]?.edge).toHaveProperty('ms');
    expect(firstArrivals([])).toEqual([]);
    expect(() => firstArrivals([silent], { reference: 'none' })).toThrow('no channel "none"');
    const other = { id: 'b', response: { sampleRateHz: 44100, samples: [1] } };
    expect(() => firstArrivals([silent, other])).toThrow(
      '"b" has 44100 Hz where the first has 48000',
    );
  });
});
