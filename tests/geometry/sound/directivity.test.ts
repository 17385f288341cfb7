import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beamingFrequencyHz,
  halfPowerFrequencyHz,
  listeningWindowDb,
  pistonDirectivity,
  pistonDirectivityDb,
} from '../../../src/geometry/sound/directivity';
import { LEVEL_FLOOR_DB } from '../../../src/geometry/tolerance';
import { real } from '../arbitraries';

const SPEED = 343.2;
const diaphragm = real(10, 400);
const frequency = real(20, 20000);
const angle = real(0, 180);

describe('a speaker as a piston', () => {
  test('is never louder than on its axis, and always has a finite level', () => {
    fc.assert(
      fc.property(diaphragm, frequency, angle, (d, f, a) => {
        const db = pistonDirectivityDb(d, f, a, SPEED);
        expect(db).toBeLessThanOrEqual(1e-12);
        expect(db).toBeGreaterThanOrEqual(LEVEL_FLOOR_DB);
      }),
    );
  });

  test('is alike on both sides, and behind the baffle as at 90°', () => {
    fc.assert(
      fc.property(diaphragm, frequency, angle, (d, f, a) => {
        expect(pistonDirectivity(d, f, -a, SPEED)).toBe(pistonDirectivity(d, f, a, SPEED));
        const side = pistonDirectivity(d, f, 90, SPEED);
        expect(pistonDirectivity(d, f, 90 + a / 2, SPEED)).toBe(side);
      }),
    );
  });

  test('depends on the diaphragm counted in wavelengths alone', () => {
    fc.assert(
      fc.property(diaphragm, frequency, angle, real(0.5, 2), (d, f, a, k) => {
        const scaled = pistonDirectivity(d * k, f / k, a, SPEED);
        expect(Math.abs(scaled - pistonDirectivity(d, f, a, SPEED))).toBeLessThan(1e-9);
      }),
    );
  });

  test('loses half its power at the half-power frequency, and less below it', () => {
    fc.assert(
      fc.property(diaphragm, real(1, 90), (d, a) => {
        const f = halfPowerFrequencyHz(d, a, SPEED) ?? Number.NaN;
        expect(Math.abs(pistonDirectivityDb(d, f, a, SPEED) + 3.0103)).toBeLessThan(1e-3);
        expect(pistonDirectivityDb(d, f * 0.9, a, SPEED)).toBeGreaterThan(-3);
        expect(f).toBeGreaterThanOrEqual(beamingFrequencyHz(d, SPEED) * (1 - 1e-12));
      }),
    );
  });

  test('never loses anything on its axis, so there is no frequency where it does', () => {
    expect(pistonDirectivity(130, 20000, 0, SPEED)).toBe(1);
    expect(halfPowerFrequencyHz(130, 0, SPEED)).toBe(null);
  });

  test('has a listening window between its level on the axis and the lowest of its angles', () => {
    fc.assert(
      fc.property(diaphragm, frequency, (d, f) => {
        const at = (a: number) => pistonDirectivityDb(d, f, a, SPEED);
        const levels = [0, 10, 20, 30].map(at);
        const mean = listeningWindowDb(at);
        expect(mean).toBeLessThanOrEqual(1e-9);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...levels) - 1e-9);
      }),
    );
  });
});
