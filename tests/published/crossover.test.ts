import { describe, expect, test } from 'vitest';
import {
  type Crossover,
  type CrossoverFamily,
  highPass,
  lowPass,
} from '../../src/geometry/sound/crossover';
import { crossoverAtSeat, crossoverSum, sumOfTwoDb } from '../../src/geometry/sound/crossover-sum';

const SPEED = 343.2;
const at = (family: CrossoverFamily, order: number, frequencyHz = 2000): Crossover => ({
  family,
  order,
  frequencyHz,
});
const db = ([re, im]: readonly [number, number]) => 10 * Math.log10(re * re + im * im);
/** Both speakers at the same level, the high one's path longer by `extra` mm. */
const together = (crossover: Crossover, extra = 0) => ({
  crossover,
  low: { path: 1000, delay: 0, levelDb: 0 },
  high: { path: 1000 + extra, delay: 0, levelDb: 0 },
  speed: SPEED,
});
const FREQUENCIES = [200, 700, 1400, 2000, 2500, 5000, 18000];

describe('Butterworth filters', () => {
  // Source: Butterworth (1930), |H|² = 1/(1 + w^2n); −3.01 dB at the corner, whatever the order.
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('of order %i: magnitude as in the textbook', (n) => {
    for (const f of FREQUENCIES) {
      const w = f / 2000;
      const low = -10 * Math.log10(1 + w ** (2 * n));
      const high = -10 * Math.log10(1 + w ** (-2 * n));
      expect(Math.abs(db(lowPass(at('butterworth', n), f)) - low)).toBeLessThan(1e-9);
      expect(Math.abs(db(highPass(at('butterworth', n), f)) - high)).toBeLessThan(1e-9);
    }
    expect(Math.abs(db(lowPass(at('butterworth', n), 2000)) + 3.0103)).toBeLessThan(1e-4);
  });

  // Source: SciPy 1.17.1, signal.butter(…, analog=True) and signal.freqs; corner 2 kHz, at 3 kHz.
  test.each([
    [1, 'low', 0.3076923077, -0.4615384615],
    [1, 'high', 0.6923076923, 0.4615384615],
    [2, 'low', -0.206185567, -0.3499085103],
    [2, 'high', 0.4639175258, 0.7872941481],
    [3, 'low', -0.2824716267, 0.0302648172],
    [3, 'high', 0.1021437579, 0.9533417402],
    [5, 'low', 0.0954817601, 0.0890458362],
    [5, 'high', -0.6761918185, 0.7250646158],
    [8, 'low', -0.0342357182, -0.018655834],
    [8, 'high', -0.8774240124, -0.4781286207],
  ] as const)('order %i %s-pass at 3 kHz agrees with a numeric library', (n, kind, re, im) => {
    const [a, b] = (kind === 'low' ? lowPass : highPass)(at('butterworth', n), 3000);
    expect(Math.abs(a - re)).toBeLessThan(1e-9);
    expect(Math.abs(b - im)).toBeLessThan(1e-9);
  });

  // Source: S. H. Linkwitz, J. Audio Eng. Soc. 24 (1976): odd orders add up flat, 90° apart; even
  // ones stand 3 dB above at the crossover.
  test.each([1, 3, 5, 7])('of odd order %i add up flat', (n) => {
    for (const f of FREQUENCIES)
      expect(Math.abs(crossoverSum(together(at('butterworth', n)), f).sumDb)).toBeLessThan(1e-9);
  });
  test.each([2, 4, 6, 8])('of even order %i add up to +3.01 dB at the crossover', (n) => {
    const { sumDb } = crossoverSum(together(at('butterworth', n)), 2000);
    expect(Math.abs(sumDb - 3.0103)).toBeLessThan(1e-4);
  });
});

// Source: S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", J. Audio Eng. Soc.
// 24 (1976): both halves −6.02 dB at the crossover, in phase at all frequencies, their sum flat.
describe('Linkwitz-Riley filters', () => {
  test.each([2, 4, 6, 8])('of order %i: −6.02 dB each, in phase, and a flat sum', (n) => {
    const pair = together(at('linkwitz-riley', n));
    const { lowDb, highDb } = crossoverSum(pair, 2000);
    expect(Math.abs(lowDb + 6.0206)).toBeLessThan(1e-4);
    expect(Math.abs(highDb + 6.0206)).toBeLessThan(1e-4);
    for (const f of FREQUENCIES) {
      const sum = crossoverSum(pair, f);
      expect(Math.abs(sum.sumDb)).toBeLessThan(1e-9);
      expect(Math.abs(sum.phaseDeg)).toBeLessThan(1e-6);
    }
  });

  test('of order 4 fall by 24 dB per octave', () => {
    const [one, two] = [64000, 128000].map((f) => db(lowPass(at('linkwitz-riley', 4), f)));
    expect(Math.abs((one ?? 0) - (two ?? 0) - 24.082)).toBeLessThan(0.001);
  });

  // By hand: at the crossover both are equal, so half a wavelength (85.8 mm at 2 kHz and 343.2 m/s)
  // cancels, a quarter leaves −3.01 dB, a sixth (60°) −1.25 dB of the ideal.
  test.each([
    [85.8 / 2, -3.0103],
    [85.8 / 3, -1.2494],
    [(85.8 * 2) / 3, -6.0206],
  ])('with the tweeter %f mm late the sum at the crossover is %f dB from ideal', (mm, loss) => {
    const { atCrossover } = crossoverAtSeat(together(at('linkwitz-riley', 4), mm));
    expect(Math.abs(atCrossover.deviationDb - loss)).toBeLessThan(1e-4);
  });
  test('with the tweeter half a wavelength late there is a null at the crossover', () => {
    const { nulls } = crossoverAtSeat(together(at('linkwitz-riley', 4), 85.8));
    expect(nulls.map((dip) => Math.round(dip.frequencyHz))).toEqual([2000]);
    expect(nulls[0]?.deviationDb).toBeLessThan(-60);
  });
});

// Source: superposition, 20 lg|2cos(φ/2)|, e.g. Kinsler et al., Fundamentals of Acoustics.
describe('two equal signals', () => {
  test.each([
    [0, 6.021],
    [90, 3.01],
    [120, 0],
    [150, -5.719],
  ])('%f° apart make %f dB', (phase, level) => {
    expect(Math.abs(sumOfTwoDb(0, 0, phase) - level)).toBeLessThan(0.0006);
  });
  test('180° apart they cancel, down to the lowest level told', () => {
    expect(sumOfTwoDb(0, 0, 180)).toBe(-100);
  });
});
