import type { Thing } from './things';

/** A front of a seat's base is part of that seat: its own seat is no obstacle to it. */
export function isOwnSeat(thing: Thing, panel: string | undefined): boolean {
  const side = panel?.match(/^seat-base-(left|right)$/)?.[1];
  return (
    side !== undefined && (thing.id === `seat-front-${side}` || thing.id === `seat-frame-${side}`)
  );
}
