/**
 * A point by its distances from known ones: least squares weighted by 1/sd², by Levenberg and
 * Marquardt (D. W. Marquardt, J. SIAM 11(2), 1963), covariance (JᵀWJ)⁻¹ (Björck, Numerical Methods for
 * Least Squares Problems, SIAM 1996, section 1.1).
 */
import { add, dot, length, scale, sub, type Vec3 } from '../vector';
import { type Eigen, eigenOf, type Symmetric } from './eigen';

export interface DistanceReading {
  id: string;
  /** The known end. */
  anchor: Vec3;
  /** As read, mm. */
  distance: number;
  /** Standard deviation, mm. */
  sd: number;
}

export interface DistanceFit {
  position: Vec3;
  /** Σ((distance − read)/sd)². */
  sum: number;
  /** Of JᵀWJ, 1/mm²: 1/√value is the standard deviation along its vector. */
  eigen: Eigen;
}

const MOST_STEPS = 200;
/** A step shorter than this ends it, mm. */
const ARRIVED = 1e-7;

export function fitDistances(readings: readonly DistanceReading[], start: Vec3): DistanceFit {
  let position = start;
  let { sum, gradient, normal } = look(readings, position);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS; step++) {
    // Marquardt's scaling by the diagonal, with a floor: an axis nothing is known of is left alone.
    const floor = 1e-6 * (normal[0][0] + normal[1][1] + normal[2][2]);
    const damped = normal.map((row, i) =>
      row.map((value, j) => (i === j ? value + damping * (value + floor) : value)),
    ) as unknown as Symmetric;
    const way = solve(damped, gradient);
    const there = add(position, way);
    const next = look(readings, there);
    if (next.sum <= sum) {
      position = there;
      ({ sum, gradient, normal } = next);
      damping = Math.max(damping / 10, 1e-12);
      if (length(way) < ARRIVED) break;
    } else {
      damping *= 10;
      if (damping > 1e12) break;
    }
  }
  return { position, sum, eigen: eigenOf(normal) };
}

/** The sum, JᵀW(read − distance) and JᵀWJ at a place. */
function look(readings: readonly DistanceReading[], position: Vec3) {
  let sum = 0;
  let gradient: Vec3 = [0, 0, 0];
  const normal = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ] as [number, number, number][];
  for (const { anchor, distance, sd } of readings) {
    const off = sub(position, anchor);
    const far = length(off);
    const weight = 1 / sd ** 2;
    sum += weight * (far - distance) ** 2;
    // At the anchor itself no direction is better than another.
    const unit: Vec3 = far > 0 ? scale(off, 1 / far) : [1, 0, 0];
    gradient = add(gradient, scale(unit, weight * (distance - far)));
    for (const i of [0, 1, 2] as const)
      for (const j of [0, 1, 2] as const)
        (normal[i] as [number, number, number])[j] += weight * unit[i] * unit[j];
  }
  return { sum, gradient, normal: normal as unknown as Symmetric };
}

/** By the eigenvectors: as good for a matrix of three rows as any, and never divides by nothing. */
function solve(matrix: Symmetric, right: Vec3): Vec3 {
  const { values, vectors } = eigenOf(matrix);
  return vectors.reduce<Vec3>(
    (so, vector, i) => {
      const value = values[i] as number;
      return value > 0 ? add(so, scale(vector, dot(vector, right) / value)) : so;
    },
    [0, 0, 0],
  );
}
