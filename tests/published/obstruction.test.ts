import { describe, expect, test } from 'vitest';
import {
  FADED_FRESNEL,
  fresnelNumber,
  fresnelRadius,
  OBSTRUCTION_CAP_DB,
  obstructionDb,
} from '../../src/geometry/sound/obstruction';

const near = (got: number, expected: number, within: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(within);

describe('the loss behind an edge', () => {
  // Source: the formula of Kurze & Anderson (1971) as given in Bies & Hansen, Engineering Noise
  // Control; the values are computed from it by hand, to two places.
  test.each([
    [0, 5.0],
    [0.1, 6.59],
    [1, 13.1],
    [10, 22.98],
  ])('is, at Fresnel number %f, %f dB by Kurze and Anderson', (n, loss) => {
    near(obstructionDb(n), loss, 0.005);
  });

  // Source: ISO 9613-2, 10 lg(3 + 20 N): 4.77, 6.99, 13.62, 23.08 dB, computed from the formula.
  test('agrees with ISO 9613-2 within 0.6 dB at these Fresnel numbers, and 0.7 dB up to 10', () => {
    for (const [n, iso] of [
      [0, 4.77],
      [0.1, 6.99],
      [1, 13.62],
      [10, 23.08],
    ] as const)
      near(obstructionDb(n), iso, 0.6);
    // Between those places the two part by 0.683 dB at most, at N = 0.375.
    for (let n = 0; n <= 10; n += 0.01) near(obstructionDb(n), 10 * Math.log10(3 + 20 * n), 0.69);
  });

  // Source: Kurze & Anderson's near-miss branch: with the tangent the loss is gone at N ≈ −0.19.
  test('is gone when the line passes the edge at Fresnel number −0.19', () => {
    for (let n = FADED_FRESNEL; n < 50; n += 0.01) expect(obstructionDb(-n)).toBe(0);
    expect(obstructionDb(-0.185)).toBeGreaterThan(0);
    near(obstructionDb(-0.185), 0, 0.3);
    for (const n of [-0.195, -0.25, -1, -40]) expect(obstructionDb(n)).toBe(0);
  });

  test('has no jump where the line just touches the edge', () => {
    near(obstructionDb(-1e-9), 5, 1e-6);
    near(obstructionDb(1e-9), 5, 1e-6);
    near(obstructionDb(1e-20), 5, 1e-12);
  });

  test('never falls as the edge rises, and ends at 24 dB', () => {
    for (let n = -1; n < 20; n += 0.01)
      expect(obstructionDb(n + 0.01)).toBeGreaterThanOrEqual(obstructionDb(n));
    expect(obstructionDb(1e9)).toBe(OBSTRUCTION_CAP_DB);
    expect(OBSTRUCTION_CAP_DB).toBe(24);
  });

  test('is not worked out from something that is no number', () => {
    expect(() => obstructionDb(Number.NaN)).toThrow(/obstructionDb/);
  });
});

describe('a published worked example', () => {
  // Source: textbook barrier example (published): source 1 m high, a 4 m screen 50 m off, receiver
  // 1.5 m high at 100 m: detour 0.151 m, about 10.0 dB at 500 Hz and 15.5 dB at 2 kHz.
  const detour = Math.hypot(50e3, 3e3) + Math.hypot(50e3, 2.5e3) - Math.hypot(100e3, 0.5e3);

  test('has a detour of 0.151 m', () => near(detour, 151, 0.5));

  test.each([
    [500, 10.0],
    [2000, 15.5],
  ])('loses at %i Hz about %f dB', (frequencyHz, loss) => {
    near(obstructionDb(fresnelNumber(detour, frequencyHz, 343.2)), loss, 0.1);
  });
});

describe('Fresnel’s number and zone', () => {
  test('a detour of half a wavelength is Fresnel number 1', () => {
    // 1716 Hz at 343.2 m/s is 200 mm.
    near(fresnelNumber(100, 1716, 343.2), 1, 1e-12);
    near(fresnelNumber(-100, 1716, 343.2), -1, 1e-12);
  });

  // By definition the way over a point on the first zone's edge is half a wavelength longer; the
  // usual formula leaves out higher powers of the radius.
  test('a way over the rim of the first zone is half a wavelength longer', () => {
    const [before, after] = [4000, 9000];
    const r = fresnelRadius(before, after, 17160, 343.2);
    near(Math.hypot(before, r) + Math.hypot(after, r) - before - after, 10, 0.01);
  });

  test('the zone has no width at the line’s ends', () => {
    expect(fresnelRadius(0, 1000, 1000, 343.2)).toBe(0);
    expect(fresnelRadius(1000, 0, 1000, 343.2)).toBe(0);
    expect(fresnelRadius(0, 0, 1000, 343.2)).toBe(0);
  });
});
