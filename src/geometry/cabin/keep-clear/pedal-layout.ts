import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';

/** Y of each pedal's middle and of the left foot's rest, in the car as it is (not mirrored). */
export interface PedalLayout {
  accelerator: number;
  brake: number;
  clutch: number;
  footrest: number;
  /** The footwell's walls on the wheel side: left and right of the person. */
  walls: readonly [number, number];
}

/** Accelerator to the wall right of it, and pedal to pedal. Typical values, from memory. */
const ACCELERATOR_TO_WALL = 68;
const PEDAL_PITCH = 105;

/**
 * Clutch, brake and accelerator stand in the same order, left to right, on either drive side, and
 * the left foot rests left of them: beside the kick panel in a left-hand-drive car, beside the
 * tunnel in a right-hand-drive one. Common practice, no source.
 */
export function pedalLayout(d: Dimensions, wheelSide: Side): PedalLayout {
  const tunnel = d.tunnelWidth / 2;
  const kick = tunnel + d.footwellWidth;
  const [left, right] = wheelSide === 'left' ? [-kick, -tunnel] : [tunnel, kick];
  // A narrow footwell brings the pedals together before it lets them through its walls.
  const room = d.footwellWidth - ACCELERATOR_TO_WALL - d.footrestWidth;
  const pitch = Math.min(PEDAL_PITCH, Math.max(40, room / 2.4));
  const accelerator = right - ACCELERATOR_TO_WALL;
  return {
    accelerator,
    brake: accelerator - pitch,
    clutch: accelerator - 2 * pitch,
    footrest: left + d.footrestWidth / 2,
    walls: [left, right],
  };
}
