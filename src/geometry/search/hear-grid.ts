import type { Side } from '../input';
import type { ReadySearch } from './prepare';
import { hearSideInPlace, newSideHeard, PER_SEAT, type SideHeard, UNHEARD } from './side-heard';
import type { SearchProgress } from './types';

/** What a share of the grid sounds like, both sides; plain data. */
export type GridHeard = Record<Side, SideHeard>;

/** One of several equal shares of the work; left out: all of it. */
export interface SearchShare {
  index: number;
  of: number;
}

export const WHOLE_GRID: SearchShare = { index: 0, of: 1 };

/**
 * Listens to every spot of the grid, or to every `of`-th: neighbours cost alike, so the shares do
 * too. Yields after each spot.
 */
export function* hearGridInSteps(
  ready: ReadySearch,
  { index, of }: SearchShare = WHOLE_GRID,
): Generator<SearchProgress, GridHeard> {
  const { spots, mirrored, seats, all } = ready;
  const wish = { whole: all, reflections: all || ready.wants.firstReflectionTime > 0 };
  const heard: GridHeard = {
    left: newSideHeard(spots.left.length, seats.length),
    right: newSideHeard(spots.right.length, seats.length),
  };
  const hear = (side: Side, k: number) => {
    const spot = spots[side][k];
    if (spot) hearSideInPlace(ready, side, spot, heard[side], k, wish);
  };
  const units = countUnits(ready);
  const total = countHearings(ready, { index, of });
  let done = 0;
  for (let k = index; k < units; k += of) {
    if (!mirrored)
      hear(
        k < spots.left.length ? 'left' : 'right',
        k < spots.left.length ? k : k - spots.left.length,
      );
    else {
      hear('left', k);
      // A pair needs both.
      if (all || heard.left.feasible[k] === 1) hear('right', k);
    }
    done += 1;
    yield { phase: 'spots', done, total };
  }
  return heard;
}

const countUnits = ({ mirrored, spots }: ReadySearch): number =>
  spots.left.length + (mirrored ? 0 : spots.right.length);

/** How many steps listening to a share takes. */
export const countHearings = (ready: ReadySearch, { index, of }: SearchShare): number =>
  Math.max(0, Math.ceil((countUnits(ready) - index) / of));

/** Puts shares of one grid together. */
export function joinShares(shares: readonly GridHeard[]): GridHeard {
  const [first, ...others] = shares;
  if (!first) throw new RangeError('joinShares: expected at least one share, got none');
  const joined: GridHeard = { left: copy(first.left), right: copy(first.right) };
  for (const share of others)
    for (const side of ['left', 'right'] as const) putInPlace(joined[side], share[side]);
  return joined;
}

const copy = (heard: SideHeard): SideHeard => ({
  known: heard.known.slice(),
  feasible: heard.feasible.slice(),
  numbers: heard.numbers.slice(),
  positions: heard.positions.slice(),
  why: { ...heard.why },
});

function putInPlace(into: SideHeard, from: SideHeard): void {
  const spots = from.known.length;
  const perSpot = spots > 0 ? from.numbers.length / spots : PER_SEAT;
  for (let k = 0; k < spots; k++) {
    if (from.known[k] === UNHEARD) continue;
    into.known[k] = from.known[k] as number;
    into.feasible[k] = from.feasible[k] as number;
    into.numbers.set(from.numbers.subarray(perSpot * k, perSpot * (k + 1)), perSpot * k);
    into.positions.set(from.positions.subarray(3 * k, 3 * k + 3), 3 * k);
  }
  Object.assign(into.why, from.why);
}
