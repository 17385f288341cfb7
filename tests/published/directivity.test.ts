import { describe, expect, test } from 'vitest';
import { besselJ1 } from '../../src/geometry/sound/bessel';
import {
  beamingFrequencyHz,
  halfPowerFrequencyHz,
  listeningWindowDb,
  pistonDirectivity,
  pistonDirectivityDb,
} from '../../src/geometry/sound/directivity';

/** The speed at which the worked values were computed, mm/ms. */
const SPEED = 343.2;
/** A 100 mm diaphragm at this frequency has the given ka. */
const hertz = (ka: number) => (ka / 50 / (2 * Math.PI)) * SPEED * 1000;

describe('Bessel function J1', () => {
  // Source: Abramowitz & Stegun, Handbook of Mathematical Functions, table 9.1.
  test.each([
    [1, 0.4400505857],
    [2, 0.5767248078],
    [5, -0.3275791376],
    [10, 0.0434727462],
    [20, 0.0668331242],
  ])('J1(%f) is %f to all printed digits', (x, value) => {
    expect(Math.abs(besselJ1(x) - value)).toBeLessThan(6e-11);
    expect(besselJ1(-x)).toBe(-besselJ1(x));
  });

  // Source: mpmath 1.3.0, besselj(1, x) with 30 digits. 13.4 and 13.6 lie on either side of the
  // change from one formula to the other.
  test.each([
    [0.1, 0.04993752603624199],
    [0.5, 0.2422684576748739],
    [8, 0.2346363468539146],
    [13.4, 0.01659901986400923],
    [13.6, 0.05896455724873766],
    [30, -0.1187510626166229],
    [60, 0.04659838375816632],
  ])('J1(%f) agrees with a numeric library', (x, value) => {
    expect(Math.abs(besselJ1(x) - value)).toBeLessThan(2e-12);
  });

  // Source: Abramowitz & Stegun, table 9.5, zeros of J1.
  test.each([3.83170597, 7.01558667, 10.17346814, 13.32369194, 16.47063005])(
    'J1 is zero at %f',
    (x) => {
      expect(Math.abs(besselJ1(x))).toBeLessThan(2e-9);
    },
  );
});

describe('baffled circular piston', () => {
  // Source: Beranek & Mellow, Acoustics; Kinsler et al., Fundamentals of Acoustics: 2J1(x)/x has
  // −3.01 dB at 1.61634, −6.02 dB at 2.21509, its first null at 3.83171 and a first side lobe of
  // −17.57 dB at 5.1356. At 90° the argument is ka itself.
  test.each([
    [1.61634, -3.01, 0.005],
    [2.21509, -6.02, 0.005],
    [5.1356, -17.57, 0.005],
  ])('at an argument of %f it is %f dB', (x, db, within) => {
    expect(Math.abs(pistonDirectivityDb(100, hertz(x), 90, SPEED) - db)).toBeLessThan(within);
  });

  test('its first null is at 3.83171, with opposite signs on either side', () => {
    expect(Math.abs(pistonDirectivity(100, hertz(3.83171), 90, SPEED))).toBeLessThan(2e-6);
    expect(pistonDirectivity(100, hertz(3.8), 90, SPEED)).toBeGreaterThan(0);
    expect(pistonDirectivity(100, hertz(3.9), 90, SPEED)).toBeLessThan(0);
  });

  // Source: computed from the formula named above, to the digits given.
  test.each([
    [2, 15, -0.29],
    [2, 30, -1.11],
    [2, 45, -2.27],
    [2, 60, -3.49],
    [2, 90, -4.78],
    [5, 15, -1.89],
    [5, 30, -8.01],
    [5, 45, -23.19],
    [5, 60, -21.53],
    [5, 90, -17.65],
  ])('ka = %f at %f°: %f dB', (ka, angle, db) => {
    expect(Math.abs(pistonDirectivityDb(100, hertz(ka), angle, SPEED) - db)).toBeLessThan(0.0051);
  });

  // Source: the same; radius 65 mm, 2 kHz, 343.2 m/s.
  test.each([
    [30, -1.586],
    [45, -3.281],
  ])('a 130 mm diaphragm at 2 kHz loses at %f° %f dB', (angle, db) => {
    expect(Math.abs(pistonDirectivityDb(130, 2000, angle, SPEED) - db)).toBeLessThan(0.0006);
  });

  test('half power at 90° is where beaming begins: 7.06 kHz for 25 mm, 1.36 kHz for 130 mm', () => {
    expect(Math.abs(beamingFrequencyHz(25, SPEED) - 7063)).toBeLessThan(1);
    expect(Math.abs(beamingFrequencyHz(130, SPEED) - 1358)).toBeLessThan(1);
    expect(halfPowerFrequencyHz(130, 90, SPEED)).toBe(beamingFrequencyHz(130, SPEED));
  });
});

describe('listening window of ANSI/CTA-2034-A', () => {
  // By hand from the standard's nine directions: the axis, 10° four times, 20° and 30° twice.
  test('a speaker that is silent but at 10° keeps four ninths of its power', () => {
    const mean = listeningWindowDb((angle) => (angle === 10 ? 0 : -400));
    expect(Math.abs(mean - 10 * Math.log10(4 / 9))).toBeLessThan(1e-9);
  });

  test('ka = 2: close to the mean of the nine levels, −0.42 dB', () => {
    const mean = listeningWindowDb((angle) => pistonDirectivityDb(100, hertz(2), angle, SPEED));
    expect(Math.abs(mean + (4 * 0.131 + 2 * 0.51 + 2 * 1.108) / 9)).toBeLessThan(0.03);
  });
});
