/** Ways by two panels: the same principle with four unknowns, a place on each of the two. */
import { SAME_POINT, STATIONARY } from '../../tolerance';
import { clamp, dot, sub, type Vec3 } from '../../vector';
import { isInside, unitNormal } from './specular-points';
import { evaluateInPlace, newJet, type Surface } from './surface';

/** A place where a panel throws sound on. */
export interface Bounce {
  surface: Surface;
  point: Vec3;
  /** Unit, into the cabin. */
  normal: Vec3;
}

export interface TwoBounces {
  bounces: readonly [Bounce, Bounce];
  path: number;
}

const IMAGE_STEPS = 4;
const STEPS = 24;
const STRIDE = 0.35;
const ASTRAY = 0.5;

const one = newJet();
const two = newJet();

/**
 * The way from source by `first`, then `second`, to the receiver whose length is stationary on
 * both panels, inside their edges and on their cabin side; null where there is none. Where two
 * curved panels have several, the one that the images in their tangent planes lead to.
 */
export function twoBounces(
  first: Surface,
  second: Surface,
  source: Vec3,
  receiver: Vec3,
): TwoBounces | null {
  // [u, v] on the first, [u, v] on the second.
  const at = [0.5, 0.5, 0.5, 0.5];
  for (let step = 0; step < STEPS; step++) {
    evaluateInPlace(first.power, at[0] as number, at[1] as number, one);
    evaluateInPlace(second.power, at[2] as number, at[3] as number, two);
    const isImage = step < IMAGE_STEPS;
    const move = isImage
      ? imageMove(first, second, source, receiver)
      : newtonMove(source, receiver);
    if (!move) {
      if (isImage) {
        step = IMAGE_STEPS - 1;
        continue;
      }
      return null;
    }
    const stride = Math.max(...move.map(Math.abs));
    if (!Number.isFinite(stride)) return null;
    const k = !isImage && stride > STRIDE ? STRIDE / stride : 1;
    for (let i = 0; i < 4; i++) {
      const moved = (at[i] as number) + k * (move[i] as number);
      // Far images of small panels: the nearest edge is where to look on from.
      at[i] = isImage ? clamp(moved, 0, 1) : moved;
      if (!((at[i] as number) > -ASTRAY && (at[i] as number) < 1 + ASTRAY)) return null;
    }
    if (!isImage && stride < STATIONARY)
      return at.every(isInside) ? bouncesAt(first, second, source, receiver, at) : null;
  }
  return null;
}

const vectorAt = (jet: Float64Array, k: number): Vec3 =>
  [jet[k], jet[k + 1], jet[k + 2]] as unknown as Vec3;

const mirrored = (p: Vec3, origin: Vec3, normal: Vec3): Vec3 => {
  const k = -2 * dot(sub(p, origin), normal);
  return [p[0] + k * normal[0], p[1] + k * normal[1], p[2] + k * normal[2]];
};

/** Where the line from a to b meets the plane; null where it does not, between the two. */
function meet(a: Vec3, b: Vec3, origin: Vec3, normal: Vec3): Vec3 | null {
  const [low, high] = [dot(sub(origin, a), normal), dot(sub(b, a), normal)];
  const t = low / high;
  if (!(t > 0 && t < 1)) return null;
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

/** The steps in u and v that lead to a point of the tangent plane. */
function stepsTo(jet: Float64Array, point: Vec3): readonly [number, number] {
  const [p, du, dv] = [vectorAt(jet, 0), vectorAt(jet, 3), vectorAt(jet, 6)];
  const w = sub(point, p);
  const [a, b, c, f, g] = [dot(du, du), dot(du, dv), dot(dv, dv), dot(du, w), dot(dv, w)];
  const area = a * c - b * b;
  return [(c * f - b * g) / area, (a * g - b * f) / area];
}

/** To the image source's places in both tangent planes; null where the images do not see each other. */
function imageMove(first: Surface, second: Surface, s: Vec3, r: Vec3): number[] | null {
  const [n, m] = [unitNormal(first, one), unitNormal(second, two)];
  if (!n || !m) return null;
  const [p, q] = [vectorAt(one, 0), vectorAt(two, 0)];
  const image = mirrored(s, p, n);
  const onSecond = meet(mirrored(image, q, m), r, q, m);
  const onFirst = onSecond && meet(image, onSecond, p, n);
  if (!onFirst) return null;
  return [...stepsTo(one, onFirst), ...stepsTo(two, onSecond)];
}

/** Unit vector from `from` to `to` and the distance. */
function leg(from: Vec3, to: Vec3): { e: Vec3; far: number } {
  const d = sub(to, from);
  const far = Math.sqrt(dot(d, d));
  return { e: [d[0] / far, d[1] / far, d[2] / far], far };
}

/** Newton on the gradient of |SP| + |PQ| + |QR| in all four. */
function newtonMove(s: Vec3, r: Vec3): number[] | null {
  const [p, q] = [vectorAt(one, 0), vectorAt(two, 0)];
  const [a, b, c] = [leg(s, p), leg(q, p), leg(r, q)];
  if (!(a.far > SAME_POINT && b.far > SAME_POINT && c.far > SAME_POINT)) return null;
  const d = [vectorAt(one, 3), vectorAt(one, 6), vectorAt(two, 3), vectorAt(two, 6)] as const;
  // What pulls at each of the two places: nothing along the panel where the length is stationary.
  const pullP: Vec3 = [a.e[0] + b.e[0], a.e[1] + b.e[1], a.e[2] + b.e[2]];
  const pullQ: Vec3 = [c.e[0] - b.e[0], c.e[1] - b.e[1], c.e[2] - b.e[2]];
  const pull = [pullP, pullP, pullQ, pullQ];
  const g = d.map((x, i) => dot(x, pull[i] as Vec3));
  const bend = (x: Vec3, y: Vec3, by: { e: Vec3; far: number }) =>
    (dot(x, y) - dot(x, by.e) * dot(y, by.e)) / by.far;
  const rows: number[][] = [];
  for (let i = 0; i < 4; i++) {
    const row: number[] = [];
    for (let j = 0; j < 4; j++) {
      const [x, y] = [d[i] as Vec3, d[j] as Vec3];
      const isFirst = i < 2;
      if (isFirst !== j < 2) {
        row.push(-bend(x, y, b));
        continue;
      }
      const second = vectorAt(isFirst ? one : two, 9 + 3 * ((i % 2) + (j % 2)));
      row.push(bend(x, y, b) + bend(x, y, isFirst ? a : c) + dot(second, pull[i] as Vec3));
    }
    row.push(-(g[i] as number));
    rows.push(row);
  }
  return solve(rows);
}

/** Gauss's elimination with the largest pivot of each column; the right side stands in the last. */
function solve(rows: number[][]): number[] | null {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(rows[i]?.[k] as number) > Math.abs(rows[best]?.[k] as number)) best = i;
    const pivot = rows[best] as number[];
    rows[best] = rows[k] as number[];
    rows[k] = pivot;
    if (!(Math.abs(pivot[k] as number) > 0)) return null;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i] as number[];
      const factor = (row[k] as number) / (pivot[k] as number);
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - factor * (pivot[j] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    const row = rows[k] as number[];
    let rest = row[n] as number;
    for (let j = k + 1; j < n; j++) rest -= (row[j] as number) * (x[j] as number);
    x[k] = rest / (row[k] as number);
  }
  return x;
}

function bouncesAt(
  first: Surface,
  second: Surface,
  s: Vec3,
  r: Vec3,
  [u, v, x, y]: readonly number[],
): TwoBounces | null {
  evaluateInPlace(first.power, clamp(u as number, 0, 1), clamp(v as number, 0, 1), one);
  evaluateInPlace(second.power, clamp(x as number, 0, 1), clamp(y as number, 0, 1), two);
  const [n, m] = [unitNormal(first, one), unitNormal(second, two)];
  if (!n || !m) return null;
  const [p, q] = [vectorAt(one, 0), vectorAt(two, 0)];
  const isBefore = (from: Vec3, normal: Vec3, to: Vec3) => dot(sub(to, from), normal) > SAME_POINT;
  if (!(isBefore(p, n, s) && isBefore(p, n, q) && isBefore(q, m, p) && isBefore(q, m, r)))
    return null;
  return {
    bounces: [
      { surface: first, point: p, normal: n },
      { surface: second, point: q, normal: m },
    ],
    path: leg(s, p).far + leg(p, q).far + leg(q, r).far,
  };
}
