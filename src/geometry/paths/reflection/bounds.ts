/**
 * Where on a patch a reflection cannot be, from its control points alone and for certain.
 *
 * At a reflection the path's length is stationary: ∂P/∂u · ((P−S)/|P−S| + (P−R)/|P−R|) = 0, and
 * the same for v. ∂P/∂u · (P−S) is itself a polynomial in u and v, so over the patch it stays
 * between the least and the greatest of its Bernstein coefficients (the convex hull property and
 * the product of Bernstein polynomials: Farin, Curves and Surfaces for CAGD). Those coefficients
 * are linear in S, hence a few multiplications a panel and place; where the sum of both terms keeps
 * its sign there is no reflection.
 */
import type { Patch } from '../../cabin/model';
import { cross, dot, type Vec3 } from '../../vector';

/** Numbers of one view: the range of ∂u·(P−S), of ∂v·(P−S), of |P−S|, and the farthest in front. */
export const VIEW = 7;

export interface Hull {
  /** Four numbers a coefficient: a vector e and a number d, for d − e·S. */
  alongU: Float64Array;
  alongV: Float64Array;
  /** Likewise e·S − d of the normal: none positive means S is behind all of the patch. */
  front: Float64Array;
  low: Vec3;
  high: Vec3;
}

type Net = { points: readonly Vec3[]; columns: number; rows: number };

const choose = (n: number, k: number): number => {
  let c = 1;
  for (let i = 0; i < k; i++) c = (c * (n - i)) / (i + 1);
  return c;
};

/** Calls `put(i, j, weight, a, b)` for every pair of coefficients that meets in the product's (i, j). */
function multiply(
  a: Net,
  b: Net,
  put: (at: number, weight: number, p: Vec3, q: Vec3) => void,
): number {
  const columns = a.columns + b.columns - 1;
  const rows = a.rows + b.rows - 1;
  const part = (n: number, m: number, i: number, k: number) =>
    (choose(n - 1, i) * choose(m - 1, k)) / choose(n + m - 2, i + k);
  for (let j = 0; j < a.rows; j++)
    for (let i = 0; i < a.columns; i++)
      for (let l = 0; l < b.rows; l++)
        for (let k = 0; k < b.columns; k++)
          put(
            (j + l) * columns + i + k,
            part(a.columns, b.columns, i, k) * part(a.rows, b.rows, j, l),
            a.points[j * a.columns + i] as Vec3,
            b.points[l * b.columns + k] as Vec3,
          );
  return columns * rows;
}

const minus = (p: Vec3, q: Vec3): Vec3 => [2 * (p[0] - q[0]), 2 * (p[1] - q[1]), 2 * (p[2] - q[2])];

export function buildHull(patch: Patch): Hull {
  const net: Net = { points: patch.control, columns: 3, rows: 3 };
  const at = (i: number, j: number) => patch.control[3 * j + i] as Vec3;
  const du: Net = { points: [], columns: 2, rows: 3 };
  const dv: Net = { points: [], columns: 3, rows: 2 };
  du.points = [0, 1, 2].flatMap((j) => [0, 1].map((i) => minus(at(i + 1, j), at(i, j))));
  dv.points = [0, 1].flatMap((j) => [0, 1, 2].map((i) => minus(at(i, j + 1), at(i, j))));

  const along = (slope: Net): Float64Array => {
    const out = new Float64Array(4 * 20);
    multiply(slope, net, (n, weight, d, p) => {
      for (let k = 0; k < 3; k++)
        out[4 * n + k] = (out[4 * n + k] as number) + weight * (d[k] as number);
      out[4 * n + 3] = (out[4 * n + 3] as number) + weight * dot(d, p);
    });
    return out;
  };

  const front = new Float64Array(4 * 16);
  multiply(du, dv, (n, weight, d, e) => {
    const normal = cross(d, e);
    for (let k = 0; k < 3; k++)
      front[4 * n + k] =
        (front[4 * n + k] as number) + weight * patch.facing * (normal[k] as number);
  });
  for (let n = 0; n < 16; n++) {
    const normal = [front[4 * n], front[4 * n + 1], front[4 * n + 2]] as unknown as Vec3;
    let nearest = Infinity;
    for (const p of patch.control) nearest = Math.min(nearest, dot(normal, p));
    front[4 * n + 3] = nearest;
  }
  const ends = (pick: (...all: number[]) => number): Vec3 =>
    [0, 1, 2].map((k) => pick(...patch.control.map((p) => p[k] as number))) as unknown as Vec3;
  return {
    alongU: along(du),
    alongV: along(dv),
    front,
    low: ends(Math.min),
    high: ends(Math.max),
  };
}

/**
 * What a place sees of a patch: {@link VIEW} numbers into `view`, from `at` on. Of a patch it is
 * behind, the last alone.
 */
export function lookInPlace(hull: Hull, place: Vec3, view: Float64Array, at: number): void {
  const [x, y, z] = place;
  const f = hull.front;
  let front = -Infinity;
  for (let n = 0; n < f.length; n += 4) {
    const value =
      (f[n] as number) * x +
      (f[n + 1] as number) * y +
      (f[n + 2] as number) * z -
      (f[n + 3] as number);
    if (value > front) front = value;
  }
  view[at + 6] = front;
  if (!(front > 0)) return;
  spanAlong(hull.alongU, x, y, z, view, at);
  spanAlong(hull.alongV, x, y, z, view, at + 2);
  let near = 0;
  let far = 0;
  for (let k = 0; k < 3; k++) {
    const below = (hull.low[k] as number) - (place[k] as number);
    const above = (place[k] as number) - (hull.high[k] as number);
    const out = Math.max(below, above);
    if (out > 0) near += out * out;
    const reach = Math.min(below, above);
    far += reach * reach;
  }
  view[at + 4] = Math.sqrt(near);
  view[at + 5] = Math.sqrt(far);
}

/** The least and the greatest of the coefficients d − e·S. */
function spanAlong(
  c: Float64Array,
  x: number,
  y: number,
  z: number,
  view: Float64Array,
  at: number,
): void {
  let least = Infinity;
  let most = -Infinity;
  for (let n = 0; n < c.length; n += 4) {
    const value =
      (c[n + 3] as number) -
      (c[n] as number) * x -
      (c[n + 1] as number) * y -
      (c[n + 2] as number) * z;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  view[at] = least;
  view[at + 1] = most;
}

/** A sign kept by less than this may be rounding, mm. */
const SLACK = 1e-9;

/** False where no reflection between the two places that these views belong to can be on the patch. */
export function mayReflect(a: Float64Array, b: Float64Array, at: number): boolean {
  if (!((a[at + 6] as number) > 0 && (b[at + 6] as number) > 0)) return false;
  for (let side = 0; side < 4; side += 2) {
    const low = least(a, at, side) + least(b, at, side);
    if (low > SLACK) return false;
    const high = most(a, at, side) + most(b, at, side);
    if (high < -SLACK) return false;
  }
  return true;
}

// 0/0 at a place inside the patch's bounds gives no number, which rules nothing out.
function least(view: Float64Array, at: number, side: number): number {
  const value = view[at + side] as number;
  return value / (view[at + (value < 0 ? 4 : 5)] as number);
}

function most(view: Float64Array, at: number, side: number): number {
  const value = view[at + side + 1] as number;
  return value / (view[at + (value < 0 ? 5 : 4)] as number);
}
