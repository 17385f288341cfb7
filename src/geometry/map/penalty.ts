/**
 * One scale for unlike things: each measure as a penalty, 0 where it could not be better, about 1
 * where an installer would begin to mind. All four scales are choices of ours, no source. They do
 * not depend on what else was tried, so a score never changes because a spot was left out.
 */
import { OBSTRUCTION_CAP_DB } from '../sound/obstruction';

/** Of what is wanted of a spot: difference, angle and loss small, the first reflection late. */
export type SpotAim = 'difference' | 'offAxisDeg' | 'obstructionDb' | 'firstReflectionTime';

export const SPOT_AIMS: readonly SpotAim[] = [
  'difference',
  'offAxisDeg',
  'obstructionDb',
  'firstReflectionTime',
];

/** mm: about 0.3 ms, a third of the span within which the image follows the first arrival. */
export const DIFFERENCE_SCALE = 100;
/** Degrees: where most speakers have begun to beam. */
export const ANGLE_SCALE_DEG = 45;
/** dB: half the level. */
export const OBSTRUCTION_SCALE_DB = 6;
/** ms: a reflection this late has half the penalty of one that comes with the direct sound. */
export const REFLECTION_SCALE = 1;

/** An angle that is not known counts as the worst there is. */
const WORST_ANGLE_DEG = 180;

/**
 * The penalty of one measure, ≥ 0 and finite. `null`: no angle and no known way round count as the
 * worst, no reflection as none at all, no difference as none.
 */
export function penalty(aim: SpotAim, value: number | null): number {
  switch (aim) {
    case 'difference':
      return Math.abs(value ?? 0) / DIFFERENCE_SCALE;
    case 'offAxisDeg':
      return (value ?? WORST_ANGLE_DEG) / ANGLE_SCALE_DEG;
    case 'obstructionDb':
      return (value ?? OBSTRUCTION_CAP_DB) / OBSTRUCTION_SCALE_DB;
    case 'firstReflectionTime':
      return value === null ? 0 : REFLECTION_SCALE / (REFLECTION_SCALE + value);
  }
}
