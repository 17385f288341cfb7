import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bandEdges,
  OCTAVES_HZ,
  octaveCentres,
  THIRD_OCTAVES_HZ,
  thirdOctaveCentres,
} from '../../../src/geometry/sound/bands';
import { real } from '../arbitraries';

// Source: IEC 61260-1:2014, nominal midband frequencies.
describe('band centres', () => {
  test('octaves of hearing run 16, 31.5, 63 … 16000 Hz', () => {
    expect(OCTAVES_HZ).toEqual([16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000]);
  });

  test('third-octaves of a decade are the preferred numbers', () => {
    expect(thirdOctaveCentres([1000, 10000])).toEqual([
      1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000,
    ]);
    expect(THIRD_OCTAVES_HZ.length).toBe(32);
  });

  test('both ends of a band count', () => {
    expect(octaveCentres([250, 2000])).toEqual([250, 500, 1000, 2000]);
    expect(octaveCentres([251, 1999])).toEqual([500, 1000]);
    expect(octaveCentres([2500, 20000])).toEqual([4000, 8000, 16000]);
    expect(octaveCentres([2100, 3900])).toEqual([]);
    expect(thirdOctaveCentres([2500, 2500])).toEqual([2500]);
  });

  test('a band that runs backwards or starts at nothing is refused', () => {
    expect(() => octaveCentres([2000, 200])).toThrow('0 < low ≤ high in Hz, got [2000, 200]');
    expect(() => octaveCentres([0, 200])).toThrow('got [0, 200]');
    expect(() => thirdOctaveCentres([Number.NaN, 200])).toThrow();
  });

  test('every octave centre is a third-octave centre too', () => {
    fc.assert(
      fc.property(real(10, 500), real(500, 25000), (low, high) => {
        const thirds = thirdOctaveCentres([low, high]);
        for (const centre of octaveCentres([low, high])) expect(thirds).toContain(centre);
      }),
    );
  });

  test('the bands meet: where one ends the next begins, and the centre lies inside', () => {
    for (const [centres, b] of [
      [OCTAVES_HZ, 1],
      [THIRD_OCTAVES_HZ, 3],
    ] as const) {
      for (const [i, centre] of centres.entries()) {
        const [low, high] = bandEdges(centre, b);
        expect(centre).toBeGreaterThan(low);
        expect(centre).toBeLessThan(high);
        const next = centres[i + 1];
        if (next) expect(Math.abs((bandEdges(next, b)[0] ?? 0) / high - 1)).toBeLessThan(1e-12);
      }
    }
    // By hand: 1000/G^(1/2) and 1000·G^(1/2), G = 10^0.3.
    expect(bandEdges(1000, 1).map(Math.round)).toEqual([708, 1413]);
    expect(bandEdges(1000, 3).map(Math.round)).toEqual([891, 1122]);
  });
});
