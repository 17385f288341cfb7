import type { Side } from '../input';
import { mm } from '../map/fits';
import type { GridSpot } from '../map/panel-grid';
import { standAt } from '../map/stand';
import { MEASURED, measureInPlace, measuresOf, SCORE } from './measure-pair';
import type { ReadySearch } from './prepare';
import { hearReflectionsInPlace, type SideHeard } from './side-heard';
import type { FoundPlace, FoundSpot } from './types';

/** A left spot by number with a right one. */
export interface PairAt {
  left: number;
  right: number;
}

/** How far the two speakers of a pair would reach into each other, mm; 0 where they do not. */
export function pairOverlap(
  { movers }: ReadySearch,
  left: SideHeard,
  i: number,
  right: SideHeard,
  j: number,
): number {
  const flanges =
    (movers.left.speaker.body?.flange ?? 0) + (movers.right.speaker.body?.flange ?? 0);
  if (flanges === 0) return 0;
  const d = [0, 1, 2].map(
    (k) => (left.positions[3 * i + k] as number) - (right.positions[3 * j + k] as number),
  ) as [number, number, number];
  return Math.max(0, flanges / 2 - Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]));
}

/** All constraints together. */
export const isFeasible = (
  ready: ReadySearch,
  left: SideHeard,
  i: number,
  right: SideHeard,
  j: number,
): boolean =>
  left.feasible[i] === 1 &&
  right.feasible[j] === 1 &&
  !(ready.limits.fits && pairOverlap(ready, left, i, right, j) > 0);

const measured = new Float64Array(MEASURED);

/** A pair of spots as it is told; its reflections are worked out where that was put off. */
export function foundSpot(
  ready: ReadySearch,
  left: SideHeard,
  i: number,
  leftSpot: GridSpot,
  right: SideHeard,
  j: number,
  rightSpot: GridSpot,
): FoundSpot {
  hearReflectionsInPlace(ready, 'left', leftSpot, left, i);
  hearReflectionsInPlace(ready, 'right', rightSpot, right, j);
  measureInPlace(ready, left, i, right, j, measured);
  const why = [...(left.why[i] ?? []), ...(right.why[j] ?? [])];
  const over = pairOverlap(ready, left, i, right, j);
  if (ready.limits.fits && over > 0)
    why.push(`left and right would reach ${mm(over)} into each other`);
  return {
    ...place(ready, 'left', leftSpot),
    partner: place(ready, 'right', rightSpot),
    feasible: why.length === 0,
    why,
    measures: measuresOf(measured),
    score: measured[SCORE] as number,
  };
}

function place(ready: ReadySearch, side: Side, { panel, u, v }: GridSpot): FoundPlace {
  const { standoff } = ready.movers[side];
  if (!ready.tellsAim) return { panel, u, v, standoff };
  const { aim } = standAt(ready.movers[side], { panel, u, v }, ready.room).speaker;
  return { panel, u, v, standoff, ...(aim && { aim }) };
}
