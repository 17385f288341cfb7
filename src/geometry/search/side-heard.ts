/** What one side's speaker does at its spots, as plain typed arrays that a worker can hand over. */
import type { Seat } from '../cabin/model';
import type { Side } from '../input';
import { firstReflectionTime, hearSpot } from '../map/hear-spot';
import type { GridSpot } from '../map/panel-grid';
import { standAt } from '../map/stand';
import { spotOf } from '../stage/arrivals';
import { offAxis } from '../stage/off-axis';
import { sub } from '../vector';
import type { ReadySearch } from './prepare';
import { viewProblem } from './view-limit';

/** Numbers kept for each spot and seat, in this order; NaN where there is none. */
export const PER_SEAT = 4;
export const PATH = 0;
export const ANGLE = 1;
export const LOSS = 2;
export const REFLECTION = 3;

/** How much of a spot is known. */
export const UNHEARD = 0;
/** Only that it is not feasible. */
export const REFUSED = 1;
/** All but reflections. */
export const LINES = 2;
export const WHOLE = 3;

export interface SideHeard {
  known: Uint8Array;
  feasible: Uint8Array;
  /** {@link PER_SEAT} numbers for each seat of each spot. */
  numbers: Float64Array;
  /** x, y, z of each spot. */
  positions: Float64Array;
  /** Why a spot is not feasible, by its number; only where everything is to be told. */
  why: Record<number, string[]>;
}

export const newSideHeard = (spots: number, seats: number): SideHeard => ({
  known: new Uint8Array(spots),
  feasible: new Uint8Array(spots),
  numbers: new Float64Array(PER_SEAT * seats * spots).fill(Number.NaN),
  positions: new Float64Array(3 * spots),
  why: {},
});

/**
 * Listens to one spot and writes what it hears under number `k`. The cheapest reason against a spot
 * is asked first; what is refused is heard no further unless everything is to be told.
 */
export function hearSideInPlace(
  ready: ReadySearch,
  side: Side,
  spot: GridSpot,
  heard: SideHeard,
  k: number,
  wish: { whole: boolean; reflections: boolean },
): void {
  const { room, seats, limits } = ready;
  const { speaker, placed } = standAt(ready.movers[side], spot, room);
  heard.positions.set(placed.position, 3 * k);
  const why: string[] = [];
  const isOver = () => why.length > 0 && !wish.whole;
  const say = (sentence: string) => why.push(`${side}: ${sentence}`);

  if (limits.maxOffAxisDeg !== null)
    for (const seat of seats) {
      const angle = placed.axis && offAxis(placed.axis, sub(seat.head, placed.position));
      if (!angle) say(`no angle towards ${seat.id} is known`);
      else if (angle.offAxisDeg > limits.maxOffAxisDeg)
        say(
          `${angle.offAxisDeg.toFixed(1)}° off axis at ${seat.id}, more than ${limits.maxOffAxisDeg}°`,
        );
      if (isOver()) break;
    }
  if (ready.view && !isOver()) {
    const problem = viewProblem(ready.view, speaker, placed);
    if (problem) say(problem);
  }
  if (limits.free && !isOver())
    for (const seat of seats) {
      const ids = room.caster.crossings(
        placed.position,
        seat.head,
        seat.id,
        spotOf(speaker, placed),
      );
      if (ids.length > 0) say(`${inTheWay(ready, ids)} between it and ${seat.id}`);
      if (isOver()) break;
    }
  if (!isOver()) {
    // The quick question is enough where nobody asks why.
    if (!wish.whole && limits.fits) {
      if (!ready.fits.fits(speaker, placed)) say('does not fit');
    } else
      for (const { sentence, hard } of ready.fits(speaker, placed))
        if (hard || limits.fits) say(sentence);
  }

  heard.feasible[k] = why.length === 0 ? 1 : 0;
  if (why.length > 0 && !wish.whole) {
    heard.known[k] = REFUSED;
    return;
  }
  if (why.length > 0) heard.why[k] = why;
  seats.forEach((seat, s) => {
    const { path, offAxisDeg, obstructionDb } = hearSpot(speaker, placed, seat, room);
    const at = PER_SEAT * (seats.length * k + s);
    heard.numbers[at + PATH] = path;
    heard.numbers[at + ANGLE] = offAxisDeg ?? Number.NaN;
    heard.numbers[at + LOSS] = obstructionDb ?? Number.NaN;
    if (wish.reflections)
      heard.numbers[at + REFLECTION] =
        firstReflectionTime(speaker, placed, seat, room) ?? Number.NaN;
  });
  heard.known[k] = wish.reflections ? WHOLE : LINES;
}

/** "the steering wheel and the left knee stand" */
function inTheWay({ room: { cabin } }: ReadySearch, ids: readonly string[]): string {
  const names = ids.map((id) => {
    const found =
      cabin.obstacles.find((obstacle) => obstacle.id === id) ??
      cabin.panels.find((panel) => panel.id === id);
    return found && !found.given ? `the ${found.name}` : `"${id}"`;
  });
  const last = names.pop() ?? '';
  return names.length > 0 ? `${names.join(', ')} and ${last} stand` : `${last} stands`;
}

/** The reflections of a spot whose lines are known already. */
export function hearReflectionsInPlace(
  ready: ReadySearch,
  side: Side,
  spot: GridSpot,
  heard: SideHeard,
  k: number,
): void {
  if (heard.known[k] !== LINES) return;
  const { speaker, placed } = standAt(ready.movers[side], spot, ready.room);
  ready.seats.forEach((seat: Seat, s) => {
    const time = firstReflectionTime(speaker, placed, seat, ready.room);
    heard.numbers[PER_SEAT * (ready.seats.length * k + s) + REFLECTION] = time ?? Number.NaN;
  });
  heard.known[k] = WHOLE;
}
