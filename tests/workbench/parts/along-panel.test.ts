import { describe, expect, test } from 'vitest';
import type { Patch } from '../../../src/geometry';
import { fromLength, panelLength, toLength } from '../../../src/workbench/parts/along-panel';

/** A flat panel 600 mm along u, 400 mm along v. */
const flat: Patch = {
  control: [0, 200, 400].flatMap((y) => [0, 300, 600].map((x) => [x, y, 0] as const)),
  facing: 1,
};

/** The same, bowed by 100 mm in its middle along u. */
const bowed: Patch = {
  control: [0, 200, 400].flatMap((y) =>
    [0, 300, 600].map((x) => [x, y, x === 300 ? 200 : 0] as const),
  ),
  facing: 1,
};

/** Length of the parabola z = 4·h·x(w − x)/w², in closed form (any calculus text). */
function parabola(width: number, rise: number): number {
  const a = (4 * rise) / width;
  return (width / 2) * (Math.sqrt(1 + a * a) + Math.asinh(a) / a);
}

describe('mm along a panel', () => {
  test('on a flat panel they are plain shares of its sides', () => {
    expect(panelLength(flat, 'u', 0.3)).toBeCloseTo(600, 9);
    expect(toLength(flat, 'u', 0.3, 0.25)).toBeCloseTo(150, 9);
    expect(toLength(flat, 'v', 0.7, 0.5)).toBeCloseTo(200, 9);
  });

  test('on a bowed panel they follow the surface', () => {
    expect(Math.abs(panelLength(bowed, 'u', 0.5) - parabola(600, 100))).toBeLessThan(0.1);
  });

  test('there and back again gives the same place', () => {
    for (const patch of [flat, bowed]) {
      for (const t of [0, 0.013, 0.25, 0.5, 0.777, 1]) {
        expect(fromLength(patch, 'u', 0.4, toLength(patch, 'u', 0.4, t))).toBeCloseTo(t, 9);
      }
    }
  });

  test('more than the panel has ends at its edge', () => {
    expect(fromLength(flat, 'u', 0, 9999)).toBe(1);
    expect(fromLength(flat, 'u', 0, -5)).toBe(0);
  });

  test('an edge drawn together into a point has no length and breaks nothing', () => {
    const point: Patch = {
      control: Array.from({ length: 9 }, () => [5, 5, 5] as const),
      facing: 1,
    };
    expect(panelLength(point, 'u', 0)).toBe(0);
    expect(fromLength(point, 'u', 0, 10)).toBe(0);
  });
});
