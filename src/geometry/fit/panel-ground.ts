/** What a panel's surface allows at a spot: how near its edge is, and how curved it is there. */
import type { Panel, Patch } from '../cabin/model';
import { patchBends, patchNormal, patchPartials, pointOnPatch } from '../cabin/patch';
import { cross, distance, dot, mix, type Vec3 } from '../vector';

/** A curved edge is cut into so many pieces: 100 mm of bow leaves 0.2 mm. */
const PIECES = 24;

/** The four edges, round the panel: u and v where each begins, u and v where it ends. */
export const EDGE_ENDS = [
  [0, 0, 1, 0],
  [1, 0, 1, 1],
  [1, 1, 0, 1],
  [0, 1, 0, 0],
] as const;

/** One edge as points from corner to corner, mm; a straight one by its ends alone. */
export function edgeOf(patch: Patch, k: number): Vec3[] {
  const [u0, v0, u1, v1] = EDGE_ENDS[k] as (typeof EDGE_ENDS)[number];
  const at = (t: number) => pointOnPatch(patch, u0 + (u1 - u0) * t, v0 + (v1 - v0) * t);
  const straight = distance(at(0.5), mix(at(0), at(1), 0.5)) < 1e-3;
  const pieces = straight && distance(at(0.25), mix(at(0), at(1), 0.25)) < 1e-3 ? 1 : PIECES;
  return Array.from({ length: pieces + 1 }, (_, i) => at(i / pieces));
}

/** The panel's outline as points round its edge, mm. */
export const outlineOf = (patch: Patch): Vec3[] =>
  [0, 1, 2, 3].flatMap((k) => edgeOf(patch, k).slice(0, -1));

const outlines = new WeakMap<Panel, readonly Vec3[]>();

function outlineOfPanel(panel: Panel): readonly Vec3[] {
  let outline = outlines.get(panel);
  if (!outline) {
    outline = outlineOf(panel.patch);
    outlines.set(panel, outline);
  }
  return outline;
}

export interface Ground {
  /** On the surface, without stand-off. */
  point: Vec3;
  normal: Vec3;
  /** From the spot to the nearest edge, seen along the normal, mm. */
  edge: number;
  /** Principal curvatures, positive where the panel falls away from the flange; 1/mm. */
  bend: readonly [number, number];
}

/** The ground at (u, v) of a panel. */
export function groundAt(panel: Panel, u: number, v: number): Ground {
  const { patch } = panel;
  const point = pointOnPatch(patch, u, v);
  const normal = patchNormal(patch, u, v);
  return {
    point,
    normal,
    edge: toLine(outlineOfPanel(panel), true, point, normal),
    bend: bendAt(patch, u, v, normal),
  };
}

/** From the spot to a line of points, both seen along the spot's normal, mm. */
export const flatToLine = (line: readonly Vec3[], { point, normal }: Ground): number =>
  toLine(line, false, point, normal);

/** Distance to a line of points laid flat along the normal. */
function toLine(line: readonly Vec3[], closed: boolean, point: Vec3, normal: Vec3): number {
  const count = line.length;
  let least = Infinity;
  let [ax, ay, az] = flat(line[closed ? count - 1 : 0] as Vec3, point, normal);
  for (let i = closed ? 0 : 1; i < count; i++) {
    const [bx, by, bz] = flat(line[i] as Vec3, point, normal);
    const [dx, dy, dz] = [bx - ax, by - ay, bz - az];
    const size = dx * dx + dy * dy + dz * dz;
    let t = size > 0 ? -(ax * dx + ay * dy + az * dz) / size : 0;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    const [x, y, z] = [ax + t * dx, ay + t * dy, az + t * dz];
    const near = x * x + y * y + z * z;
    if (near < least) least = near;
    [ax, ay, az] = [bx, by, bz];
  }
  return Math.sqrt(least);
}

function flat(p: Vec3, origin: Vec3, n: Vec3): Vec3 {
  const [x, y, z] = [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]];
  const h = x * n[0] + y * n[1] + z * n[2];
  return [x - h * n[0], y - h * n[1], z - h * n[2]];
}

/**
 * Principal curvatures from the first and second fundamental forms (do Carmo, Differential Geometry
 * of Curves and Surfaces, 3-3). None where the patch has no tangent plane.
 */
function bendAt(patch: Patch, u: number, v: number, normal: Vec3): [number, number] {
  const { du, dv } = patchPartials(patch, u, v);
  const { duu, duv, dvv } = patchBends(patch, u, v);
  const [E, F, G] = [dot(du, du), dot(du, dv), dot(dv, dv)];
  const area = cross(du, dv);
  const det = dot(area, area);
  if (det < 1e-9 * (E + G) ** 2) return [0, 0];
  const [L, M, N] = [-dot(duu, normal), -dot(duv, normal), -dot(dvv, normal)];
  const mean = (E * N - 2 * F * M + G * L) / (2 * det);
  const gauss = (L * N - M * M) / det;
  const root = Math.sqrt(Math.max(0, mean * mean - gauss));
  return [mean + root, mean - root];
}

/**
 * How far a flat ring lying on the panel lifts off at its worst place, mm: the panel's height under
 * it is ½ r² κ(direction), to second order, and the ring rests where that is highest.
 * @param inner,outer radii of the ring: cut-out and flange
 */
export function liftOf([strong, weak]: Ground['bend'], inner: number, outer: number): number {
  const sag = (k: number, r: number) => (k * r * r) / 2;
  const most = sag(strong, strong > 0 ? outer : inner);
  const least = sag(weak, weak > 0 ? inner : outer);
  return most - least;
}
