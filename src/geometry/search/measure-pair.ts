import { penalty, SPOT_AIMS, type SpotAim } from '../map/penalty';
import type { ReadySearch } from './prepare';
import { ANGLE, LOSS, PATH, PER_SEAT, REFLECTION, type SideHeard } from './side-heard';
import type { SpotMeasures, SpotPenalties } from './types';

/** Which of two measures is worse, as they are told. */
export const isWorse = (aim: SpotAim, value: number | null, than: number | null): boolean =>
  isWorseNumber(aim, value ?? Number.NaN, than ?? Number.NaN);

/** A left and a right spot together: measures in the order of `SPOT_AIMS`, the score, penalties. */
export const MEASURED = 2 * SPOT_AIMS.length + 1;
export const SCORE = SPOT_AIMS.length;
export const PENALTIES = SCORE + 1;

const NUMBER_OF: Readonly<Record<Exclude<SpotAim, 'difference'>, number>> = {
  offAxisDeg: ANGLE,
  obstructionDb: LOSS,
  firstReflectionTime: REFLECTION,
};

const orNull = (x: number): number | null => (Number.isNaN(x) ? null : x);

/** Which of two values is worse; NaN stands for none, which is best for a reflection only. */
function isWorseNumber(aim: SpotAim, value: number, than: number): boolean {
  if (aim === 'firstReflectionTime') return !Number.isNaN(value) && !(value >= than);
  return Number.isNaN(value) ? !Number.isNaN(than) : value > than;
}

/**
 * Measures of left spot `i` with right spot `j`, worst over the seats and over the two, and their
 * score and penalties, into `out`. The score is the sum over the aims of weight × penalty, the penalty of each
 * (see `penalty`) being the largest over the seats of seat weight × penalty there, with the largest
 * seat weight as 1. With one seat, or seats of one weight, it follows from the measures alone.
 */
export function measureInPlace(
  { seats, weights, wants }: Pick<ReadySearch, 'seats' | 'weights' | 'wants'>,
  left: SideHeard,
  i: number,
  right: SideHeard,
  j: number,
  out: Float64Array,
): void {
  const n = seats.length;
  let score = 0;
  for (let a = 0; a < SPOT_AIMS.length; a++) {
    const aim = SPOT_AIMS[a] as SpotAim;
    let worst = Number.NaN;
    let most = 0;
    for (let s = 0; s < n; s++) {
      const l = PER_SEAT * (n * i + s);
      const r = PER_SEAT * (n * j + s);
      let here: number;
      if (aim === 'difference')
        here = Math.abs((left.numbers[l + PATH] as number) - (right.numbers[r + PATH] as number));
      else {
        const at = NUMBER_OF[aim];
        const [x, y] = [left.numbers[l + at] as number, right.numbers[r + at] as number];
        here = isWorseNumber(aim, y, x) ? y : x;
      }
      if (s === 0 || isWorseNumber(aim, here, worst)) worst = here;
      if (wants[aim] > 0)
        most = Math.max(most, (weights[s] as number) * penalty(aim, orNull(here)));
    }
    out[a] = worst;
    const cost = wants[aim] * most;
    out[PENALTIES + a] = cost;
    score += cost;
  }
  out[SCORE] = score;
}

export function measuresOf(measured: Float64Array): SpotMeasures {
  return Object.fromEntries(
    SPOT_AIMS.map((aim, a) => [aim, orNull(measured[a] as number)]),
  ) as SpotMeasures;
}

export function penaltiesOf(measured: Float64Array): SpotPenalties {
  return Object.fromEntries(
    SPOT_AIMS.map((aim, a) => [aim, measured[PENALTIES + a] as number]),
  ) as SpotPenalties;
}

/** A measure so turned that smaller is better, and none is put in its place. */
export function costOf(aim: SpotAim, measure: number): number {
  if (aim === 'firstReflectionTime') return Number.isNaN(measure) ? -Infinity : -measure;
  return Number.isNaN(measure) ? Infinity : measure;
}
