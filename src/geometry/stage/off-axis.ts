import { SAME_POINT } from '../tolerance';
import { clamp, cross, degrees, direction, dot, length, type Vec3 } from '../vector';

export interface OffAxis {
  offAxisDeg: number;
  offAxisHorizontalDeg: number;
  offAxisVerticalDeg: number;
}

/** The speaker's own right and up: up is as near the car's Z as the axis allows. */
export function speakerFrame(axis: Vec3): { right: Vec3; up: Vec3 } {
  // An axis straight up or down has no "up" of its own; the front of the car stands in for it.
  const right =
    direction(horizontalPart(cross(axis, [0, 0, 1]))) ??
    (direction(cross(axis, [-1, 0, 0])) as Vec3);
  return { right, up: cross(right, axis) };
}

function horizontalPart(v: Vec3): Vec3 {
  return length(v) < 1e-9 ? [0, 0, 0] : v;
}

/**
 * Angles of the direction `toListener` seen from a speaker looking along `axis` (unit), degrees:
 * in all, sideways (positive to the speaker's right, −180 to 180) and upward (−90 to 90), the
 * two being azimuth and elevation in the speaker's frame.
 * Axis and reference point as in IEC 60268-5. Returns `null` when the listener is at the speaker.
 */
export function offAxis(axis: Vec3, toListener: Vec3): OffAxis | null {
  const far = length(toListener);
  if (!(far > SAME_POINT)) return null;
  const { right, up } = speakerFrame(axis);
  const ahead = dot(toListener, axis) / far;
  const sideways = dot(toListener, right) / far;
  const upward = dot(toListener, up) / far;
  return {
    // atan2 stays exact near 0° and 180°, where the arc cosine loses half its digits.
    offAxisDeg: degrees(Math.atan2(Math.sqrt(sideways * sideways + upward * upward), ahead)),
    offAxisHorizontalDeg: degrees(Math.atan2(sideways, ahead)),
    offAxisVerticalDeg: degrees(Math.asin(clamp(upward, -1, 1))),
  };
}
