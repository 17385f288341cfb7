/**
 * One surface type for every panel: the biquadratic Bézier patch (nine control points; the
 * formulas are the textbook ones: Farin, Curves and Surfaces for CAGD).
 */
import type { Vec3 } from '../vector';
import { clamp, cross, direction, dot, scale, sub } from '../vector';
import type { Patch } from './model';

/** Triangles of a patch, with the (u, v) of each vertex; wound so that they face the cabin. */
export interface PatchMesh {
  vertices: Vec3[];
  triangles: [number, number, number][];
  uv: [number, number][];
}

function combine(patch: Patch, wu: readonly number[], wv: readonly number[]): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let j = 0; j < 3; j++) {
    for (let i = 0; i < 3; i++) {
      const w = (wu[i] as number) * (wv[j] as number);
      const p = patch.control[3 * j + i] as Vec3;
      x += w * p[0];
      y += w * p[1];
      z += w * p[2];
    }
  }
  return [x, y, z];
}

const bernstein = (t: number) => [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
const slope = (t: number) => [-2 * (1 - t), 2 - 4 * t, 2 * t];
const BEND = [2, -4, 2];

/** Where (u, v), each 0 to 1, lies; mm. */
export function pointOnPatch(patch: Patch, u: number, v: number): Vec3 {
  return combine(patch, bernstein(u), bernstein(v));
}

/** ∂P/∂u and ∂P/∂v, mm per unit of u and v. */
export function patchPartials(patch: Patch, u: number, v: number): { du: Vec3; dv: Vec3 } {
  return {
    du: combine(patch, slope(u), bernstein(v)),
    dv: combine(patch, bernstein(u), slope(v)),
  };
}

/** Second derivatives, mm per unit squared. */
export function patchBends(
  patch: Patch,
  u: number,
  v: number,
): { duu: Vec3; duv: Vec3; dvv: Vec3 } {
  return {
    duu: combine(patch, BEND, bernstein(v)),
    duv: combine(patch, slope(u), slope(v)),
    dvv: combine(patch, bernstein(u), BEND),
  };
}

/** Area below which (mm² per unit u·v, relative to the patch's size) a normal means nothing. */
const FLAT = 1e-9;

/**
 * Unit normal into the cabin. Where the patch has no normal (an edge drawn together into a
 * point) the one of the nearest place towards its middle; a patch without any area gives the
 * vertical.
 */
export function patchNormal(patch: Patch, u: number, v: number): Vec3 {
  for (let step = 0; step <= 1; step = step === 0 ? 1e-4 : step * 10) {
    const { du, dv } = patchPartials(patch, u + (0.5 - u) * step, v + (0.5 - v) * step);
    const n = cross(du, dv);
    const size = dot(du, du) + dot(dv, dv);
    if (dot(n, n) > (FLAT * size) ** 2) {
      const unit = direction(n);
      if (unit) return scale(unit, patch.facing);
    }
  }
  return [0, 0, 1];
}

const middle = (a: Vec3, b: Vec3): Vec3 => [
  (a[0] + b[0]) / 2,
  (a[1] + b[1]) / 2,
  (a[2] + b[2]) / 2,
];

/** The patch whose edges are straight. Corner order: (u,v) = (0,0) (1,0) (1,1) (0,1). */
export function bilinearPatch(corners: readonly [Vec3, Vec3, Vec3, Vec3], facing: 1 | -1): Patch {
  const [a, b, c, d] = corners;
  const low = middle(a, b);
  const high = middle(d, c);
  return {
    control: [a, low, b, middle(a, d), middle(low, high), middle(b, c), d, high, c],
    facing,
  };
}

/** The patch as triangles: nu × nv cells of two; triangles of no area are left out. */
export function tessellate(patch: Patch, nu: number, nv: number): PatchMesh {
  if (!(nu >= 1 && nv >= 1)) {
    throw new RangeError(`tessellate: expected nu and nv of at least 1, got ${nu} and ${nv}`);
  }
  const vertices: Vec3[] = [];
  const uv: [number, number][] = [];
  for (let j = 0; j <= nv; j++) {
    for (let i = 0; i <= nu; i++) {
      vertices.push(pointOnPatch(patch, i / nu, j / nv));
      uv.push([i / nu, j / nv]);
    }
  }
  const triangles: [number, number, number][] = [];
  const put = (a: number, b: number, c: number) => {
    const [p, q, r] = [vertices[a] as Vec3, vertices[b] as Vec3, vertices[c] as Vec3];
    const n = cross(sub(q, p), sub(r, p));
    if (dot(n, n) < 1e-12) return;
    triangles.push(patch.facing === 1 ? [a, b, c] : [a, c, b]);
  };
  for (let j = 0; j < nv; j++) {
    for (let i = 0; i < nu; i++) {
      const a = j * (nu + 1) + i;
      put(a, a + 1, a + nu + 2);
      put(a, a + nu + 2, a + nu + 1);
    }
  }
  return { vertices, triangles, uv };
}

/** Seeds per side: enough that no panel of a cabin has two dips between neighbouring seeds. */
const SEEDS = 6;
const STEPS = 30;

/**
 * The place on the patch nearest to a point: Newton from the best places of a coarse grid, kept
 * inside [0, 1]. `distance` in mm.
 */
export function nearestOnPatch(
  patch: Patch,
  point: Vec3,
): { u: number; v: number; distance: number } {
  const seeds: { u: number; v: number; d2: number }[] = [];
  for (let j = 0; j <= SEEDS; j++) {
    for (let i = 0; i <= SEEDS; i++) {
      const [u, v] = [i / SEEDS, j / SEEDS];
      seeds.push({ u, v, d2: squaredDistance(patch, point, u, v) });
    }
  }
  seeds.sort((a, b) => a.d2 - b.d2);
  let best = seeds[0] as { u: number; v: number; d2: number };
  for (const seed of seeds.slice(0, 3)) {
    const found = descend(patch, point, seed.u, seed.v, seed.d2);
    if (found.d2 < best.d2) best = found;
  }
  return { u: best.u, v: best.v, distance: Math.sqrt(best.d2) };
}

function squaredDistance(patch: Patch, point: Vec3, u: number, v: number): number {
  const d = sub(pointOnPatch(patch, u, v), point);
  return dot(d, d);
}

/** Newton on the squared distance; a coordinate held at a bound stays there while pushed outward. */
function descend(patch: Patch, point: Vec3, u0: number, v0: number, start: number) {
  let [u, v, d2] = [u0, v0, start];
  for (let step = 0; step < STEPS; step++) {
    const r = sub(pointOnPatch(patch, u, v), point);
    const { du, dv } = patchPartials(patch, u, v);
    const [gu, gv] = [dot(r, du), dot(r, dv)];
    const heldU = (u <= 0 && gu > 0) || (u >= 1 && gu < 0);
    const heldV = (v <= 0 && gv > 0) || (v >= 1 && gv < 0);
    const duu = dot(r, combine(patch, BEND, bernstein(v)));
    const dvv = dot(r, combine(patch, bernstein(u), BEND));
    const duv = dot(r, combine(patch, slope(u), slope(v))) + dot(du, dv);
    let [a, b, c] = [dot(du, du) + duu, duv, dot(dv, dv) + dvv];
    // Where the full second derivative is not positive definite, Gauss–Newton's always descends.
    if (!(a > 0 && c > 0 && a * c - b * b > 1e-12 * a * c)) {
      [a, b, c] = [dot(du, du) + 1e-9, dot(du, dv), dot(dv, dv) + 1e-9];
    }
    let su = 0;
    let sv = 0;
    if (!heldU && !heldV) {
      const det = a * c - b * b || 1e-12;
      su = -(c * gu - b * gv) / det;
      sv = -(a * gv - b * gu) / det;
    } else if (!heldU) su = -gu / a;
    else if (!heldV) sv = -gv / c;
    else break;
    let k = 1;
    let next = d2;
    let [nu, nv] = [u, v];
    for (; k > 1e-6; k /= 2) {
      nu = clamp(u + k * su, 0, 1);
      nv = clamp(v + k * sv, 0, 1);
      next = squaredDistance(patch, point, nu, nv);
      if (next < d2) break;
    }
    if (!(next < d2)) break;
    const moved = Math.abs(nu - u) + Math.abs(nv - v);
    [u, v, d2] = [nu, nv, next];
    if (moved < 1e-12) break;
  }
  return { u, v, d2 };
}
