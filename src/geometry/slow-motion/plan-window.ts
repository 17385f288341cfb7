import type { Seat } from '../cabin/model';
import type { CarFromAbove } from './car-from-above';
import { fromAbove } from './cut';
import type { SlowMotion } from './types';

/** A rectangle seen from above, mm. */
export interface PlanWindow {
  left: number;
  right: number;
  front: number;
  rear: number;
}

/** Room behind the listener and round what stands outside the cabin, mm. By eye. */
const BEHIND = 330;
const ROOM = 60;

/**
 * The part of the car to look at: all of its width, from its front to behind the listener and all
 * speakers; the same for all motions given, so that two drawings are alike.
 */
export function windowOf(
  car: CarFromAbove,
  seat: Seat,
  motions: readonly SlowMotion[],
): PlanWindow {
  const speakers = motions.flatMap(({ waves }) => waves.map(({ centre }) => fromAbove(centre)));
  const listener = [seat.head, seat.ears.left, seat.ears.right].map(fromAbove);
  const must = [...speakers, ...listener];
  const across = [...car.outline, ...must].map(([x]) => x);
  const along = (spots: readonly (readonly [number, number])[]) => spots.map(([, y]) => y);
  const tail = Math.max(...along(car.outline));
  const rear = Math.max(...along(listener)) + BEHIND;
  return {
    left: Math.min(...across) - ROOM,
    right: Math.max(...across) + ROOM,
    front: Math.min(...along([...car.outline, ...must])) - ROOM,
    rear: Math.max(Math.min(rear, tail + ROOM), ...along(must).map((y) => y + ROOM)),
  };
}
