import type { Dimensions } from '../dimensions';

/** Half width of a front seat where there is room for it. Typical value, from memory. */
const SEAT_HALF_WIDTH = 258;
/** Narrower than this nobody sits. */
const LEAST = 160;

/** Air beside the seat, at the console and at the door. Typical values, from memory. */
const AT_CONSOLE = 6;
const AT_DOOR = 24;
/** How far up from sill to waist the cushion meets the door, which leans in towards its sill. */
const CUSHION_SHARE = 0.35;

/** A front seat stands between console and door trim, as wide as there is room; mm. */
export function frontHalfWidth(d: Dimensions): number {
  const sill = d.tunnelWidth / 2 + d.footwellWidth;
  const door = sill + CUSHION_SHARE * (d.hipRoom / 2 - sill);
  const inboard = d.seatOffset - Math.max(d.consoleWidth, d.tunnelWidth) / 2 - AT_CONSOLE;
  const outboard = Math.min(door, d.hipRoom / 2) - d.seatOffset - AT_DOOR;
  return Math.max(LEAST, Math.min(SEAT_HALF_WIDTH, inboard, outboard));
}
