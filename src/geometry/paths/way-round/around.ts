/** The shortest strings round given bodies, whatever else may stand about. */
import type { Vec3 } from '../../vector';
import type { Body } from './body';
import { dropIdle } from './drop-idle';
import { type Frame, type Placed, SHEETS } from './frame';
import { placeIn, rimLengths } from './half-planes';
import { pullTaut } from './pull-taut';
import { bendsIn, rimBends } from './section';
import { type Sheet, sheetAlong } from './sheet-along';
import { type Bend, stringLength } from './string';

export interface Taut {
  bends: Bend[];
  length: number;
  /** Where the string may still get shorter over other edges: asked for when it is next in line. */
  follow?: () => Taut;
}

/** Strings followed up: one in each valley of the lengths over the half planes. */
const VALLEYS = 3;
/** How often a string may change the edges it runs over. */
const SLIPS = 4;
/** A string's detour in its half plane is hardly ever this many times what it becomes. */
const MUCH = 1.5;
/** A gain below this is none, mm. */
const GAIN = 1e-3;

/**
 * Strings over all of the bodies on one side or another of the line, shortest first. For one convex
 * body the first is its shortest way round: the best half plane finds the side, and the string,
 * pulled taut and let slip over the edges' ends, finds its edges.
 * @param first the one of these that lies in the best half plane, where that was asked for alone before
 */
export function stringsRound(
  frame: Frame,
  from: Vec3,
  to: Vec3,
  bodies: readonly Body[],
  { followed = VALLEYS, first = null }: { followed?: number; first?: Taut | null } = {},
): Taut[] {
  const placed = bodies.map((body) => placeIn(frame, body));
  const lengths = rimLengths(frame, placed);
  const valleys: { sheet: number; length: number }[] = [];
  for (let k = 0; k < SHEETS; k++) {
    const length = lengths[k] as number;
    const before = lengths[(k + SHEETS - 1) % SHEETS] as number;
    if (length < before && length <= (lengths[(k + 1) % SHEETS] as number))
      valleys.push({ sheet: k, length });
  }
  valleys.sort((one, other) => one.length - other.length);
  // All alike round a body of revolution: any of them will do.
  if (valleys.length === 0) valleys.push({ sheet: 0, length: lengths[0] as number });
  let best = Infinity;
  return valleys
    .slice(0, followed)
    .map(({ sheet, length }, i): Taut => {
      if (i === 0 && first) {
        best = first.length;
        return first;
      }
      const bends = rimBends(frame, placed, sheet);
      // Far longer than the best already: only if it comes to that.
      if (length - frame.reach > MUCH * (best - frame.reach))
        return { bends, length, follow: () => follow(from, to, frame, placed, bends) };
      const taut = follow(from, to, frame, placed, bends);
      best = Math.min(best, taut.length);
      return taut;
    })
    .sort((a, b) => a.length - b.length);
}

/** Pulls a string taut, and over to neighbouring edges while that shortens it. */
function follow(
  from: Vec3,
  to: Vec3,
  frame: Frame,
  placed: readonly Placed[],
  start: readonly Bend[],
): Taut {
  let bends = dropIdle(from, start, to);
  let length = stringLength(from, bends, to);
  for (let k = 0; k < SLIPS; k++) {
    if (!bends.some(({ part }) => part <= 0 || part >= 1)) break;
    const sheet: Sheet | null = sheetAlong(frame, pullTaut(from, bends, to, 0.6));
    if (!sheet) break;
    const next = dropIdle(from, bendsIn(frame, placed, sheet), to);
    const shorter = stringLength(from, next, to);
    if (!(shorter < length - GAIN) || next.length === 0) break;
    bends = next;
    length = shorter;
  }
  return { bends, length };
}
