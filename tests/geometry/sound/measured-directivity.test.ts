import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pistonDirectivityDb } from '../../../src/geometry/sound/directivity';
import {
  type MeasuredDirectivity,
  measuredDirectivity,
  type OffAxisResponse,
} from '../../../src/geometry/sound/measured-directivity';
import { real } from '../arbitraries';

function of(responses: readonly OffAxisResponse[]): MeasuredDirectivity {
  const answer = measuredDirectivity(responses);
  if (!answer.ok) throw new Error(answer.message);
  return answer.directivity;
}
const HZ = [500, 1000, 2000, 4000];
const TABLE: readonly OffAxisResponse[] = [
  { offAxisDeg: 60, frequencyHz: HZ, levelDb: [88, 86, 80, 70] },
  { offAxisDeg: 0, frequencyHz: HZ, levelDb: [90, 92, 91, 89] },
  { offAxisDeg: 30, frequencyHz: HZ, levelDb: [90, 90, 88, 82] },
];

describe('a measured directivity', () => {
  const measured = of(TABLE);

  test('is what was measured, re on axis, at every measured angle and frequency', () => {
    for (const { offAxisDeg, frequencyHz, levelDb } of TABLE) {
      for (const [i, f] of frequencyHz.entries()) {
        const onAxis = TABLE[1]?.levelDb[i] ?? Number.NaN;
        expect(measured.levelDbAt(offAxisDeg, f)).toBe((levelDb[i] ?? Number.NaN) - onAxis);
      }
    }
    expect(measured.anglesDeg).toEqual([0, 30, 60]);
    expect(measured.rangeHz).toEqual([500, 4000]);
  });

  test('lies half way between two angles, and half way between two octaves at √2', () => {
    // By hand: 45° at 2 kHz (−3 − 11)/2; 30° at 1414 Hz (−2 − 3)/2.
    expect(measured.levelDbAt(45, 2000)).toBeCloseTo(-7, 9);
    expect(measured.levelDbAt(30, 1000 * Math.SQRT2)).toBeCloseTo(-2.5, 9);
    expect(measured.levelDbAt(-45, 2000)).toBeCloseTo(-7, 9);
  });

  test('is silent about what was not measured', () => {
    for (const [angle, f] of [
      [60.1, 1000],
      [30, 499],
      [30, 4001],
      [Number.NaN, 1000],
      [30, Number.NaN],
    ] as const)
      expect(measured.levelDbAt(angle, f)).toBe(null);
  });

  test('never depends on the order of the responses or their common level', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2], { minLength: 3 }), real(-60, 60), (order, up) => {
        const shuffled = order.map((i) => TABLE[i] as OffAxisResponse);
        const louder = shuffled.map((r) => ({ ...r, levelDb: r.levelDb.map((db) => db + up) }));
        const other = of(louder);
        for (const [angle, f] of [
          [10, 600],
          [47, 3000],
          [60, 4000],
        ] as const) {
          const change = (other.levelDbAt(angle, f) ?? 99) - (measured.levelDbAt(angle, f) ?? 0);
          expect(Math.abs(change)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('stays between its four nearest measured points', () => {
    fc.assert(
      fc.property(real(0, 60), real(500, 4000), (angle, f) => {
        const level = measured.levelDbAt(angle, f) ?? Number.NaN;
        expect(level).toBeLessThanOrEqual(1e-12);
        expect(level).toBeGreaterThanOrEqual(-19 - 1e-12);
      }),
    );
  });

  test('sampled finely from a piston it is that piston within 0.1 dB', () => {
    const hz = Array.from({ length: 49 }, (_, i) => 500 * 2 ** (i / 12));
    const piston = (angle: number, f: number) => pistonDirectivityDb(70, f, angle, 343.2);
    const sampled = of(
      [0, 10, 20, 30, 40, 50, 60, 70, 80, 90].map((offAxisDeg) => ({
        offAxisDeg,
        frequencyHz: hz,
        levelDb: hz.map((f) => 85 + piston(offAxisDeg, f)),
      })),
    );
    fc.assert(
      fc.property(real(0, 90), real(500, 4000), (angle, f) => {
        const gap = (sampled.levelDbAt(angle, f) ?? 99) - piston(angle, f);
        expect(Math.abs(gap)).toBeLessThan(0.1);
      }),
    );
  });

  test('frequencies that do not rise, and levels that are missing, are refused', () => {
    const message = (one: Partial<OffAxisResponse>) => {
      const answer = measuredDirectivity([{ ...(TABLE[1] as OffAxisResponse), ...one }]);
      return answer.ok ? 'read' : answer.message;
    };
    expect(message({ frequencyHz: [500, 400, 2000, 4000] })).toContain('must rise');
    expect(message({ frequencyHz: [0, 400, 2000, 4000] })).toContain('must rise from above 0');
    expect(message({ levelDb: [1, 2, Number.NaN, 3] })).toContain('no level at 2000 Hz');
    expect(message({ levelDb: [1, 2] })).toContain('4 frequencies and 2 levels');
    expect(message({ frequencyHz: [500], levelDb: [0] })).toContain('fewer than two');
    expect(message({ offAxisDeg: -1 })).toContain('from 0° to 180°, got -1°');
  });
});
