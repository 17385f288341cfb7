import { FITS, type MapQuantity, NOT_ASKED, type SpotMap } from '../../../geometry';
import { PAINTED_UNITS, paintedAt } from '../../../plan/painted';
import { type LengthUnit, MM_PER_INCH } from '../../../plan/units';

export interface PaintScale {
  /** Values at the two ends of the colours, in the map's own unit. */
  range: readonly [number, number];
  /** Where lines of equal value run: round numbers in the unit the user reads. */
  levels: readonly number[];
  /** Some painted values lie beyond that end. */
  below: boolean;
  above: boolean;
}

/** At most this many bands of colour between lines: more cannot be told apart. Choice of ours. */
const MOST_BANDS = 9;
/** Of the spots that fit so many lie beyond either end of the colours: a few far off would leave all the rest one colour. Choice of ours. */
const TAIL = 0.02;
/** Fewer spots than this do not set a scale of their own. */
const ENOUGH = 40;

/** The smallest of 1, 2, 5, 10, 20, … (and 0.5, 0.2, …) that is not below `size`. */
export function niceStep(size: number): number {
  if (!(size > 0)) return 1;
  const ten = 10 ** Math.floor(Math.log10(size));
  for (const k of [1, 2, 5]) if (k * ten >= size * (1 - 1e-9)) return k * ten;
  return 10 * ten;
}

/**
 * Colours and lines for what a map holds so far, by the spots where the speaker fits (all of them
 * while few do). `null` while nothing has a number.
 */
export function paintScale(
  map: SpotMap,
  quantity: MapQuantity,
  unit: LengthUnit,
): PaintScale | null {
  const fitting: number[] = [];
  const all: number[] = [];
  for (let k = 0; k < map.done.length; k++) {
    const value = map.done[k] === 1 ? paintedAt(map, quantity, k) : Number.NaN;
    if (!Number.isFinite(value)) continue;
    all.push(value);
    if (map.fit[k] === FITS || map.fit[k] === NOT_ASKED) fitting.push(value);
  }
  const counting = fitting.length >= ENOUGH ? fitting : all;
  if (counting.length === 0) return null;
  const per = PAINTED_UNITS[quantity] === 'length' && unit === 'in' ? MM_PER_INCH : 1;
  const sorted = Float64Array.from(counting).sort();
  const at = (share: number) => (sorted[Math.round(share * (sorted.length - 1))] as number) / per;
  const [low, high] = [at(TAIL), at(1 - TAIL)];
  // Where nought is near, the colours begin at nought.
  const from = low >= 0 && low < 0.4 * high ? 0 : low;
  const step = niceStep(Math.max(high - from, 1e-9) / MOST_BANDS);
  const first = Math.floor(from / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  const levels: number[] = [];
  for (let k = first + 1; k < last; k++) levels.push(k * step * per);
  const range = [first * step * per, last * step * per] as const;
  return {
    range,
    levels,
    below: all.some((value) => value < range[0]),
    above: all.some((value) => value > range[1]),
  };
}
