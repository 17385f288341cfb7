import type { Seat } from '../cabin/model';
import type { Vec3 } from '../vector';
import type { CarFromAbove } from './car-from-above';
import { fromAbove } from './cut';

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
 * @throws where there is neither a cabin nor a seat nor a speaker
 */
export function windowOf(
  car: CarFromAbove,
  seat: Seat | null,
  motions: readonly { waves: readonly { centre: Vec3 }[] }[],
): PlanWindow {
  const speakers = motions.flatMap(({ waves }) => waves.map(({ centre }) => fromAbove(centre)));
  const listener = seat ? [seat.head, seat.ears.left, seat.ears.right].map(fromAbove) : [];
  const must = [...speakers, ...listener];
  if (car.outline.length + must.length === 0)
    throw new Error('windowOf: expected a cabin, a seat or a speaker to look at, got none');
  const across = [...car.outline, ...must].map(([x]) => x);
  const along = (spots: readonly (readonly [number, number])[]) => spots.map(([, y]) => y);
  const tail = Math.max(...along(car.outline));
  // Without a listener all of the car is of interest.
  const rear = listener.length > 0 ? Math.max(...along(listener)) + BEHIND : tail + ROOM;
  return {
    left: Math.min(...across) - ROOM,
    right: Math.max(...across) + ROOM,
    front: Math.min(...along([...car.outline, ...must])) - ROOM,
    rear: Math.max(Math.min(rear, tail + ROOM), ...along(must).map((y) => y + ROOM)),
  };
}
