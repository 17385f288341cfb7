import { describe, expect, test } from 'vitest';
import { direction, dot, type Vec3 } from '../../../src/geometry';
import { anglesOf, directionAt } from '../../../src/workbench/details/aim-angles';

describe('an aim in angles', () => {
  test('straight rearward is 0 and 0', () => {
    expect(anglesOf([2, 0, 0])).toEqual({ turnDeg: 0, tiltDeg: 0 });
  });

  test('turning goes towards the right of the car, tilting upward', () => {
    expect(anglesOf([0, 1, 0]).turnDeg).toBeCloseTo(90, 9);
    expect(anglesOf([1, -1, 0]).turnDeg).toBeCloseTo(-45, 9);
    expect(anglesOf([1, 0, 1]).tiltDeg).toBeCloseTo(45, 9);
  });

  test('there and back gives the same direction', () => {
    const some: Vec3[] = [
      [1, 2, 3],
      [-4, 1, -2],
      [0, -1, 0.2],
      [-1, 0, 0],
    ];
    for (const vector of some) {
      const unit = direction(vector) as Vec3;
      expect(dot(directionAt(anglesOf(vector)), unit)).toBeCloseTo(1, 12);
    }
  });

  test('straight up, and no direction at all, stay finite', () => {
    expect(anglesOf([0, 0, 5])).toEqual({ turnDeg: 0, tiltDeg: 90 });
    expect(anglesOf([0, 0, 0])).toEqual({ turnDeg: 0, tiltDeg: 0 });
  });
});
