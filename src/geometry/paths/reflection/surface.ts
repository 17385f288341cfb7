/**
 * A panel made ready for many reflections: its patch as powers of u and v, which is quicker to
 * evaluate with both derivatives than the control points are.
 */
import type { Panel } from '../../cabin/model';
import { patchNormal, patchPartials, pointOnPatch } from '../../cabin/patch';
import { tessellatePanel } from '../../cabin/tessellate-panel';
import { FLAT_LIFT, PANEL_SAGITTA, SAME_POINT } from '../../tolerance';
import { cross, dot, length, scale, sub, type Vec3 } from '../../vector';

export interface Surface {
  panel: Panel;
  /** P(u, v) = Σ power[9k + 3j + i] · uⁱ · vʲ for coordinate k. */
  power: Float64Array;
  /** Set where the panel is a plane: then the image source gives the place in closed form. */
  plane: Plane | null;
  /** How strongly the panel is hollow seen from the cabin, at most: 1 / radius, 1/mm; 0 if bulging. */
  hollowness: number;
  /** A place lifted this far off the panel is clear of the triangles it is tested by, mm. */
  lift: number;
}

export interface Plane {
  origin: Vec3;
  /** Unit, into the cabin. */
  normal: Vec3;
  /** Partials at the middle: (u, v) of a point of the plane, exact for parallelograms. */
  du: Vec3;
  dv: Vec3;
  low: Vec3;
  high: Vec3;
}

/** Where {@link evaluate} writes: P, ∂u, ∂v, ∂uu, ∂uv, ∂vv, three numbers each. */
export const newJet = (): Float64Array => new Float64Array(18);

export function prepareSurface(panel: Panel): Surface {
  const { control } = panel.patch;
  const power = new Float64Array(27);
  for (let k = 0; k < 3; k++) {
    const rows: number[] = [];
    for (let j = 0; j < 3; j++) {
      const [a, b, c] = [0, 1, 2].map((i) => (control[3 * j + i] as Vec3)[k] as number) as [
        number,
        number,
        number,
      ];
      rows.push(a, 2 * (b - a), a - 2 * b + c);
    }
    for (let i = 0; i < 3; i++) {
      const [a, b, c] = [rows[i], rows[3 + i], rows[6 + i]] as [number, number, number];
      power[9 * k + i] = a;
      power[9 * k + 3 + i] = 2 * (b - a);
      power[9 * k + 6 + i] = a - 2 * b + c;
    }
  }
  const plane = planeOf(panel);
  return {
    panel,
    power,
    plane,
    hollowness: plane ? 0 : hollownessOf(panel, power),
    lift: plane ? FLAT_LIFT : 2 * Math.max(PANEL_SAGITTA, strayOf(panel)),
  };
}

/** How far the panel's triangles may lie from it: an eighth of the second differences of a strip. */
function strayOf(panel: Panel): number {
  const { uv } = tessellatePanel(panel);
  const nu = Math.round(1 / (uv[1]?.[0] || 1));
  const nv = Math.max(1, uv.length / (nu + 1) - 1);
  const at = (i: number, j: number) => panel.patch.control[3 * j + i] as Vec3;
  const bend = (a: Vec3, b: Vec3, c: Vec3) => 2 * length(sub(sub(a, b), sub(b, c)));
  let uu = 0;
  let vv = 0;
  let twist = 0;
  for (let k = 0; k < 3; k++) {
    uu = Math.max(uu, bend(at(0, k), at(1, k), at(2, k)));
    vv = Math.max(vv, bend(at(k, 0), at(k, 1), at(k, 2)));
  }
  for (let j = 0; j < 2; j++)
    for (let i = 0; i < 2; i++) {
      const [across, back] = [sub(at(i + 1, j + 1), at(i, j + 1)), sub(at(i + 1, j), at(i, j))];
      twist = Math.max(twist, 4 * length(sub(across, back)));
    }
  return (uu / (nu * nu) + (2 * twist) / (nu * nv) + vv / (nv * nv)) / 8;
}

/** The tangent plane at the middle of the panel, whether it is flat or not. */
export function tangentPlane(panel: Panel, u = 0.5, v = 0.5): Plane {
  const { patch } = panel;
  const at = (pick: (...all: number[]) => number): Vec3 =>
    [0, 1, 2].map((k) => pick(...patch.control.map((p) => p[k] as number))) as unknown as Vec3;
  return {
    origin: pointOnPatch(patch, u, v),
    normal: patchNormal(patch, u, v),
    ...patchPartials(patch, u, v),
    low: at(Math.min),
    high: at(Math.max),
  };
}

function planeOf(panel: Panel): Plane | null {
  const plane = tangentPlane(panel);
  const isFlat = panel.patch.control.every(
    (p) => Math.abs(dot(sub(p, plane.origin), plane.normal)) < SAME_POINT,
  );
  return isFlat ? plane : null;
}

/** The point of the surface with its first and second derivatives, into `jet`. */
export function evaluateInPlace(power: Float64Array, u: number, v: number, jet: Float64Array) {
  for (let k = 0; k < 3; k++) {
    const c = 9 * k;
    const a0 = power[c] as number;
    const a1 = power[c + 1] as number;
    const a2 = power[c + 2] as number;
    const b0 = power[c + 3] as number;
    const b1 = power[c + 4] as number;
    const b2 = power[c + 5] as number;
    const c0 = power[c + 6] as number;
    const c1 = power[c + 7] as number;
    const c2 = power[c + 8] as number;
    const p0 = a0 + v * (b0 + v * c0);
    const p1 = a1 + v * (b1 + v * c1);
    const p2 = a2 + v * (b2 + v * c2);
    const q0 = b0 + 2 * v * c0;
    const q1 = b1 + 2 * v * c1;
    const q2 = b2 + 2 * v * c2;
    jet[k] = p0 + u * (p1 + u * p2);
    jet[3 + k] = p1 + 2 * u * p2;
    jet[6 + k] = q0 + u * (q1 + u * q2);
    jet[9 + k] = 2 * p2;
    jet[12 + k] = q1 + 2 * u * q2;
    jet[15 + k] = 2 * (c0 + u * (c1 + u * c2));
  }
}

const SAMPLES = 4;
const sample = newJet();

/** The greatest principal curvature towards the cabin (do Carmo, Differential Geometry, 3-3), sampled. */
function hollownessOf(panel: Panel, power: Float64Array): number {
  let most = 0;
  for (let j = 0; j <= SAMPLES; j++)
    for (let i = 0; i <= SAMPLES; i++) {
      evaluateInPlace(power, i / SAMPLES, j / SAMPLES, sample);
      const [du, dv, uu, uv, vv] = [3, 6, 9, 12, 15].map(
        (k) => [sample[k], sample[k + 1], sample[k + 2]] as unknown as Vec3,
      ) as [Vec3, Vec3, Vec3, Vec3, Vec3];
      const n = scale(cross(du, dv), panel.patch.facing);
      const [e, f, g] = [dot(du, du), dot(du, dv), dot(dv, dv)];
      const area = e * g - f * f;
      if (!(area > 1e-12 * e * g)) continue;
      const size = Math.sqrt(area);
      const [l, m, k] = [dot(uu, n) / size, dot(uv, n) / size, dot(vv, n) / size];
      const mean = (e * k - 2 * f * m + g * l) / (2 * area);
      const gauss = (l * k - m * m) / area;
      most = Math.max(most, mean + Math.sqrt(Math.max(0, mean * mean - gauss)));
    }
  return most;
}
