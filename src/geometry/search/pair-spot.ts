import type { Side } from '../input';
import { reachOf } from '../map/beside';
import type { GridSpot } from '../map/panel-grid';
import { type Mover, standAt } from '../map/stand';
import type { Vec3 } from '../vector';
import type { GridHeard } from './hear-grid';
import { MEASURED, measureInPlace, measuresOf, penaltiesOf, SCORE } from './measure-pair';
import type { ReadySearch } from './prepare';
import { hearReflectionsInPlace, type SideHeard } from './side-heard';
import type { FoundPlace, FoundSpot } from './types';

/** A left and a right spot, heard: the spots themselves, and their numbers in what was heard. */
export interface HeardSpots {
  left: SideHeard;
  i: number;
  leftSpot: GridSpot;
  right: SideHeard;
  j: number;
  rightSpot: GridSpot;
}

/** Pairs of spots on the grid. */
export const countPairs = ({ mirrored, spots }: ReadySearch): number =>
  spots.left.length * (mirrored ? 1 : spots.right.length);

/** Pair number `n` of the grid. */
export function heardPairAt(
  { mirrored, spots }: ReadySearch,
  { left, right }: GridHeard,
  n: number,
): HeardSpots {
  const across = spots.right.length;
  const i = mirrored ? n : Math.floor(n / across);
  const j = mirrored ? n : n % across;
  const [leftSpot, rightSpot] = [spots.left[i], spots.right[j]];
  if (!leftSpot || !rightSpot) throw new RangeError(`heardPairAt: there is no pair ${n}`);
  return { left, i, leftSpot, right, j, rightSpot };
}

/** Where the two speakers stand. */
export function positionsOf({ left, i, right, j }: HeardSpots): Record<Side, Vec3> {
  const at = ({ positions }: SideHeard, k: number): Vec3 =>
    [positions[3 * k], positions[3 * k + 1], positions[3 * k + 2]] as unknown as Vec3;
  return { left: at(left, i), right: at(right, j) };
}

export const reachOfMover = ({ speaker, standoff }: Mover): number => reachOf(speaker, standoff);

/** Why the two speakers of a pair cannot both stand there; they hardly ever come near each other. */
function misfitsOf(ready: ReadySearch, { left, i, leftSpot, right, j, rightSpot }: HeardSpots) {
  const { movers, room, fits } = ready;
  const x = (left.positions[3 * i] as number) - (right.positions[3 * j] as number);
  const y = (left.positions[3 * i + 1] as number) - (right.positions[3 * j + 1] as number);
  const z = (left.positions[3 * i + 2] as number) - (right.positions[3 * j + 2] as number);
  const reach = reachOfMover(movers.left) + reachOfMover(movers.right);
  if (x * x + y * y + z * z > reach * reach) return [];
  const beside = standAt(movers.right, rightSpot, room);
  const { speaker, placed } = standAt(movers.left, leftSpot, room);
  const alone = fits(speaker, placed).map(({ sentence }) => sentence);
  return fits(speaker, placed, [beside]).filter(({ sentence }) => !alone.includes(sentence));
}

/** All constraints together. */
export const isFeasible = (ready: ReadySearch, pair: HeardSpots): boolean =>
  pair.left.feasible[pair.i] === 1 &&
  pair.right.feasible[pair.j] === 1 &&
  !(ready.limits.fits && misfitsOf(ready, pair).length > 0);

const measured = new Float64Array(MEASURED);

/** A pair of spots as it is told; its reflections are worked out where that was put off. */
export function foundSpot(ready: ReadySearch, pair: HeardSpots): FoundSpot {
  const { left, i, leftSpot, right, j, rightSpot } = pair;
  hearReflectionsInPlace(ready, 'left', leftSpot, left, i);
  hearReflectionsInPlace(ready, 'right', rightSpot, right, j);
  measureInPlace(ready, left, i, right, j, measured);
  const why = [...(left.why[i] ?? []), ...(right.why[j] ?? [])];
  if (ready.limits.fits)
    for (const { sentence } of misfitsOf(ready, pair)) why.push(`left: ${sentence}`);
  return {
    ...place(ready, 'left', leftSpot),
    partner: place(ready, 'right', rightSpot),
    feasible: why.length === 0,
    why,
    measures: measuresOf(measured),
    penalties: penaltiesOf(measured),
    score: measured[SCORE] as number,
  };
}

function place(ready: ReadySearch, side: Side, { panel, u, v }: GridSpot): FoundPlace {
  const { standoff } = ready.movers[side];
  if (!ready.tellsAim) return { panel, u, v, standoff };
  const { aim } = standAt(ready.movers[side], { panel, u, v }, ready.room).speaker;
  return { panel, u, v, standoff, ...(aim && { aim }) };
}
