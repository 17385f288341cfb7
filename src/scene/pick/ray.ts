/** From the pointer to the car and back. */
import { type Camera, Vector3 } from 'three';
import type { Vec3 } from '../../geometry';
import { direction, dot, sub } from '../../geometry';
import { toCar, toThree } from '../axes';

/** A half-line in car axes, mm; `direction` is a unit vector. */
export interface Ray {
  origin: Vec3;
  direction: Vec3;
}

const scratch = new Vector3();

/** The line of sight through a point of the drawing, in CSS pixels from its top left corner. */
export function rayThrough(
  camera: Camera,
  size: { width: number; height: number },
  x: number,
  y: number,
): Ray {
  const ndc: [number, number] = [(x / size.width) * 2 - 1, 1 - (y / size.height) * 2];
  const origin = toCar(scratch.setFromMatrixPosition(camera.matrixWorld));
  const through = toCar(scratch.set(ndc[0], ndc[1], 0.5).unproject(camera));
  return { origin, direction: direction(sub(through, origin)) ?? [-1, 0, 0] };
}

export interface Spot {
  x: number;
  y: number;
  /** False behind the eye. */
  ahead: boolean;
}

/** Where a point of the car lies on the drawing, in CSS pixels. */
export function spotOf(camera: Camera, size: { width: number; height: number }, point: Vec3): Spot {
  toThree(point, scratch).applyMatrix4(camera.matrixWorldInverse);
  const ahead = scratch.z < 0;
  scratch.applyMatrix4(camera.projectionMatrix);
  return {
    x: ((scratch.x + 1) / 2) * size.width,
    y: ((1 - scratch.y) / 2) * size.height,
    ahead,
  };
}

/** The point of a ray nearest to `point`, never behind its origin. */
export function nearestOnRay(ray: Ray, point: Vec3): Vec3 {
  const t = Math.max(0, dot(sub(point, ray.origin), ray.direction));
  return [
    ray.origin[0] + t * ray.direction[0],
    ray.origin[1] + t * ray.direction[1],
    ray.origin[2] + t * ray.direction[2],
  ];
}

/** Where the ray meets a plane; `null` when it runs along it or away from it. */
export function meetPlane(ray: Ray, through: Vec3, normal: Vec3): Vec3 | null {
  const slope = dot(ray.direction, normal);
  // Within a degree of the plane the meeting point runs off to the horizon.
  if (Math.abs(slope) < 0.02) return null;
  const t = dot(sub(through, ray.origin), normal) / slope;
  if (t <= 0) return null;
  return [
    ray.origin[0] + t * ray.direction[0],
    ray.origin[1] + t * ray.direction[1],
    ray.origin[2] + t * ray.direction[2],
  ];
}

/**
 * How far along a line (unit `way` through `start`) the point nearest to the ray lies, mm;
 * `null` when the two run nearly the same way and the answer would jump.
 */
export function alongLine(ray: Ray, start: Vec3, way: Vec3): number | null {
  const b = dot(ray.direction, way);
  const denominator = 1 - b * b;
  if (denominator < 0.03) return null;
  const between = sub(start, ray.origin);
  return (b * dot(between, ray.direction) - dot(between, way)) / denominator;
}
