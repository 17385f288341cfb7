import { describe, expect, test } from 'vitest';
import { circleHolding, tapeFix, type Vec3 } from '../../../src/geometry';
import { roughly95 } from '../../../src/geometry/survey/tape-fix';

describe('what tapes fix', () => {
  test('two tapes at a right angle along the surface err alike both ways, as each reading does', () => {
    const fix = tapeFix(
      [0, 0, 0],
      [0, 0, 1],
      [
        [500, 0, 0],
        [0, 800, 0],
      ],
      2,
    );
    expect(fix?.sd[0]).toBeCloseTo(2, 12);
    expect(fix?.sd[1]).toBeCloseTo(2, 12);
    // A circle of two like normal distributions: Rayleigh, √(−2 ln 0.05) = 2.4477.
    expect(fix?.within95).toBeCloseTo(2 * 2.4477468, 6);
  });

  test('a tape 60° above the surface tells half as well along it', () => {
    const up: Vec3 = [500 * Math.cos(Math.PI / 3), 0, 500 * Math.sin(Math.PI / 3)];
    const fix = tapeFix([0, 0, 0], [0, 0, 1], [up, [0, 700, 0]], 3);
    expect(fix?.sd[0]).toBeCloseTo(6, 9);
    expect(fix?.sd[1]).toBeCloseTo(3, 9);
  });

  test('tapes that only say how far along one line fix nothing', () => {
    expect(
      tapeFix(
        [0, 0, 0],
        [0, 0, 1],
        [
          [500, 0, 0],
          [-400, 0, 0],
          [900, 0, 0],
        ],
      ),
    ).toBeNull();
    expect(
      tapeFix(
        [0, 0, 0],
        [0, 0, 1],
        [
          [0, 0, 500],
          [0, 0, 900],
        ],
      ),
    ).toBeNull();
    expect(
      tapeFix(
        [0, 0, 0],
        [0, 0, 1],
        [
          [0, 0, 0],
          [5, 0, 0],
        ],
      ),
    ).toBeNull();
  });

  test('one more tape never makes the fix worse', () => {
    const anchors: Vec3[] = [
      [400, 30, 0],
      [300, 260, 90],
      [-120, 500, 40],
      [60, -700, 300],
    ];
    const errors = [2, 3, 4].map((n) => tapeFix([0, 0, 0], [0, 0, 1], anchors.slice(0, n)));
    for (let n = 1; n < errors.length; n++)
      expect(errors[n]?.within95).toBeLessThan(errors[n - 1]?.within95 as number);
  });

  test('what spots are chosen by is the error itself, within 0.1 %', () => {
    for (let k = 1; k <= 100; k++) {
      const both = [7, (7 * k) / 100] as const;
      expect(Math.abs(roughly95(both) / circleHolding(0.95, ...both) - 1)).toBeLessThan(1e-3);
    }
  });

  test('a circle that holds 95 in 100 of a thin distribution is the usual 1.96 of its length', () => {
    // Normal distribution, two-sided 95 %: 1.959964.
    expect(circleHolding(0.95, 10, 0.02)).toBeCloseTo(19.59964, 2);
    expect(circleHolding(0.95, 10, 10)).toBeCloseTo(24.477468, 5);
    expect(circleHolding(0.95, 10, 5)).toBeGreaterThan(19.59964);
    expect(circleHolding(0.95, 10, 5)).toBeLessThan(24.477468);
  });
});
