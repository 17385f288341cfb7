import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { octaveCentres } from '../../../src/geometry/sound/bands';
import {
  type DirectSound,
  directivityLaw,
  directLevels,
  levelDifferences,
} from '../../../src/geometry/sound/direct-level';
import { measuredDirectivity } from '../../../src/geometry/sound/measured-directivity';
import { real } from '../arbitraries';

const SPEED = 343.2;
const piston = directivityLaw({ diaphragm: 130 }, SPEED);
const sound = (more: Partial<DirectSound> = {}): DirectSound => ({
  path: 1000,
  offAxisDeg: 0,
  law: piston,
  ...more,
});
const CENTRES = octaveCentres([250, 4000]);

describe('direct level at a seat', () => {
  test('on the axis, a metre away and in the clear it is 0 dB in every band', () => {
    for (const band of directLevels(sound(), CENTRES)) {
      expect(band.levelDb).toBe(0);
      expect(band.directivityDb).toBe(0);
      expect(band.windowDb).toBeGreaterThanOrEqual(0);
    }
  });

  // By hand: 2 m is −6.021 dB; 130 mm at 2 kHz and 30° −1.586 dB; 3 dB in the way.
  test('adds up distance, angle and what is in the way', () => {
    const [band] = directLevels(
      sound({ path: 2000, offAxisDeg: 30, obstructionDbAt: () => 3 }),
      [2000],
    );
    expect(Math.abs((band?.levelDb ?? 99) + 6.0206 + 1.586 + 3)).toBeLessThan(0.001);
    expect(band?.obstructionDb).toBe(3);
  });

  test('is what was measured where something was, the piston otherwise, no loss without either', () => {
    const answer = measuredDirectivity([
      { offAxisDeg: 0, frequencyHz: [500, 4000], levelDb: [90, 90] },
      { offAxisDeg: 40, frequencyHz: [500, 4000], levelDb: [86, 86] },
    ]);
    if (!answer.ok) throw new Error(answer.message);
    const measured = directivityLaw({ measured: answer.directivity, diaphragm: 130 }, SPEED);
    expect(measured(20, 1000)).toBeCloseTo(-2, 9);
    expect(piston(20, 1000)).toBeLessThan(0);
    expect(directivityLaw({}, SPEED)(80, 16000)).toBe(0);
    const [outside] = directLevels(sound({ law: measured, offAxisDeg: 50 }), [1000]);
    expect(outside).toMatchObject({
      levelDb: null,
      windowDb: null,
      reason: 'the measured responses do not cover this angle and frequency',
    });
  });

  test('has a reason wherever a number is missing', () => {
    const [atSpeaker] = directLevels(sound({ path: 0 }), [1000]);
    expect(atSpeaker).toMatchObject({ levelDb: null, reason: expect.stringContaining('no level') });
    const [noAxis] = directLevels(sound({ offAxisDeg: null }), [1000]);
    expect(noAxis).toMatchObject({
      levelDb: null,
      reason: expect.stringContaining('no direction'),
    });
  });

  test('left minus right turns its sign when sides are swapped, and names the side that lacks it', () => {
    fc.assert(
      fc.property(real(300, 2500), real(300, 2500), real(0, 120), real(0, 120), (p, q, a, b) => {
        const left = directLevels(sound({ path: p, offAxisDeg: a }), CENTRES);
        const right = directLevels(sound({ path: q, offAxisDeg: b }), CENTRES);
        const swapped = levelDifferences(right, left);
        for (const [i, band] of levelDifferences(left, right).entries())
          expect(Math.abs((band.levelDb ?? 99) + (swapped[i]?.levelDb ?? 0))).toBeLessThan(1e-9);
      }),
    );
    const bare = directLevels(sound({ offAxisDeg: null }), CENTRES);
    const [band] = levelDifferences(directLevels(sound(), CENTRES), bare);
    expect(band).toMatchObject({
      levelDb: null,
      reason: expect.stringMatching(/^right speaker: /),
    });
    expect(levelDifferences(bare, [])).toEqual([]);
  });
});
