import type { Vec3 } from '../vector';

/** Of a symmetric matrix: values, the largest first, each with its unit vector. */
export interface Eigen {
  values: Vec3;
  vectors: readonly [Vec3, Vec3, Vec3];
}

/** Rows of a symmetric 3 × 3 matrix. */
export type Symmetric = readonly [Vec3, Vec3, Vec3];

/**
 * By Jacobi's rotations (G. H. Golub and C. F. Van Loan, Matrix Computations, section 8.5): for three
 * rows a few sweeps reach the last digit, whatever the matrix.
 */
export function eigenOf(matrix: Symmetric): Eigen {
  const a = matrix.map((row) => [...row]) as number[][];
  const v = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1 : 0)));
  const at = (m: number[][], i: number, j: number): number => (m[i] as number[])[j] as number;
  const set = (m: number[][], i: number, j: number, value: number): void => {
    (m[i] as number[])[j] = value;
  };
  for (let sweep = 0; sweep < 30; sweep++) {
    if (at(a, 0, 1) ** 2 + at(a, 0, 2) ** 2 + at(a, 1, 2) ** 2 === 0) break;
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      const off = at(a, p, q);
      if (off === 0) continue;
      const tau = (at(a, q, q) - at(a, p, p)) / (2 * off);
      const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
      const c = 1 / Math.sqrt(1 + t * t);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const [x, y] = [at(a, k, p), at(a, k, q)];
        set(a, k, p, c * x - s * y);
        set(a, k, q, s * x + c * y);
      }
      for (let k = 0; k < 3; k++) {
        const [x, y] = [at(a, p, k), at(a, q, k)];
        set(a, p, k, c * x - s * y);
        set(a, q, k, s * x + c * y);
        const [g, h] = [at(v, k, p), at(v, k, q)];
        set(v, k, p, c * g - s * h);
        set(v, k, q, s * g + c * h);
      }
      set(a, p, q, 0);
      set(a, q, p, 0);
    }
  }
  const order = [0, 1, 2].sort((i, j) => at(a, j, j) - at(a, i, i));
  return {
    values: order.map((i) => at(a, i, i)) as unknown as Vec3,
    vectors: order.map((i) => [0, 1, 2].map((k) => at(v, k, i)) as unknown as Vec3) as unknown as [
      Vec3,
      Vec3,
      Vec3,
    ],
  };
}
