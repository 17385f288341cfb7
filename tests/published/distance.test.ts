import { describe, expect, test } from 'vitest';
import { distance, evaluatePlan, offAxis, type PlanInput, spreadingDb } from '../../src/geometry';

describe('distance', () => {
  // Source: Euclid's distance; whole-number right angles in space (Pythagorean quadruples, any
  // handbook of mathematics): 1² + 2² + 2² = 3², 2² + 3² + 6² = 7², 4² + 13² + 16² = 21².
  test.each([
    [[100, 200, 200], 300],
    [[200, 300, 600], 700],
    [[-400, 1300, -1600], 2100],
  ] as const)('from the origin to %j is %i mm', (point, mm) => {
    expect(Math.abs(distance([0, 0, 0], point) - mm)).toBeLessThan(1e-9);
  });

  // Source: three anchors and readings of a tape problem, computed: the point (400, 300, 500) is
  // 707.10678 mm from the origin, 836.66003 from (1000, 0, 0), 714.14284 from (300, 800, 0).
  test.each([
    [[0, 0, 0], 707.10678],
    [[1000, 0, 0], 836.66003],
    [[300, 800, 0], 714.14284],
    [[500, 400, 900], 424.26407],
  ] as const)('a speaker at (400, 300, 500) is from %j as far as the tape says', (head, mm) => {
    const plan: PlanInput = {
      air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
      cabin: { template: 'none', wheelSide: 'left' },
      seats: [{ id: 'seat', head }],
      options: [{ id: 'a', speakers: [{ id: 's', role: 'tweeter', position: [400, 300, 500] }] }],
      alignment: { sampleRateHz: 48000 },
    };
    const answer = evaluatePlan(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const path = answer.options[0]?.seats[0]?.arrivals[0]?.path ?? 0;
    expect(Math.abs(path - mm)).toBeLessThan(1e-5);
  });
});

describe('level over distance', () => {
  // Source: spherical spreading, 20 lg of the distance ratio (Kinsler et al., Fundamentals of
  // Acoustics): 6.021 dB for each doubling.
  test.each([
    [500, 6.021],
    [1000, 0],
    [2000, -6.021],
    [4000, -12.041],
  ])('at %i mm it is %f dB re 1 m', (mm, db) => {
    expect(Math.abs((spreadingDb(mm) ?? 99) - db)).toBeLessThan(0.0005);
  });
});

describe('angle off a speaker’s axis', () => {
  const at = (horizontalDeg: number, verticalDeg: number): [number, number, number] => {
    const [h, v] = [(horizontalDeg * Math.PI) / 180, (verticalDeg * Math.PI) / 180];
    // Looking rearward along X: right is Y's negative, seen from the speaker.
    return [Math.cos(v) * Math.cos(h), -Math.cos(v) * Math.sin(h), Math.sin(v)];
  };

  // Source: spherical trigonometry, cos(total) = cos(azimuth)·cos(elevation) (right spherical
  // triangle, any handbook of mathematics). Axis and reference point as in IEC 60268-5.
  test.each([
    [30, 0, 30],
    [0, 20, 20],
    [30, 20, 35.531],
    [-30, -20, 35.531],
    [120, 30, 115.6589],
  ])('%f° sideways and %f° up are %f° in all', (h, v, total) => {
    const angles = offAxis([1, 0, 0], at(h, v));
    expect(Math.abs((angles?.offAxisHorizontalDeg ?? 999) - h)).toBeLessThan(1e-9);
    expect(Math.abs((angles?.offAxisVerticalDeg ?? 999) - v)).toBeLessThan(1e-9);
    expect(Math.abs((angles?.offAxisDeg ?? 999) - total)).toBeLessThan(0.0005);
  });
});
