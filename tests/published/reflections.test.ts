import { describe, expect, test } from 'vitest';
import type { Panel, Vec3 } from '../../src/geometry';
import { bilinearPatch } from '../../src/geometry/cabin/patch';
import { firstNotchHz } from '../../src/geometry/paths/reflection';
import type { Reflection } from '../../src/geometry/result';
import { distance } from '../../src/geometry/vector';
import { panelOf, reflect, room } from '../geometry/paths/mirrors';

describe('one floor', () => {
  // Source: image source (Allen & Berkley, JASA 65, 1979) and the first notch c/(2·extra)
  // (Everest & Pohlmann, Master Handbook of Acoustics), computed: source 300 over and receiver 400
  // over a floor, 1200 apart; direct √(1200² + 100²), reflected √(1200² + 700²).
  const corners = [
    [-200, -500, 0],
    [1400, -500, 0],
    [1400, 500, 0],
    [-200, 500, 0],
  ] as const satisfies readonly Vec3[];
  const floor = panelOf('floor', bilinearPatch(corners, 1));
  const [one] = reflect([floor], [0, 0, 300], [1200, 0, 400]) as [Reflection];

  test.each([
    ['extra path, mm', one.extra, 185.1, 0.05],
    ['extra time, ms', one.extraTime, 0.5393, 0.00005],
    ['first notch, Hz', one.firstNotchHz, 927.1, 0.05],
    ['level, dB', one.levelDb ?? NaN, -1.242, 0.0005],
    ['place along the floor, mm', one.point[0], 514.3, 0.05],
    ['place across the floor, mm', one.point[1], 0, 1e-6],
    ['place above the floor, mm', one.point[2], 0, 1e-9],
  ])('%s: %f, by the book %f', (_, got, expected, within) => {
    expect(Math.abs(got - expected)).toBeLessThan(within);
  });

  test('a floor that throws back half the pressure is 6.021 dB lower', () => {
    const soft = reflect([{ ...floor, reflectivity: 0.5 }], [0, 0, 300], [1200, 0, 400]);
    expect(Math.abs((soft[0]?.levelDb ?? 0) - (one.levelDb ?? 0) + 6.0206)).toBeLessThan(0.0001);
  });
});

describe('first notch', () => {
  // Source: Everest & Pohlmann, Master Handbook of Acoustics, comb filters: the first null of a
  // copy that comes 0.1, 0.5, 1, 5, 10 ms later is at 5000, 1000, 500, 100, 50 Hz.
  test.each([
    [0.1, 5000],
    [0.5, 1000],
    [1, 500],
    [5, 100],
    [10, 50],
  ])('a copy %f ms later first cancels at %f Hz', (ms, hz) => {
    expect(Math.abs(firstNotchHz(ms * 343.2, 343.2) - hz)).toBeLessThan(1e-9);
  });
});

describe('a rectangular room', () => {
  // Source: Allen & Berkley, "Image method for efficiently simulating small-room acoustics",
  // JASA 65(4), 1979, eqs. 6–8: the images of a source at x in a room 0…L stand at 2nL ± x along
  // each axis; image 2nL + x is 2|n| reflections away, 2nL − x is |2n − 1|. The level is the
  // walls' factors times the ratio of distances.
  const size: Vec3 = [2600, 1700, 1300];
  const BETA = 0.8;
  const walls: readonly Panel[] = room(size, BETA);

  function images(source: Vec3, order: number): Vec3[] {
    const alongAxis = (x: number, l: number): { at: number; order: number }[] =>
      [-2, -1, 0, 1, 2].flatMap((n) => [
        { at: 2 * n * l + x, order: Math.abs(2 * n) },
        { at: 2 * n * l - x, order: Math.abs(2 * n - 1) },
      ]);
    const [xs, ys, zs] = [0, 1, 2].map((k) => alongAxis(source[k] as number, size[k] as number));
    const all: Vec3[] = [];
    for (const x of xs ?? [])
      for (const y of ys ?? [])
        for (const z of zs ?? [])
          if (x.order + y.order + z.order === order) all.push([x.at, y.at, z.at]);
    return all;
  }

  const CASES: readonly (readonly [Vec3, Vec3])[] = [
    [
      [700, 300, 400],
      [1900, 1250, 900],
    ],
    [
      [150, 1600, 80],
      [1400, 420, 760],
    ],
    [
      [2500, 60, 1200],
      [90, 1650, 50],
    ],
  ];

  test.each(CASES)('from %j to %j: 6 images of first order', (source, receiver) => {
    const expected = images(source, 1)
      .map((image) => distance(image, receiver))
      .sort((a, b) => a - b);
    expect(expected).toHaveLength(6);
    const got = reflect(walls, source, receiver);
    expect(got).toHaveLength(6);
    const direct = distance(source, receiver);
    for (const [i, path] of expected.entries()) {
      expect(Math.abs((got[i]?.path ?? 0) - path)).toBeLessThan(1e-6);
      const level = 20 * Math.log10((BETA * direct) / path);
      expect(Math.abs((got[i]?.levelDb ?? 0) - level)).toBeLessThan(1e-9);
    }
  });

  // Of the second order's 18 images, 12 stand beyond an edge: the sound takes its two walls in
  // one order only. The other 6 stand behind two walls that face each other.
  test.each(CASES)('from %j to %j: 18 images of second order', (source, receiver) => {
    const expected = images(source, 2)
      .map((image) => distance(image, receiver))
      .sort((a, b) => a - b);
    expect(expected).toHaveLength(18);
    const got = reflect(walls, source, receiver, { order: 2 }).filter(({ second }) => second);
    expect(got).toHaveLength(18);
    const direct = distance(source, receiver);
    for (const [i, path] of expected.entries()) {
      expect(Math.abs((got[i]?.path ?? 0) - path)).toBeLessThan(1e-6);
      const level = 20 * Math.log10((BETA * BETA * direct) / path);
      expect(Math.abs((got[i]?.levelDb ?? 0) - level)).toBeLessThan(1e-9);
    }
  });
});

describe('hollow mirrors', () => {
  // Source: the parabola's focal property (Apollonius; any book of analytic geometry): every ray
  // along the axis of z = x²/4f meets the focus, by a path of the ray's height plus f. A biquadratic
  // patch is exactly such a trough.
  const f = 400;
  const at = (x: number, y: number): Vec3 => [x, y, (x * x) / (4 * f)];
  const trough = (x0: number, x1: number): Panel => {
    const middle = (y: number): Vec3 => [(x0 + x1) / 2, y, (x0 * x1) / (4 * f)];
    const control = [-300, 0, 300].flatMap((y) => [at(x0, y), middle(y), at(x1, y)]);
    return panelOf('trough', { control, facing: 1 });
  };

  test.each([150, 320, 480])(
    'a ray along a parabola’s axis at %f mm is thrown to its focus',
    (x) => {
      const far = 1e7;
      const got = reflect([trough(100, 600)], [x, 0, far], [0, 0, f]);
      expect(got).toHaveLength(1);
      expect(Math.abs((got[0]?.point[0] ?? 0) - x)).toBeLessThan(0.05);
      // |S − P| + |P − F| = (far − z) + (z + f)
      expect(Math.abs((got[0]?.path ?? 0) - far - f)).toBeLessThan(0.01);
    },
  );
});
