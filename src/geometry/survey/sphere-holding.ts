import type { Vec3 } from '../vector';

/** Directions looked in; with these the share is right to a thousandth, see the test. */
const DIRECTIONS = 600;
/** Turns between neighbours of a Fibonacci spiral: Á. González, Mathematical Geosciences 42, 2010. */
const GOLDEN = Math.PI * (3 - Math.sqrt(5));

/**
 * Radius of the sphere that holds this share of a normal distribution in space with three standard
 * deviations. The distance in a direction u is |S u| times a Maxwell-distributed number, so the share
 * within R is the mean over all u of erf(t/√2) − √(2/π) t exp(−t²/2) with t = R/|S u|.
 */
export function sphereHolding(share: number, [a, b, c]: Vec3): number {
  const stretches = Array.from({ length: DIRECTIONS }, (_, n) => {
    const z = 1 - (2 * (n + 0.5)) / DIRECTIONS;
    const r = Math.sqrt(1 - z * z);
    return Math.sqrt(
      (a * r * Math.cos(n * GOLDEN)) ** 2 + (b * r * Math.sin(n * GOLDEN)) ** 2 + (c * z) ** 2,
    );
  });
  const held = (radius: number): number =>
    stretches.reduce((sum, stretch) => sum + maxwell(radius / stretch), 0) / DIRECTIONS;
  // 2.7955 is the root of χ² with three degrees at 95 %; 4 holds 99.9 %.
  let [low, high] = [0, 6 * Math.max(a, b, c)];
  for (let step = 0; step < 50; step++) {
    const mid = (low + high) / 2;
    if (held(mid) < share) low = mid;
    else high = mid;
  }
  return high;
}

const maxwell = (t: number): number =>
  Number.isFinite(t)
    ? erf(t / Math.SQRT2) - Math.sqrt(2 / Math.PI) * t * Math.exp((-t * t) / 2)
    : 1;

/** Within 1.5e-7: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26; x ≥ 0. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * x);
  const sum =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return 1 - sum * Math.exp(-x * x);
}
