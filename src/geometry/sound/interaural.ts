import { clamp, degrees, radians } from '../vector';
import { pressureRatio } from './decibels';

/** Radius of the sphere that stands for a head, mm. Source: Hartley & Fry (1921), from memory. */
export const HEAD_RADIUS = 87.5;
/** Ear spacing of the head that radius belongs to, mm: the mean of ANSUR II's head breadths. */
const HEAD_EAR_SPACING = 152;

/** The sphere's radius for a head with this ear spacing, mm. Scaling it so is a choice of ours. */
export const headRadius = (earSpacing: number): number =>
  (HEAD_RADIUS * earSpacing) / HEAD_EAR_SPACING;

/** Below this the ears go by time, above by level, Hz. Source: Rayleigh's duplex theory; CIPIC notes. */
export const TIME_CUE_END_HZ = 1500;

/** From the median plane to the side, −90 to 90: behind counts as its mirror image in front. */
const lateral = (azimuthDeg: number): number => Math.asin(Math.sin(radians(azimuthDeg)));

/**
 * Interaural time of a distant sound at high frequencies, ms, positive when it comes from the
 * right: (a/c)(θ + sin θ). Source: Woodworth & Schlosberg, Experimental Psychology (1954).
 * Limits: a rigid sphere with ears on opposite sides, plane waves, frequencies above some 3 kHz.
 * @param azimuthDeg from straight ahead to the right @param radius mm @param speed mm/ms
 */
export function woodworthTime(azimuthDeg: number, radius: number, speed: number): number {
  const angle = lateral(azimuthDeg);
  return (radius / speed) * (angle + Math.sin(angle));
}

/**
 * The same at low frequencies: 3(a/c) sin θ. Source: G. F. Kuhn, J. Acoust. Soc. Am. 62, 157 (1977).
 * Limits: the same sphere, frequencies below some 500 Hz.
 */
export function kuhnTime(azimuthDeg: number, radius: number, speed: number): number {
  return (3 * radius * Math.sin(lateral(azimuthDeg))) / speed;
}

/**
 * Where two speakers at ±`halfAngleDeg` put a sound the right one plays `levelDifferenceDb` louder,
 * degrees to the right: tan θ / tan θ0 = (R − L)/(R + L).
 * Source: the tangent law, Bernfeld (1973); Pulkki, J. Audio Eng. Soc. 45 (1997). Limits: in phase,
 * a listener on the axis who faces the image, low frequencies.
 */
export function tangentLawDeg(levelDifferenceDb: number, halfAngleDeg: number): number {
  const ratio = pressureRatio(clamp(levelDifferenceDb, -300, 300));
  const share = (ratio - 1) / (ratio + 1);
  return degrees(Math.atan(share * Math.tan(radians(halfAngleDeg))));
}

/**
 * The level difference, right over left, that puts the sound there, dB. Limits and source as above.
 * `null` at the speakers and outside, where no difference does.
 */
export function tangentLawDb(imageDeg: number, halfAngleDeg: number): number | null {
  const share = Math.tan(radians(imageDeg)) / Math.tan(radians(halfAngleDeg));
  return Math.abs(share) < 1 ? 20 * Math.log10((1 + share) / (1 - share)) : null;
}
