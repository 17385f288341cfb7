import { distance, mix, type Vec3 } from '../vector';
import type { Wave } from './types';

/** Radius of a wave's sphere at a time, mm; 0 before it leaves. */
export const radiusAt = ({ start }: Wave, time: number, speed: number): number =>
  Math.max(0, time - start) * speed;

/**
 * Radius of the circle a sphere cuts out of the horizontal plane at `height`, mm: √(r² − dz²), by
 * Pythagoras; `null` while the sphere has not reached the plane.
 */
export function sectionRadius(
  wave: Wave,
  time: number,
  speed: number,
  height: number,
): number | null {
  const radius = radiusAt(wave, time, speed);
  const away = Math.abs(wave.centre[2] - height);
  return radius > 0 && radius >= away ? Math.sqrt(radius ** 2 - away ** 2) : null;
}

/**
 * How far along its bent way the sound that arrives has come: the place, and the points already
 * passed before it. `null` where the way is straight, before it leaves and once it is there.
 */
export function comeRound(
  { round, start }: Wave,
  time: number,
  speed: number,
): { at: Vec3; passed: readonly Vec3[] } | null {
  if (!round) return null;
  let left = (time - start) * speed;
  if (left <= 0) return null;
  for (let i = 1; i < round.length; i++) {
    const [a, b] = [round[i - 1] as Vec3, round[i] as Vec3];
    const leg = distance(a, b);
    if (left < leg) return { at: mix(a, b, left / leg), passed: round.slice(0, i) };
    left -= leg;
  }
  return null;
}
