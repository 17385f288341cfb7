/**
 * Where a panel mirrors a source to a receiver: by Fermat's principle the places on the patch
 * itself where the path's length is stationary (e.g. Born & Wolf, Principles of Optics). On a plane
 * that is the image source's place (Allen & Berkley, JASA 65, 1979).
 */
import { SAME_POINT, STATIONARY } from '../../tolerance';
import { clamp, dot, sub, type Vec3 } from '../../vector';
import type { Reflector, View } from './reflector';
import { evaluateInPlace, newJet, type Plane, type Surface } from './surface';

export interface SpecularPoint {
  u: number;
  v: number;
  point: Vec3;
  /** Unit, into the cabin. */
  normal: Vec3;
  /** |source − point| + |point − receiver|. */
  path: number;
}

/** Where to search on when the search from the middle was lost, or may have missed others. */
const SEEDS = [
  [0.15, 0.15],
  [0.85, 0.15],
  [0.15, 0.85],
  [0.85, 0.85],
] as const;

const STEPS = 24;
/** Fewer image steps lost 0.3 % of a cabin's reflections, more gained nothing. */
const IMAGE_STEPS = 3;
/** An image step of less in u or v is followed by no other. */
const ARRIVED = 1e-3;
/** No step goes farther than this in u or v: the far side of a curved patch is another answer's. */
const STRIDE = 0.35;
/** A search that strays this far over an edge will not come back. */
const ASTRAY = 0.35;

// Used anew for every step of every search; nothing here asks itself.
const jet = newJet();

/** Most panels mirror nothing. */
const NONE: readonly SpecularPoint[] = [];

/**
 * Every place on panel number `panel` where it mirrors source to receiver, shortest path first:
 * inside its edges, both ends on its cabin side. A flat panel has one at most, a curved one may
 * have several; a panel without area has none.
 */
export function specularPoints(
  reflector: Reflector,
  panel: number,
  source: View,
  receiver: View,
): readonly SpecularPoint[] {
  const surface = reflector.surfaces[panel] as Surface;
  const [s, r] = [source.place, receiver.place];
  if (surface.plane) {
    const seed = imageSeed(surface.plane, s, r);
    const found = seed ? findStationary(surface, s, r, seed[0], seed[1]) : 'none';
    return typeof found === 'string' ? NONE : [found];
  }
  if (!reflector.mayReflect(panel, source, receiver)) return NONE;
  const first = findStationary(surface, s, r, 0.5, 0.5);
  if (first !== 'lost' && !reflector.mayFocus(panel, source, receiver))
    return first === 'none' ? NONE : [first];
  const all: SpecularPoint[] = typeof first === 'string' ? [] : [first];
  for (const [u, v] of SEEDS) {
    const found = findStationary(surface, s, r, u, v);
    if (typeof found !== 'string' && !all.some((p) => isSame(p, found))) all.push(found);
  }
  return all.sort((a, b) => a.path - b.path);
}

const isSame = (a: SpecularPoint, b: SpecularPoint): boolean => {
  const apart = sub(a.point, b.point);
  return dot(apart, apart) < 1e-6;
};

/** (u, v) of the image source's place; null where it lies off the panel's bounds or behind it. */
export function imageSeed(plane: Plane, s: Vec3, r: Vec3): readonly [number, number] | null {
  const { origin, normal, low, high } = plane;
  const above = dot(sub(s, origin), normal);
  const over = dot(sub(r, origin), normal);
  if (!(above > 0 && over > 0)) return null;
  const t = above / (above + over);
  const x = s[0] + t * (r[0] - s[0]) - 2 * above * (1 - t) * normal[0];
  const y = s[1] + t * (r[1] - s[1]) - 2 * above * (1 - t) * normal[1];
  const z = s[2] + t * (r[2] - s[2]) - 2 * above * (1 - t) * normal[2];
  const out = SAME_POINT;
  if (x < low[0] - out || y < low[1] - out || z < low[2] - out) return null;
  if (x > high[0] + out || y > high[1] + out || z > high[2] + out) return null;
  return placeOnPlane(plane, [x, y, z]);
}

/** (u, v) of a point as if the partials of the plane's origin held everywhere, kept inside 0 to 1. */
export function placeOnPlane(
  { origin, du, dv }: Pick<Plane, 'origin' | 'du' | 'dv'>,
  point: Vec3,
): readonly [number, number] | null {
  const w = sub(point, origin);
  const [a, b, c] = [dot(du, du), dot(du, dv), dot(dv, dv)];
  const [f, g] = [dot(du, w), dot(dv, w)];
  const det = a * c - b * b;
  if (!(det > 0)) return null;
  return [clamp(0.5 + (c * f - b * g) / det, 0, 1), clamp(0.5 + (a * g - b * f) / det, 0, 1)];
}

/**
 * One search from one seed. The first steps go to the image source's place in the tangent plane
 * where the search stands, which finds its way even close to a source, where Newton's steps lead
 * astray; Newton's on the gradient of the path's length then end it in two or three.
 */
export function findStationary(
  surface: Surface,
  s: Vec3,
  r: Vec3,
  u0: number,
  v0: number,
): SpecularPoint | 'none' | 'lost' {
  const { facing } = surface.panel.patch;
  let u = +u0;
  let v = +v0;
  let images = IMAGE_STEPS;
  for (let step = 0; step < STEPS; step++) {
    evaluateInPlace(surface.power, u, v, jet);
    const px = jet[0] as number;
    const py = jet[1] as number;
    const pz = jet[2] as number;
    const ux = jet[3] as number;
    const uy = jet[4] as number;
    const uz = jet[5] as number;
    const vx = jet[6] as number;
    const vy = jet[7] as number;
    const vz = jet[8] as number;
    let ax = px - s[0];
    let ay = py - s[1];
    let az = pz - s[2];
    let bx = px - r[0];
    let by = py - r[1];
    let bz = pz - r[2];
    const uu = ux * ux + uy * uy + uz * uz;
    const uv = ux * vx + uy * vy + uz * vz;
    const vv = vx * vx + vy * vy + vz * vz;
    const area = uu * vv - uv * uv;
    if (!(area > 0)) return 'lost';

    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const above = -facing * (ax * nx + ay * ny + az * nz);
    const over = -facing * (bx * nx + by * ny + bz * nz);
    let du: number;
    let dv: number;
    const isImage = step < images && above > 0 && over > 0;
    if (isImage) {
      // Seen from here, the image's place divides the way from S to R as their heights do.
      const t = above / (above + over);
      const x = -(ax + t * (bx - ax));
      const y = -(ay + t * (by - ay));
      const z = -(az + t * (bz - az));
      const f = ux * x + uy * y + uz * z;
      const g = vx * x + vy * y + vz * z;
      du = (vv * f - uv * g) / area;
      dv = (uu * g - uv * f) / area;
    } else {
      const a = Math.sqrt(ax * ax + ay * ay + az * az);
      const b = Math.sqrt(bx * bx + by * by + bz * bz);
      if (!(a > SAME_POINT && b > SAME_POINT)) return 'lost';
      ax /= a;
      ay /= a;
      az /= a;
      bx /= b;
      by /= b;
      bz /= b;
      const ua = ux * ax + uy * ay + uz * az;
      const ub = ux * bx + uy * by + uz * bz;
      const va = vx * ax + vy * ay + vz * az;
      const vb = vx * bx + vy * by + vz * bz;
      const hx = ax + bx;
      const hy = ay + by;
      const hz = az + bz;
      const p =
        (uu - ua * ua) / a +
        (uu - ub * ub) / b +
        (jet[9] as number) * hx +
        (jet[10] as number) * hy +
        (jet[11] as number) * hz;
      const q =
        (uv - ua * va) / a +
        (uv - ub * vb) / b +
        (jet[12] as number) * hx +
        (jet[13] as number) * hy +
        (jet[14] as number) * hz;
      const w =
        (vv - va * va) / a +
        (vv - vb * vb) / b +
        (jet[15] as number) * hx +
        (jet[16] as number) * hy +
        (jet[17] as number) * hz;
      const det = p * w - q * q;
      du = -(w * (ua + ub) - q * (va + vb)) / det;
      dv = -(p * (va + vb) - q * (ua + ub)) / det;
    }
    const stride = Math.max(Math.abs(du), Math.abs(dv));
    // Where sound is focused no step leads anywhere.
    if (!Number.isFinite(stride)) return 'lost';
    if (isImage) {
      u = clamp(u + du, 0, 1);
      v = clamp(v + dv, 0, 1);
      // There already, as on a plane panel: Newton's steps end it.
      if (stride < ARRIVED) images = 0;
      continue;
    }
    const k = stride > STRIDE ? STRIDE / stride : 1;
    u += k * du;
    v += k * dv;
    if (!(u > -ASTRAY && u < 1 + ASTRAY && v > -ASTRAY && v < 1 + ASTRAY)) return 'none';
    if (stride < STATIONARY)
      return isInside(u) && isInside(v)
        ? (specularAt(surface, s, r, clamp(u, 0, 1), clamp(v, 0, 1)) ?? 'none')
        : 'none';
  }
  return 'lost';
}

export const isInside = (t: number): boolean => t >= -STATIONARY && t <= 1 + STATIONARY;

/** Part of the partials' own size below which the patch has no area and no normal there. */
const NO_AREA = 1e-9;

function specularAt(
  surface: Surface,
  s: Vec3,
  r: Vec3,
  u: number,
  v: number,
): SpecularPoint | null {
  evaluateInPlace(surface.power, u, v, jet);
  const point = vectorAt(0);
  const normal = unitNormal(surface, jet);
  if (!normal) return null;
  const [toS, toR] = [sub(s, point), sub(r, point)];
  if (!(dot(toS, normal) > SAME_POINT && dot(toR, normal) > SAME_POINT)) return null;
  return { u, v, point, normal, path: Math.sqrt(dot(toS, toS)) + Math.sqrt(dot(toR, toR)) };
}

const vectorAt = (k: number): Vec3 => [jet[k], jet[k + 1], jet[k + 2]] as unknown as Vec3;

/** Unit normal into the cabin of an evaluated place; null where the patch has none. */
export function unitNormal(surface: Surface, at: Float64Array): Vec3 | null {
  const ux = at[3] as number;
  const uy = at[4] as number;
  const uz = at[5] as number;
  const vx = at[6] as number;
  const vy = at[7] as number;
  const vz = at[8] as number;
  const n: Vec3 = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(dot(n, n));
  const whole = ux * ux + uy * uy + uz * uz + vx * vx + vy * vy + vz * vz;
  if (!(size > NO_AREA * whole)) return null;
  const k = surface.panel.patch.facing / size;
  return [n[0] * k, n[1] * k, n[2] * k];
}
