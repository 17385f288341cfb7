/**
 * How well tape readings from known points fix a spot on a surface: linear least squares about the
 * spot, two unknowns along the surface, covariance σ²(JᵀJ)⁻¹ (Björck, Numerical Methods for Least
 * Squares Problems, SIAM 1996, section 1.1; the same as for any survey by distances).
 */
import { cross, direction, dot, sub, type Vec3 } from '../vector';

/** Of one reading, mm: a tape held by hand inside a car. Choice of ours, no source. */
export const TAPE_SD = 3;

export interface TapeFix {
  /** Standard deviations along the surface, the larger first, mm. */
  sd: readonly [number, number];
  /** With 95 in 100 the mark lies within this of the spot, mm. */
  within95: number;
}

/**
 * @param normal unit, of the surface at the spot
 * @param anchors where the tape starts; none at the spot itself
 * @returns `null` where the readings do not fix the spot: fewer than two, or all along one line
 */
export function tapeFix(
  spot: Vec3,
  normal: Vec3,
  anchors: readonly Vec3[],
  sd: number = TAPE_SD,
): TapeFix | null {
  const both = tapeSds(spot, normal, anchors, sd);
  return both && { sd: both, within95: circleHolding(0.95, ...both) };
}

/** The standard deviations of {@link tapeFix} alone, a hundred times as fast. */
export function tapeSds(
  spot: Vec3,
  normal: Vec3,
  anchors: readonly Vec3[],
  sd: number = TAPE_SD,
): readonly [number, number] | null {
  const [a, b] = tangents(normal);
  let [aa, ab, bb] = [0, 0, 0];
  for (const anchor of anchors) {
    const way = direction(sub(spot, anchor));
    if (!way) return null;
    const [x, y] = [dot(way, a), dot(way, b)];
    aa += x * x;
    ab += x * y;
    bb += y * y;
  }
  // Eigenvalues of JᵀJ.
  const middle = (aa + bb) / 2;
  const spread = Math.sqrt(((aa - bb) / 2) ** 2 + ab * ab);
  const least = middle - spread;
  if (!(least > SINGULAR)) return null;
  return [sd / Math.sqrt(least), sd / Math.sqrt(middle + spread)];
}

/** Places of the table between a needle and a circle. */
const ROUND_STEPS = 32;
let table: readonly number[] | null = null;

/** `circleHolding(0.95, …)` from a table, within 0.1 %: to choose by, not to tell. */
export function roughly95([large, small]: readonly [number, number]): number {
  table ??= Array.from({ length: ROUND_STEPS + 1 }, (_, k) =>
    circleHolding(0.95, 1, Math.max(k / ROUND_STEPS, 0.01)),
  );
  const place = (small / large) * ROUND_STEPS;
  const k = Math.min(ROUND_STEPS - 1, Math.floor(place));
  const [low, high] = [table[k] as number, table[k + 1] as number];
  return large * (low + (high - low) * (place - k));
}

/** Smaller eigenvalues of JᵀJ than this fix nothing: the error is then over 30 times the tape's. */
const SINGULAR = 1e-3;

function tangents(normal: Vec3): [Vec3, Vec3] {
  const [x, y, z] = normal.map(Math.abs) as [number, number, number];
  const least: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  const a = direction(cross(normal, least)) as Vec3;
  return [a, cross(normal, a)];
}

/** Enough for one standard deviation thirty times the other; see the test. */
const ANGLES = 256;

/**
 * Radius of the circle that holds this share of a plane's normal distribution with two standard
 * deviations. With x = s₁r cos φ, y = s₂r sin φ, r is Rayleigh distributed for every φ, so the share
 * within R is the mean over φ of 1 − exp(−R²/2(s₁²cos²φ + s₂²sin²φ)).
 */
export function circleHolding(share: number, s1: number, s2: number): number {
  const held = (radius: number): number => {
    let sum = 0;
    for (let n = 0; n < ANGLES; n++) {
      const angle = (2 * Math.PI * (n + 0.5)) / ANGLES;
      const stretch = (s1 * Math.cos(angle)) ** 2 + (s2 * Math.sin(angle)) ** 2;
      sum -= Math.expm1((-radius * radius) / (2 * stretch));
    }
    return sum / ANGLES;
  };
  // A circle of this radius holds it even where the two are alike.
  let [low, high] = [0, Math.max(s1, s2) * Math.sqrt(-2 * Math.log(1 - share))];
  for (let step = 0; step < 60; step++) {
    const mid = (low + high) / 2;
    if (held(mid) < share) low = mid;
    else high = mid;
  }
  return high;
}
