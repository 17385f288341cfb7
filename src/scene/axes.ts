/**
 * Car axes (X rearward, Y right, Z up) to three's (x right, y up, z towards the viewer), the one
 * place where the two meet. A cyclic turn of the letters, so nothing is mirrored: a car seen from
 * behind lies in three's axes as a reader expects.
 */
import { Group, Matrix4, type Vector3 } from 'three';
import type { Vec3 } from '../geometry';

const TURN = new Matrix4().set(0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1);

/** The root everything in car axes hangs under; its children speak mm and car axes. */
export function carRoot(): Group {
  const root = new Group();
  root.name = 'car';
  root.matrixAutoUpdate = false;
  root.matrix.copy(TURN);
  root.matrixWorld.copy(TURN);
  return root;
}

/** A point or direction in car axes as three sees it. */
export const toThree = (p: Vec3, out: Vector3): Vector3 => out.set(p[1], p[2], p[0]);

/** A point or direction in three's axes as the car sees it. */
export const toCar = (v: { x: number; y: number; z: number }): Vec3 => [v.z, v.x, v.y];
