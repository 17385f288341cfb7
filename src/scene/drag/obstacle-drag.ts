/** A free obstacle in the horizontal plane; straight up and down while Shift is held. */
import type { Vec3 } from '../../geometry';
import { moveObstacle } from '../../plan/edits';
import { alongLine, meetPlane, type Ray } from '../pick/ray';
import type { Drag } from './drag';

export interface ObstacleDragStart {
  obstacleId: string;
  name: string;
  grip: Vec3;
  ray: Ray;
}

const UP: Vec3 = [0, 0, 1];
/** Farther than this in one drag is a slip towards the horizon, mm. */
const MOST = 10_000;

export function obstacleInCar(start: ObstacleDragStart): Drag {
  // Both ways are kept, so pressing Shift half way keeps what was moved before.
  let level: Vec3 = [0, 0, 0];
  let height = 0;
  let lifted: { zero: number; height: number } | null = null;
  // Seen edge-on (from the side or the front) the floor is a line: slide in the sheet instead.
  const sheet = Math.abs(start.ray.direction[2]) < 0.2;
  return {
    label: `move ${start.name}`,
    move({ ray, vertical }) {
      const at: Vec3 = [start.grip[0] + level[0], start.grip[1] + level[1], start.grip[2]];
      if (vertical) {
        const now = alongLine(ray, at, UP);
        if (now === null) return null;
        lifted ??= { zero: now, height };
        height = lifted.height + now - lifted.zero;
      } else {
        lifted = null;
        const plane: Vec3 = [start.grip[0], start.grip[1], start.grip[2] + height];
        const point = sheet ? inSheet(ray, plane) : meetPlane(ray, plane, UP);
        if (!point) return null;
        level = [point[0] - start.grip[0], point[1] - start.grip[1], 0];
      }
      const delta: Vec3 = [Math.round(level[0]), Math.round(level[1]), Math.round(height)];
      if (delta.some((d) => Math.abs(d) > MOST)) return null;
      return moveObstacle(start.obstacleId, delta);
    },
  };

  /** In the upright plane that faces the eye, only its level part. */
  function inSheet(ray: Ray, through: Vec3): Vec3 | null {
    const [x, y] = start.ray.direction;
    return meetPlane(ray, through, [x, y, 0]);
  }
}
