import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { cross, length, sub, type Vec3 } from '../../src/geometry';
import { toThree } from '../../src/scene/axes';
import { alongLine, meetPlane, nearestOnRay, rayThrough, spotOf } from '../../src/scene/pick/ray';

describe('sight lines', () => {
  const size = { width: 900, height: 600 };
  const camera = new PerspectiveCamera(35, 1.5, 10, 20_000);
  camera.position.copy(toThree([3000, 1200, 1800], new Vector3()));
  camera.lookAt(toThree([300, -100, 700], new Vector3()));
  camera.updateMatrixWorld();

  it('run through the point they were taken at, there and back', () => {
    for (const point of [
      [300, -100, 700],
      [0, 600, 900],
      [1200, -500, 300],
    ] as Vec3[]) {
      const spot = spotOf(camera, size, point);
      const ray = rayThrough(camera, size, spot.x, spot.y);
      const miss = length(cross(sub(point, ray.origin), ray.direction));
      expect(miss).toBeLessThan(0.01);
      expect(spot.ahead).toBe(true);
    }
  });

  it('know what lies behind the eye', () => {
    expect(spotOf(camera, size, [6000, 2600, 3000]).ahead).toBe(false);
  });

  it('meet a plane ahead, never one behind or edge-on', () => {
    const down = { origin: [0, 0, 100] as Vec3, direction: [0, 0, -1] as Vec3 };
    expect(meetPlane(down, [0, 0, 20], [0, 0, 1])).toEqual([0, 0, 20]);
    expect(meetPlane(down, [0, 0, 200], [0, 0, 1])).toBeNull();
    expect(meetPlane(down, [5, 0, 0], [1, 0, 0])).toBeNull();
  });

  it('measure along a rail, and refuse one that runs with the sight line', () => {
    const across = { origin: [50, -1000, 0] as Vec3, direction: [0, 1, 0] as Vec3 };
    expect(alongLine(across, [0, 0, 0], [1, 0, 0])).toBeCloseTo(50, 9);
    const end = { origin: [-1000, 0, 0] as Vec3, direction: [1, 0, 0] as Vec3 };
    expect(alongLine(end, [0, 0, 0], [1, 0, 0])).toBeNull();
  });

  it('find the nearest point ahead', () => {
    const ray = { origin: [0, 0, 0] as Vec3, direction: [1, 0, 0] as Vec3 };
    expect(nearestOnRay(ray, [30, 40, 0])).toEqual([30, 0, 0]);
    expect(nearestOnRay(ray, [-30, 40, 0])).toEqual([0, 0, 0]);
  });
});
