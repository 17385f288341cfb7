import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SignalChannel, type SignalSettings, testSignal } from '../../../src/geometry';
import { fourierInPlace } from '../../../src/geometry/measure/fourier';
import { peakNear } from '../../../src/geometry/measure/windowed-sinc';

const RATE = 8000;
const CHANNELS: SignalChannel[] = [
  { id: 'low', bandHz: [40, 200], delay: 0 },
  { id: 'mid', bandHz: [200, 1600], delay: 1.3 },
  { id: 'high', bandHz: [1600, 3600], delay: 2.45 },
];
const signal = (change: Partial<SignalSettings> = {}, channels = CHANNELS) =>
  testSignal(channels, {
    kind: 'click',
    order: 'in-turn',
    sampleRateHz: RATE,
    withDelays: false,
    times: 1,
    ...change,
  });
const TWELVE_DOWN = 10 ** (-12 / 20);
/** Where a channel is not silent. */
const sounding = (samples: Float32Array) => [...samples.entries()].filter(([, x]) => x !== 0);
const most = (samples: Float32Array) => samples.reduce((high, x) => Math.max(high, Math.abs(x)), 0);

describe('clicks', () => {
  test('come one channel each second, a single sample at −12 dB and silence about it', () => {
    const { channels, peak } = signal({ times: 2 });
    expect(peak).toBe(TWELVE_DOWN);
    for (const [c, { samples }] of channels.entries()) {
      expect(samples).toHaveLength(6 * RATE);
      expect(sounding(samples).map(([i]) => i)).toEqual(
        [0, 3].map((second) => (second + c) * RATE + RATE / 2),
      );
      expect(most(samples)).toBe(Math.fround(TWELVE_DOWN));
    }
  });

  test('together come from all channels every second, on the same sample', () => {
    const { channels } = signal({ order: 'together', times: 3 });
    for (const { samples } of channels)
      expect(sounding(samples).map(([i]) => i)).toEqual([0, 1, 2].map((n) => n * RATE + RATE / 2));
  });

  test('with the tune’s delays are late by them, fractions of a sample too', () => {
    const { channels } = signal({ order: 'together', withDelays: true });
    for (const [c, late] of [0, 1.3 * 8, 2.45 * 8].entries()) {
      const samples = channels[c]?.samples ?? new Float32Array();
      const { position, value } = peakNear(samples, Math.round(RATE / 2 + late));
      expect(Math.abs(position - RATE / 2 - late)).toBeLessThan(0.02);
      expect(Math.abs(value / TWELVE_DOWN - 1)).toBeLessThan(0.05);
    }
  });
});

describe('bursts', () => {
  test('are in the middle of each channel’s band, highest in the middle of their second', () => {
    const { channels, silent } = signal({ kind: 'burst', order: 'together' });
    expect(silent).toEqual([]);
    for (const [c, hz] of [Math.sqrt(40 * 200), Math.sqrt(200 * 1600), 2400].entries()) {
      const { samples, burst } = channels[c] as (typeof channels)[number];
      expect(Math.abs((burst?.frequencyHz ?? 0) - hz)).toBeLessThan(1e-9);
      expect(samples[RATE / 2]).toBe(Math.fround(TWELVE_DOWN));
      expect(most(samples)).toBe(Math.fround(TWELVE_DOWN));
      const length = sounding(samples).length;
      expect(Math.abs(length - ((burst?.cycles ?? 0) * RATE) / hz)).toBeLessThan(3);
    }
  });

  test('keep more than 999 parts in 1000 of their energy inside the band', () => {
    const { channels } = signal({ kind: 'burst', order: 'together' });
    for (const [c, { samples }] of channels.entries()) {
      const [low, high] = CHANNELS[c]?.bandHz ?? [0, 0];
      const re = new Float64Array(8192);
      re.set(samples);
      const im = new Float64Array(8192);
      fourierInPlace(re, im);
      let [inside, all] = [0, 0];
      for (let k = 0; k < 4096; k++) {
        const energy = (re[k] as number) ** 2 + (im[k] as number) ** 2;
        const hz = (k * RATE) / 8192;
        all += energy;
        if (hz >= low && hz <= high) inside += energy;
      }
      expect(inside / all).toBeGreaterThan(0.999);
    }
  });

  test('with the tune’s delays are the same burst, later by exactly that', () => {
    const at = (withDelays: boolean) =>
      signal({ kind: 'burst', order: 'together', withDelays }, [
        { id: 'mid', bandHz: [200, 1600], delay: 2 },
      ]).channels[0]?.samples ?? new Float32Array();
    // 2 ms are 16 samples.
    const [plain, late] = [at(false), at(true)];
    for (let i = 16; i < RATE; i++)
      expect(Math.abs((late[i] as number) - (plain[i - 16] as number))).toBeLessThan(1e-7);
  });

  test('a channel without a band, or with one out of reach, stays silent and says why', () => {
    const { channels, silent } = signal({ kind: 'burst' }, [
      { id: 'none' },
      { id: 'beyond', bandHz: [6000, 9000] },
      { id: 'quake', bandHz: [1, 8] },
      { id: 'fine', bandHz: [100, 400] },
    ]);
    expect(silent.map(({ id }) => id)).toEqual(['none', 'beyond', 'quake']);
    expect(silent.map(({ why }) => why).join()).toMatch(/not given.*above what 8000.*too low/);
    expect(channels.map(({ samples }) => most(samples) > 0)).toEqual([false, false, false, true]);
  });
});

describe('any set of channels', () => {
  const channel = fc.record({
    id: fc.string(),
    bandHz: fc
      .tuple(
        fc.double({ min: 10, max: 3000, noNaN: true }),
        fc.double({ min: 1.2, max: 20, noNaN: true }),
      )
      .map(([low, times]) => [low, low * times] as const),
    delay: fc.double({ min: 0, max: 150, noNaN: true }),
  });
  test('never clips, even where all are added up, and is the same on every run', () => {
    fc.assert(
      fc.property(
        fc.array(channel, { minLength: 1, maxLength: 14 }),
        fc.constantFrom('click' as const, 'burst' as const),
        fc.boolean(),
        (channels, kind, withDelays) => {
          const settings = { kind, order: 'together' as const, withDelays };
          const made = signal(settings, channels);
          const sum = new Float64Array(RATE);
          for (const { samples } of made.channels) {
            expect(most(samples)).toBeLessThanOrEqual(TWELVE_DOWN * (1 + 1e-7));
            for (const [i, x] of samples.entries()) sum[i] = (sum[i] as number) + x;
          }
          expect(sum.every((x) => Math.abs(x) <= 1 + 1e-6)).toBe(true);
          expect(signal(settings, channels)).toEqual(made);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('delays, rates and times that cannot be are the caller’s mistake', () => {
    expect(() => signal({}, [{ id: 'a', delay: -1 }])).toThrow('0 to 150 ms for "a", got -1');
    expect(() => signal({}, [{ id: 'a', delay: 151 }])).toThrow('got 151');
    expect(() => signal({ sampleRateHz: 44100.5 })).toThrow('got 44100.5');
    expect(() => signal({ times: 0 })).toThrow('got 0');
    expect(signal({}, []).channels).toEqual([]);
  });
});
