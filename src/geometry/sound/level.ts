import { SAME_POINT } from '../tolerance';

/** Distance at which `levelDb` is 0, mm. */
export const LEVEL_REFERENCE = 1000;

/**
 * Spreading loss of the direct sound, dB re 1 m: −20 lg(path / 1 m), 6.021 dB per doubling.
 * Free field and direct sound only; a cabin's total does not follow it.
 * Source: inverse square law, e.g. Kinsler et al., Fundamentals of Acoustics.
 * @returns `null` at no distance, where it has no value
 */
export function spreadingDb(path: number): number | null {
  return path > SAME_POINT ? -20 * Math.log10(path / LEVEL_REFERENCE) : null;
}
