import type { MeshShape } from '../../input';
import { along, clamp, type Vec3 } from '../../vector';
import type { Obstacle } from '../model';
import type { Backrest } from './seat-body';
import { loft, ring, rod } from './solid';

/** Back of the head behind the ears (head length 195, eyes 20 behind the brow). From memory. */
export const EAR_TO_BACK_OF_HEAD = 90;
/** Air between head and restraint. Typical value, from memory. */
const BACKSET = 50;
/** Half depth, half height of the pad. Typical values, from memory. */
const HALF_DEPTH = 40;
const HALF_HEIGHT = 84;

/** The pad: sections side by side, fuller in the middle, its wings a little forward. */
function pad(center: Vec3, up: Vec3, rearward: Vec3, halfWidth: number, around: number): MeshShape {
  const fractions = [-1, -0.92, -0.7, -0.3, 0.3, 0.7, 0.92, 1];
  return loft(
    fractions.map((f) => {
      const a = Math.abs(f);
      const full = a === 1 ? 0.62 : a > 0.9 ? 0.86 : a > 0.6 ? 0.97 : 1;
      const p = along(center, rearward, -10 * a * a);
      const middle: Vec3 = [p[0], p[1] + f * halfWidth, p[2]];
      const depth = HALF_DEPTH * (a === 1 ? 0.55 : a > 0.9 ? 0.85 : 1);
      const [h, d] = [HALF_HEIGHT * full, depth];
      return ring(
        middle,
        [up[0] * h, up[1] * h, up[2] * h],
        [rearward[0] * d, rearward[1] * d, rearward[2] * d],
        around,
        2.8,
      );
    }),
  );
}

/**
 * The head restraint on a backrest, behind the given head: it never comes nearer to the back of
 * the head than its usual air gap, nor leans farther ahead of the backrest than its posts let it.
 */
export function headRestraint(seat: string, name: string, back: Backrest, head: Vec3): Obstacle {
  const halfWidth = 128;
  const rise = clamp(head[2] + 8 - back.top[2], HALF_HEIGHT - 8, 260);
  const z = back.top[2] + rise;
  const line = back.top[0] + (rise / Math.max(0.2, back.up[2])) * back.up[0];
  const behind = head[0] + EAR_TO_BACK_OF_HEAD + BACKSET + HALF_DEPTH;
  const center: Vec3 = [Math.max(behind, line - 110), back.top[1], z];
  const lean = 0.35 * Math.atan2(back.up[0], back.up[2]);
  const up: Vec3 = [Math.sin(lean), 0, Math.cos(lean)];
  const rearward: Vec3 = [Math.cos(lean), 0, -Math.sin(lean)];
  const post = (dy: number) => {
    const foot: Vec3 = [back.top[0], back.top[1] + dy, back.top[2]];
    return rod(along(foot, back.up, -40), [center[0], center[1] + dy, center[2]], 6.5);
  };
  return {
    id: `head-restraint-${seat}`,
    name: `${name} head restraint`,
    shape: pad(center, up, rearward, halfWidth, 10),
    drawn: [
      { material: 'leather', mesh: pad(center, up, rearward, halfWidth, 20) },
      { material: 'metal', mesh: post(-62) },
      { material: 'metal', mesh: post(62) },
    ],
    seat,
    given: false,
  };
}
