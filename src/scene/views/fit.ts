/** How far back to stand so that everything fits the sheet. */
import { along, cross, direction, dot, radians, sub, type Vec3 } from '../../geometry';

export interface Fit {
  target: Vec3;
  distance: number;
}

/** Right and up of a viewer at `out` (unit, from the target to the eye), Z as upright as can be. */
export function sheetAxes(out: Vec3): { right: Vec3; up: Vec3 } {
  const right = direction(cross([0, 0, 1], out)) ?? [0, 1, 0];
  return { right, up: cross(out, right) };
}

/**
 * The target and distance from which all `points` lie inside the sheet, centred, with `margin` of
 * its half-width and half-height left free. `fovDeg` is the vertical angle of view.
 */
export function fitPoints(
  points: readonly Vec3[],
  out: Vec3,
  fovDeg: number,
  aspect: number,
  margin = 0.08,
): Fit {
  const { right, up } = sheetAxes(out);
  const tanV = Math.tan(radians(fovDeg / 2)) * (1 - margin);
  const tanH = Math.tan(radians(fovDeg / 2)) * aspect * (1 - margin);
  // For each of the four edges the eye must stay behind a plane; a point at (x, y, z) in the
  // sheet's axes (z towards the eye) gives x − tanH·(e − z) ≤ cx and its three like. The widest
  // pair of each direction says how far back (e) and how far across (c) to stand.
  const edge = (axis: Vec3, tan: number) => {
    let high = Number.NEGATIVE_INFINITY;
    let low = Number.POSITIVE_INFINITY;
    for (const p of points) {
      const [x, z] = [dot(p, axis), dot(p, out)];
      high = Math.max(high, x + tan * z);
      low = Math.min(low, x - tan * z);
    }
    return { eye: (high - low) / (2 * tan), middle: (high + low) / 2 };
  };
  if (points.length === 0) return { target: [0, 0, 0], distance: 4000 };
  const h = edge(right, tanH);
  const v = edge(up, tanV);
  const eye = Math.max(h.eye, v.eye);
  const depths = points.map((p) => dot(p, out));
  const middle = (Math.max(...depths) + Math.min(...depths)) / 2;
  const flat: Vec3 = [0, 0, 0];
  const target = along(along(along(flat, right, h.middle), up, v.middle), out, middle);
  return { target, distance: Math.max(eye - middle, 200) };
}

/** Half the longest extent of the points and their middle: what near and far must hold. */
export function ballAround(points: readonly Vec3[]): { middle: Vec3; radius: number } {
  if (points.length === 0) return { middle: [0, 0, 0], radius: 3000 };
  const low = [0, 1, 2].map((k) => Math.min(...points.map((p) => p[k] as number)));
  const high = [0, 1, 2].map((k) => Math.max(...points.map((p) => p[k] as number)));
  const middle = low.map((l, k) => (l + (high[k] as number)) / 2) as unknown as Vec3;
  const radius = Math.max(...points.map((p) => Math.sqrt(dot(sub(p, middle), sub(p, middle)))));
  return { middle, radius: Math.max(radius, 300) };
}
