/** What an edge in, or close to, the straight line takes from the sound. */

/** More than this a single edge does not take, dB: usual with Kurze and Anderson's formula. */
export const OBSTRUCTION_CAP_DB = 24;

/** Loss on the border of the shadow, dB. */
const BORDER_DB = 5;

/**
 * Something this near the line, in first Fresnel radii, counts as grazing: the clearance for free
 * propagation of Recommendation ITU-R P.526, from memory.
 */
export const GRAZING_RADII = 0.6;

/** An edge missed by a Fresnel number below minus this takes nothing: its loss is 0 from −0.192 on. */
export const FADED_FRESNEL = 0.2;

const MM_PER_MS_TO_MM_PER_S = 1000;

/** Wavelength, mm; `speed` in mm/ms. */
export function wavelength(frequencyHz: number, speed: number): number {
  return (speed * MM_PER_MS_TO_MM_PER_S) / frequencyHz;
}

/**
 * Fresnel number N = 2δf/c.
 * Source: Kurze & Anderson (1971), as given in Bies & Hansen, Engineering Noise Control.
 * @param detour way round − straight line, mm; negative for an edge that is missed: then minus what
 * the way over that edge is longer than the straight line
 * @param speed mm/ms
 */
export function fresnelNumber(detour: number, frequencyHz: number, speed: number): number {
  return (2 * detour) / wavelength(frequencyHz, speed);
}

/**
 * Loss behind (N ≥ 0), or just beside (N < 0), the edge of a hard screen, dB, from 0 to
 * {@link OBSTRUCTION_CAP_DB}: 5 + 20 lg(√(2πN) / tanh √(2πN)); for a near miss the same with tan
 * and |N|, which falls to 0 at N ≈ −0.19. An edge formula for hard screens: soft or small bodies
 * take less.
 * Source: Kurze & Anderson 1971, as given in Bies & Hansen, Engineering Noise Control.
 */
export function obstructionDb(fresnel: number): number {
  if (Number.isNaN(fresnel)) throw new RangeError('obstructionDb: expected a number, got NaN');
  const x = Math.sqrt(2 * Math.PI * Math.abs(fresnel));
  // Both quotients go to 1 with x; below this they are 1 to the last digit.
  if (x < 1e-8) return BORDER_DB;
  if (fresnel < 0) {
    if (x >= Math.PI / 2) return 0;
    return Math.max(0, BORDER_DB + 20 * Math.log10(x / Math.tan(x)));
  }
  return Math.min(OBSTRUCTION_CAP_DB, BORDER_DB + 20 * Math.log10(x / Math.tanh(x)));
}

/**
 * Radius of the first Fresnel zone, mm, `before` from one end of a line and `after` from the other:
 * √(λ · before · after / (before + after)). 0 at either end.
 */
export function fresnelRadius(
  before: number,
  after: number,
  frequencyHz: number,
  speed: number,
): number {
  const sum = before + after;
  if (!(sum > 0) || before <= 0 || after <= 0) return 0;
  return Math.sqrt((wavelength(frequencyHz, speed) * before * after) / sum);
}
