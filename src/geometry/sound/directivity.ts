import { clamp, radians } from '../vector';
import { besselJ1 } from './bessel';
import { decibels } from './decibels';

/** Argument at which 2J1(x)/x is 1/√2, half power: computed from the piston's formula. */
export const HALF_POWER_ARGUMENT = 1.61634;

/**
 * The piston's argument x = ka·sin θ, a being half the effective radiating diameter.
 * Beyond 90° it stays at its value there: behind the baffle is outside the model, an assumption.
 * @param diaphragm mm @param speed mm/ms
 */
function pistonArgument(
  diaphragm: number,
  frequencyHz: number,
  offAxisDeg: number,
  speed: number,
): number {
  const cyclesPerMs = frequencyHz / 1000;
  const angle = clamp(Math.abs(offAxisDeg), 0, 90);
  return ((Math.PI * cyclesPerMs * diaphragm) / speed) * Math.sin(radians(angle));
}

/**
 * Far-field pressure of a rigid circular piston in an infinite flat baffle, relative to on axis:
 * D = 2J1(x)/x, x = ka·sin θ. 1 on axis, negative in every second lobe.
 * Source: Beranek & Mellow, Acoustics; Kinsler et al., Fundamentals of Acoustics.
 * Limits: a real cone breaks up and a dome is not flat; a pillar or door is no infinite baffle;
 * beyond 90° the value at 90° is kept.
 * @param diaphragm effective radiating diameter, mm @param speed mm/ms
 */
export function pistonDirectivity(
  diaphragm: number,
  frequencyHz: number,
  offAxisDeg: number,
  speed: number,
): number {
  const x = pistonArgument(diaphragm, frequencyHz, offAxisDeg, speed);
  return x < 1e-8 ? 1 : (2 * besselJ1(x)) / x;
}

/** The same as a level re on axis, dB, ≤ 0; at a null the floor of `tolerance.ts`. */
export function pistonDirectivityDb(
  diaphragm: number,
  frequencyHz: number,
  offAxisDeg: number,
  speed: number,
): number {
  return decibels(pistonDirectivity(diaphragm, frequencyHz, offAxisDeg, speed));
}

/**
 * Frequency at which the piston has lost half its power (3.01 dB) at an angle, Hz; above it the
 * loss there is greater. `null` on the axis, where nothing is ever lost.
 */
export function halfPowerFrequencyHz(
  diaphragm: number,
  offAxisDeg: number,
  speed: number,
): number | null {
  const perHz = pistonArgument(diaphragm, 1, offAxisDeg, speed);
  return perHz > 0 ? HALF_POWER_ARGUMENT / perHz : null;
}

/**
 * Where the speaker begins to beam, Hz: half its power is lost at 90°, that is at ka = 1.616.
 * Which loss counts as beaming is a convention, and this one is ours: common practice, no source,
 * also knows ka = 1, ka = 2 and "one diameter to the wavelength", ka = π.
 */
export function beamingFrequencyHz(diaphragm: number, speed: number): number {
  return HALF_POWER_ARGUMENT / pistonArgument(diaphragm, 1, 90, speed);
}

/**
 * Angles of the listening window off the axis, degrees, and how many directions lie at each: the
 * axis, ±10° up and down, ±10°, ±20°, ±30° to the sides. Source: ANSI/CTA-2034-A.
 */
const LISTENING_WINDOW = [
  [0, 1],
  [10, 4],
  [20, 2],
  [30, 2],
] as const;

/**
 * Mean level over the listening window of ANSI/CTA-2034-A, dB: the mean of squared pressures over
 * its nine directions (squared: from memory), for a speaker that radiates alike all round its axis.
 * @param levelDbAt level at an angle off the axis, dB re on axis
 */
export function listeningWindowDb(levelDbAt: (offAxisDeg: number) => number): number {
  let power = 0;
  let directions = 0;
  for (const [angle, count] of LISTENING_WINDOW) {
    power += count * 10 ** (levelDbAt(angle) / 10);
    directions += count;
  }
  return 10 * Math.log10(power / directions);
}
