import type { Air } from '../input';

/**
 * Coefficients a0…a15 of Cramer's equation 15.
 * Source: O. Cramer, J. Acoust. Soc. Am. 93, 2510 (1993); the same as IEC 61094-2:2009, Annex F.
 */
const A = [
  331.5024, 0.603055, -0.000528, 51.471935, 0.1495874, -0.000782, -1.82e-7, 3.73e-8, -2.93e-10,
  -85.20931, -0.228525, 5.91e-5, -2.835149, -2.15e-13, 29.179762, 0.000486,
] as const;

/** Mole fraction of carbon dioxide: the standard's reference value. Source: IEC 61094-2 Annex F. */
export const CO2_FRACTION = 0.0004;

/** Range over which Cramer's equation holds, °C (same source). */
export const CRAMER_RANGE_C = [0, 30] as const;

/** Speed of sound at 20 °C, mm/ms. Source: ISO 9613-1:1993, annex A. */
const ISO_REFERENCE_SPEED = 343.2;
/** Reference temperature, K. Source: the same. */
const ISO_REFERENCE_K = 293.15;
const KELVIN = 273.15;

/**
 * Cramer's equation as printed, without regard to its range.
 * @param temperatureC °C  @param pressurePa Pa  @param humidityPercent relative humidity, %
 * @param co2 mole fraction
 * @returns m/s, which is mm/ms
 */
export function cramerSpeed(
  temperatureC: number,
  pressurePa: number,
  humidityPercent: number,
  co2: number = CO2_FRACTION,
): number {
  const t = temperatureC;
  const p = pressurePa;
  const kelvin = t + KELVIN;
  // Enhancement factor and saturation vapour pressure as in the same annex.
  const f = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const saturation = Math.exp(
    1.2811805e-5 * kelvin * kelvin - 1.9509874e-2 * kelvin + 34.04926034 - 6353.6311 / kelvin,
  );
  const w = ((humidityPercent / 100) * f * saturation) / p;
  return (
    A[0] +
    A[1] * t +
    A[2] * t * t +
    (A[3] + A[4] * t + A[5] * t * t) * w +
    (A[6] + A[7] * t + A[8] * t * t) * p +
    (A[9] + A[10] * t + A[11] * t * t) * co2 +
    A[12] * w * w +
    A[13] * p * p +
    A[14] * co2 * co2 +
    A[15] * w * p * co2
  );
}

/**
 * Speed of sound by temperature alone, m/s.
 * Source: ISO 9613-1:1993, c = 343.2·√(T/293.15).
 */
export function isoSpeed(temperatureC: number): number {
  return ISO_REFERENCE_SPEED * Math.sqrt((temperatureC + KELVIN) / ISO_REFERENCE_K);
}

export interface SpeedOfSound {
  /** mm/ms, the same number as m/s. */
  speed: number;
  /** False outside 0–30 °C, where ISO 9613-1's temperature law carries Cramer's end value on. */
  withinCramerRange: boolean;
}

/**
 * Speed of sound in humid air: Cramer's equation from 0 to 30 °C. Outside, the value at the nearer
 * end is scaled by ISO 9613-1's law, so there is no jump and humidity keeps its effect at the end.
 */
export function speedOfSound(air: Air): SpeedOfSound {
  const [low, high] = CRAMER_RANGE_C;
  const t = Math.min(high, Math.max(low, air.temperatureC));
  const inside = cramerSpeed(t, air.pressureKPa * 1000, air.relativeHumidityPercent);
  if (t === air.temperatureC) return { speed: inside, withinCramerRange: true };
  return {
    speed: (inside * isoSpeed(air.temperatureC)) / isoSpeed(t),
    withinCramerRange: false,
  };
}
