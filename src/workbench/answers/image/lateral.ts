import { degrees, direction, dot, type Side, sub, type Vec3 } from '../../../geometry';

/**
 * How far to the side of a head a point is, degrees from the plane between its ears, positive to
 * the right; `null` at the head, or where both ears are in one place. What is behind or above has
 * the angle of what is in front at the same distance to the side, as the image study tells it.
 */
export function lateralDegOf(point: Vec3, { left, right }: Record<Side, Vec3>): number | null {
  const middle: Vec3 = [
    (left[0] + right[0]) / 2,
    (left[1] + right[1]) / 2,
    (left[2] + right[2]) / 2,
  ];
  const rightward = direction(sub(right, left));
  const towards = direction(sub(point, middle));
  if (!rightward || !towards) return null;
  return degrees(Math.asin(Math.max(-1, Math.min(1, dot(towards, rightward)))));
}
