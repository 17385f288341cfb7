import type { Dimensions } from '../dimensions';

/** Half width of a front seat where there is room for it. Typical value, from memory. */
const SEAT_HALF_WIDTH = 258;
/** Narrower than this nobody sits. */
const LEAST = 170;

/** A front seat stands between console and door trim, as wide as there is room; mm. */
export function frontHalfWidth(d: Dimensions): number {
  const inboard = d.seatOffset - d.consoleWidth / 2 - 6;
  const outboard = d.hipRoom / 2 - d.seatOffset - 6;
  return Math.max(LEAST, Math.min(SEAT_HALF_WIDTH, inboard, outboard));
}
