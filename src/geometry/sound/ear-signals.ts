import type { Side } from '../input';
import { direction, distance, dot, mix, sub, type Vec3 } from '../vector';
import { bandEdges } from './bands';
import { type Complex, plus, polar, times } from './complex';
import { headRadius } from './interaural';
import { spherePressure } from './sphere';

/** What reaches both ears at one frequency. */
export interface EarPressures {
  frequencyHz: number;
  left: Complex;
  right: Complex;
}

/** A head as a rigid sphere round the midpoint of its ears. */
export interface SphericalHead {
  centre: Vec3;
  /** mm */
  radius: number;
  /** Unit vector from the centre towards the right ear; the left one is opposite. */
  rightward: Vec3;
}

/** `null` when both ears are in one place. */
export function sphericalHead(ears: Record<Side, Vec3>): SphericalHead | null {
  const rightward = direction(sub(ears.right, ears.left));
  const spacing = distance(ears.left, ears.right);
  if (!rightward) return null;
  return { centre: mix(ears.left, ears.right, 0.5), radius: headRadius(spacing), rightward };
}

/** A source nearer to the head's centre than this many radii is told to be at the head. */
const NEAREST_RADII = 1.2;

/** A source of sound with its channel's delay in ms and its pressure at 1 m by frequency. */
export interface HeardSource {
  position: Vec3;
  delay: number;
  pressureAt(frequencyHz: number): number;
}

/** Whether a source is too near for the spherical head. */
export const isAtHead = ({ centre, radius }: SphericalHead, position: Vec3): boolean =>
  !(distance(centre, position) >= NEAREST_RADII * radius);

/** Frequencies an octave is looked at, evenly over its logarithm. */
const POINTS_PER_OCTAVE = 16;

/** Pressures of all sources together at both ears, over one octave. Sources stand off the head. */
export function octaveAtEars(
  head: SphericalHead,
  sources: readonly HeardSource[],
  octaveHz: number,
  speed: number,
): EarPressures[] {
  const [low, high] = bandEdges(octaveHz, 1);
  const placed = sources.map((source) => {
    const offset = sub(source.position, head.centre);
    const far = distance(source.position, head.centre);
    return { source, far, towardsRight: dot(offset, head.rightward) / far };
  });
  return Array.from({ length: POINTS_PER_OCTAVE }, (_, i) => {
    const frequencyHz = low * (high / low) ** ((i + 0.5) / POINTS_PER_OCTAVE);
    const turns = (2 * Math.PI * frequencyHz) / 1000;
    let [left, right]: [Complex, Complex] = [
      [0, 0],
      [0, 0],
    ];
    for (const { source, far, towardsRight } of placed) {
      const size = (source.pressureAt(frequencyHz) * 1000) / far;
      const free = polar(size, -turns * (far / speed + source.delay));
      const at = (cosine: number) =>
        times(free, spherePressure(head.radius, far, cosine, frequencyHz, speed));
      left = plus(left, at(-towardsRight));
      right = plus(right, at(towardsRight));
    }
    return { frequencyHz, left, right };
  });
}

/** Powers at both ears over one octave. */
function powers(pressures: readonly EarPressures[]): { left: number; right: number } {
  const power = ([re, im]: Complex) => re * re + im * im;
  return {
    left: pressures.reduce((sum, p) => sum + power(p.left), 0),
    right: pressures.reduce((sum, p) => sum + power(p.right), 0),
  };
}

/** Right ear over left, dB, by power over the octave; `null` when an ear hears nothing. */
export function interauralLevelDb(pressures: readonly EarPressures[]): number | null {
  const { left, right } = powers(pressures);
  return left > 0 && right > 0 ? 10 * Math.log10(right / left) : null;
}

export interface InterauralTime {
  /** Right ear ahead of the left, ms, within ±1. */
  time: number;
  /** Height of the correlation's peak, 0 to 1: how alike the ears hear, apart from that time. */
  coherence: number;
}

/** The times looked through, ms. Source: ISO 3382-1:2009, Annex B: ±1 ms. */
const LONGEST_TIME = 1;
const TIME_STEP = 0.01;
const STEPS = Math.round(LONGEST_TIME / TIME_STEP);

/**
 * Time between the ears over one octave: where the interaural cross-correlation has its maximum,
 * and how high it is. Source: ISO 3382-1:2009, Annex B. `null` when an ear hears nothing.
 */
export function interauralTime(pressures: readonly EarPressures[]): InterauralTime | null {
  const { left, right } = powers(pressures);
  if (!(left > 0) || !(right > 0)) return null;
  const curve = correlation(pressures);
  let best = STEPS;
  // Outward from zero, so that of equal peaks the one nearest the middle counts.
  for (let i = 1; i <= STEPS; i++) {
    for (const step of [STEPS + i, STEPS - i])
      if ((curve[step] as number) > (curve[best] as number) * (1 + 1e-9)) best = step;
  }
  const peak = curve[best] as number;
  const time = (best - STEPS + topBeside(curve, best)) * TIME_STEP;
  return { time, coherence: Math.max(0, peak) / Math.sqrt(left * right) };
}

/** Interaural cross-correlation from −1 to 1 ms in steps. */
function correlation(pressures: readonly EarPressures[]): Float64Array {
  const curve = new Float64Array(2 * STEPS + 1);
  for (const {
    frequencyHz,
    left: [a, b],
    right: [c, d],
  } of pressures) {
    const turn = (2 * Math.PI * frequencyHz * TIME_STEP) / 1000;
    // The real part of right·left* turning backwards by a step each time: a product is several
    // times faster than a sine and a cosine.
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    let [re, im] = times([c * a + d * b, d * a - c * b], polar(1, turn * STEPS));
    for (let i = 0; i < curve.length; i++) {
      curve[i] = (curve[i] as number) + re;
      [re, im] = [re * cos + im * sin, im * cos - re * sin];
    }
  }
  return curve;
}

/** Where the parabola through a peak and its neighbours has its top, in steps from the peak. */
function topBeside(curve: Float64Array, at: number): number {
  const [before, peak, after] = [curve[at - 1], curve[at], curve[at + 1]];
  if (before === undefined || peak === undefined || after === undefined) return 0;
  const bend = before - 2 * peak + after;
  return bend < 0 ? (before - after) / (2 * bend) : 0;
}
