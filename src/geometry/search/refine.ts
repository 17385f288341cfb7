import { patchPartials } from '../cabin/patch';
import type { Side } from '../input';
import { twinOf } from '../map/beside';
import type { GridSpot } from '../map/panel-grid';
import { spotSide } from '../map/spot-side';
import { clamp, distance, length, type Vec3 } from '../vector';
import { MEASURED, measureInPlace, SCORE } from './measure-pair';
import { type HeardSpots, isFeasible } from './pair-spot';
import type { ReadySearch } from './prepare';
import { hearSideInPlace, newSideHeard, type SideHeard } from './side-heard';

/** A pair of spots anywhere on the panels, heard. */
export interface HeardPair {
  spots: Record<Side, GridSpot>;
  heard: Record<Side, SideHeard>;
  positions: Record<Side, Vec3>;
  score: number;
}

/** Steps end here, mm. */
const FINEST = 1;
/** Moves tried at one length of step. */
const MOVES = 6;
const WAYS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const;

/** As it is told. */
export const heardSpots = ({ spots, heard }: Pick<HeardPair, 'spots' | 'heard'>): HeardSpots => ({
  left: heard.left,
  i: 0,
  leftSpot: spots.left,
  right: heard.right,
  j: 0,
  rightSpot: spots.right,
});

const measured = new Float64Array(MEASURED);

const positionOf = ({ positions }: SideHeard): Vec3 =>
  [positions[0], positions[1], positions[2]] as unknown as Vec3;

/** @returns `null` where the pair is not feasible */
export function hearPair(ready: ReadySearch, spots: Record<Side, GridSpot>): HeardPair | null {
  const heard = {
    left: newSideHeard(1, ready.seats.length),
    right: newSideHeard(1, ready.seats.length),
  };
  const wish = { whole: false, reflections: ready.wants.firstReflectionTime > 0 };
  for (const side of ['left', 'right'] as const) {
    hearSideInPlace(ready, side, spots[side], heard[side], 0, wish);
    if (heard[side].feasible[0] !== 1) return null;
  }
  if (!isFeasible(ready, heardSpots({ spots, heard }))) return null;
  measureInPlace(ready, heard.left, 0, heard.right, 0, measured);
  return {
    spots,
    heard,
    positions: { left: positionOf(heard.left), right: positionOf(heard.right) },
    score: measured[SCORE] as number,
  };
}

/** How different two pairs of spots are, mm: by the speaker that stands farther from the other's. */
export const apartOf = (a: Record<Side, Vec3>, b: Record<Side, Vec3>): number =>
  Math.max(distance(a.left, b.left), distance(a.right, b.right));

/**
 * Walks downhill from a pair of spots, in steps from half the grid's down to a millimetre along the
 * panels, and never to a worse score: a compass search. Mirrored spots move together, others one
 * after the other.
 * @param judge what is walked down; Infinity where a pair may not stand for other reasons
 */
export function refinePair(
  ready: ReadySearch,
  start: HeardPair,
  judge: (pair: HeardPair) => number,
): HeardPair {
  let best = { pair: start, cost: judge(start) };
  const movable: readonly Side[] = ready.mirrored ? ['left'] : ['left', 'right'];
  for (let step = ready.step / 2; ; step = Math.max(FINEST, step / 2)) {
    for (let move = 0; move < MOVES; move++) {
      let better: typeof best | null = null;
      for (const side of movable)
        for (const [a, b] of WAYS) {
          const next = moved(ready, best.pair.spots, side, a * step, b * step);
          const pair = next && hearPair(ready, next);
          const cost = pair ? judge(pair) : Infinity;
          if (pair && cost < (better ?? best).cost) better = { pair, cost };
        }
      if (!better) break;
      best = better;
    }
    if (step <= FINEST) return best.pair;
  }
}

/** `null` where the spot would leave its panel's side of the car, or would not move. */
function moved(
  { room, mirrored }: ReadySearch,
  spots: Record<Side, GridSpot>,
  side: Side,
  alongU: number,
  alongV: number,
): Record<Side, GridSpot> | null {
  const { panel: id, u, v } = spots[side];
  const panel = room.panelById.get(id);
  if (!panel) return null;
  const { du, dv } = patchPartials(panel.patch, u, v);
  const by = (mm: number, size: number) => (size > 0 ? mm / size : 0);
  const next = {
    panel: id,
    u: clamp(u + by(alongU, length(du)), 0, 1),
    v: clamp(v + by(alongV, length(dv)), 0, 1),
  };
  if (next.u === u && next.v === v) return null;
  if (spotSide(panel, next.u, next.v) !== side) return null;
  if (mirrored) return { left: next, right: twinOf(next) };
  return { ...spots, [side]: next };
}
