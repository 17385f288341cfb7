/** A seat along its rails. */
import { clamp, type Vec3 } from '../../geometry';
import { changeSeat } from '../../plan/edits';
import { alongLine, type Ray } from '../pick/ray';
import type { Drag } from './drag';

export interface SeatDragStart {
  seatId: string;
  /** Every seat of the cabin: a plan that lists none means all of them. */
  allSeatIds: readonly string[];
  name: string;
  /** The point taken hold of, car axes. */
  grip: Vec3;
  /** Line of sight at the start. */
  ray: Ray;
  /** Rearward slide the seat already has, and how far it can go from there, mm. */
  slide: number;
  slideRange: readonly [number, number];
}

const RAIL: Vec3 = [1, 0, 0];

/** `null` where the rails run straight at the eye, as from in front: no hand can judge them. */
export function seatAlongRails(start: SeatDragStart): Drag | null {
  const zero = alongLine(start.ray, start.grip, RAIL);
  if (zero === null) return null;
  return {
    label: `slide ${start.name}`,
    move({ ray }) {
      const now = alongLine(ray, start.grip, RAIL);
      if (now === null) return null;
      const [front, back] = start.slideRange;
      const slide = Math.round(start.slide + clamp(now - zero, front, back));
      return changeSeat(start.seatId, { slide }, start.allSeatIds);
    },
  };
}
