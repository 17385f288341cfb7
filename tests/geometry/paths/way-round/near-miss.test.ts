import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Obstacle, Vec3 } from '../../../../src/geometry';
import { buildCaster } from '../../../../src/geometry/paths/cast';
import { buildWayFinder } from '../../../../src/geometry/paths/way-round';
import { solidBodies } from '../../../../src/geometry/paths/way-round/bodies';
import { nearestParts, nearMiss } from '../../../../src/geometry/paths/way-round/near-miss';
import { distance, mix } from '../../../../src/geometry/vector';
import * as any from '../../arbitraries';

describe('a near miss', () => {
  test('is measured from the line to the edge beside it', () => {
    const [box] = solidBodies('box', { shape: 'box', center: [0, 0, -100], size: [100, 100, 100] });
    const miss = nearMiss([-400, 0, 20], [400, 0, -20 + 60], box as never, 500);
    // The nearer of the upper edges is the one the rising line passes first, at x = −50.
    expect(miss?.id).toBe('box');
    expect(miss?.point[0]).toBeCloseTo(-50, 6);
    expect(miss?.point[2]).toBeCloseTo(-50, 6);
    const slope = 20 / 800;
    const rise = 20 + 350 * slope + 50;
    expect(miss?.distance).toBeCloseTo(rise / Math.hypot(1, slope), 6);
    expect(miss?.at).toBeCloseTo(distance([-400, 0, 20], miss?.onLine as Vec3), 6);
  });

  test('of a round body is its distance, to its faces’ fineness', () => {
    const [ball] = solidBodies('ball', {
      shape: 'capsule',
      from: [0, 0, 0],
      to: [0, 0, 0],
      radius: 100,
    });
    const miss = nearMiss([-500, 0, 150], [500, 0, 150], ball as never, 500);
    expect(Math.abs((miss?.distance ?? 0) - 50)).toBeLessThan(2);
  });

  test('is none where nothing is within reach', () => {
    const [box] = solidBodies('box', { shape: 'box', center: [0, 0, -100], size: [100, 100, 100] });
    expect(nearMiss([-400, 0, 20], [400, 0, 20], box as never, 69)).toBeNull();
    expect(nearMiss([-400, 0, 20], [400, 0, 20], box as never, 71)?.distance).toBeCloseTo(70, 6);
  });

  test('of several bodies the nearest is named first, the listener’s own head not at all', () => {
    const ball = (id: string, y: number, seat?: string): Obstacle => ({
      id,
      name: id,
      shape: { shape: 'capsule', from: [0, y, -50], to: [0, y, 50], radius: 20 },
      given: true,
      ...(seat && { occupant: { seat, part: 'head' as const } }),
    });
    const all = [ball('far', 90), ball('near', -60), ball('own', 40, 'front-left')];
    const finder = buildWayFinder([], all, buildCaster([], all));
    const named = (listener: string) =>
      finder.nearMisses([-400, 0, 0], [400, 0, 0], listener, 100).map(({ id }) => id);
    expect(named('front-left')).toEqual(['near', 'far']);
    expect(named('front-right')).toEqual(['own', 'near', 'far']);
  });

  test('no two other places on the two segments lie nearer together', () => {
    fc.assert(
      fc.property(any.point, any.point, any.point, any.point, (a, b, p, q) => {
        const [s, t] = nearestParts(a, b, p, q);
        const least = distance(mix(a, b, s), mix(p, q, t));
        for (let i = 0; i <= 20; i++)
          for (let j = 0; j <= 20; j++)
            expect(distance(mix(a, b, i / 20), mix(p, q, j / 20))).toBeGreaterThan(least - 1e-6);
      }),
      { numRuns: 60, seed: 20269 },
    );
  });
});
