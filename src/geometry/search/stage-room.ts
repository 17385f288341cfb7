/** Whether speakers of several moving pairs leave each other room, and together the view. */

import type { Plan } from '../fit/obstruction-angle';
import { pillarOf } from '../fit/pillar-sight';
import type { Side } from '../input';
import type { Standing } from '../map/fits';
import { standAt } from '../map/stand';
import { distance } from '../vector';
import { type HeardSpots, positionsOf, reachOfMover } from './pair-spot';
import type { ReadySearch } from './prepare';
import { podIn, viewProblem } from './view-limit';

const SIDES = ['left', 'right'] as const;

const standingAt = (ready: ReadySearch, side: Side, spots: HeardSpots): Standing =>
  standAt(ready.movers[side], side === 'left' ? spots.leftSpot : spots.rightSpot, ready.room);

/** Nearer than this a speaker of the one may touch one of the other; `null`: nobody asks. */
export function reachBetween(one: ReadySearch, other: ReadySearch): number | null {
  if (!one.limits.fits && !other.limits.fits) return null;
  const reach = ({ movers: { left, right } }: ReadySearch) =>
    Math.max(reachOfMover(left), reachOfMover(right));
  return reach(one) + reach(other);
}

/** Whether two pairs can both stand there; they seldom come near enough for a close look. */
export function standBeside(
  one: ReadySearch,
  a: HeardSpots,
  other: ReadySearch,
  b: HeardSpots,
): boolean {
  const reach = reachBetween(one, other);
  if (reach === null) return true;
  const [here, there] = [positionsOf(a), positionsOf(b)];
  if (!SIDES.some((side) => SIDES.some((across) => distance(here[side], there[across]) <= reach)))
    return true;
  const beside = SIDES.map((side) => standingAt(other, side, b));
  return SIDES.every((side) => {
    const { speaker, placed } = standingAt(one, side, a);
    if (one.fits.fits(speaker, placed, beside)) return true;
    // Whatever else keeps it from fitting was looked at before: only the other pair counts here.
    const alone = one.fits(speaker, placed).map(({ sentence }) => sentence);
    return one.fits(speaker, placed, beside).every(({ sentence }) => alone.includes(sentence));
  });
}

/**
 * Whether pods of several pairs on one pillar keep within each pair's limit of the view together;
 * alone each does already. Questions are kept: the same few pods come up again and again.
 */
export function createViewCheck(
  pairs: readonly ReadySearch[],
): (spots: readonly HeardSpots[]) => boolean {
  if (!pairs.some(({ view }) => view)) return () => true;
  const pods = new Map<string, Plan[]>();
  const known = new Map<string, boolean>();
  return (spots) =>
    SIDES.every((side) => {
      const on = pairs.flatMap((ready, p) => {
        const both = spots[p] as HeardSpots;
        const { panel, u, v } = side === 'left' ? both.leftSpot : both.rightSpot;
        if (panel !== pillarOf(side)) return [];
        return [{ ready, both, key: `${p} ${side} ${u} ${v}` }];
      });
      if (on.length < 2) return true;
      const whole = on.map(({ key }) => key).join();
      let free = known.get(whole);
      if (free === undefined) {
        const placed = on.map(({ ready, both, key }) => {
          const standing = standingAt(ready, side, both);
          let pod = pods.get(key);
          if (!pod) {
            const view = pairs.find((one) => one.view)?.view;
            pod = view ? podIn(view, standing.speaker, standing.placed) : [];
            pods.set(key, pod);
          }
          return { view: ready.view, standing, pod };
        });
        free = placed.every(({ view, standing: { speaker, placed: at } }, p) => {
          const beside = placed.flatMap(({ pod }, q) => (q === p ? [] : pod));
          return !view || viewProblem(view, speaker, at, beside) === null;
        });
        known.set(whole, free);
      }
      return free;
    });
}
