/**
 * The value that a χ² of so many degrees of freedom stays below with this probability, by Wilson and
 * Hilferty: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.17; within 0.6 % at 95 %
 * and 1.3 % at 99.9 % from 3
 * degrees on; at 1 and 2 it is worked out exactly.
 * @throws RangeError for degrees below 1, or a share not told here (0.95 and 0.999)
 */
export function chiSquareBound(share: 0.95 | 0.999, degrees: number): number {
  const z = NORMAL[share];
  if (!(degrees >= 1) || z === undefined)
    throw new RangeError(`chiSquareBound: expected 1 degree at least, got ${degrees} at ${share}`);
  if (degrees === 1) return TWO_SIDED[share] ** 2;
  if (degrees === 2) return -2 * Math.log(1 - share);
  const part = 2 / (9 * degrees);
  return degrees * (1 - part + z * Math.sqrt(part)) ** 3;
}

/** Normal quantiles, one-sided and two-sided: the same handbook, tables 26.5 and 26.6. */
const NORMAL: Readonly<Record<number, number>> = { 0.95: 1.644854, 0.999: 3.090232 };
const TWO_SIDED: Readonly<Record<0.95 | 0.999, number>> = { 0.95: 1.959964, 0.999: 3.290527 };
