/** Checks on closed bodies, written the slow plain way so that they prove the fast ones. */
import type { MeshShape, Shape } from '../../../src/geometry/input';
import { cross, distance, dot, length, mix, sub, type Vec3 } from '../../../src/geometry/vector';

/** Every edge is walked exactly once each way: no hole, no flap, one consistent outside. */
export function isWatertight(mesh: MeshShape): boolean {
  const seen = new Set<string>();
  for (const [a, b, c] of mesh.triangles) {
    for (const edge of [`${a}-${b}`, `${b}-${c}`, `${c}-${a}`]) {
      if (seen.has(edge)) return false;
      seen.add(edge);
    }
  }
  for (const edge of seen) {
    const [a, b] = edge.split('-');
    if (!seen.has(`${b}-${a}`)) return false;
  }
  return seen.size > 0;
}

export const isFiniteShape = (shape: Shape): boolean =>
  JSON.stringify(shape, (_, v) =>
    typeof v === 'number' && !Number.isFinite(v) ? 'bad' : v,
  ).includes('"bad"') === false;

/** Enclosed volume, mm³, by the divergence theorem. */
export function volume(mesh: MeshShape): number {
  let sum = 0;
  for (const t of mesh.triangles) {
    const [a, b, c] = t.map((i) => mesh.vertices[i] as Vec3) as [Vec3, Vec3, Vec3];
    sum += dot(a, cross(b, c)) / 6;
  }
  return sum;
}

/** How often the mesh winds round the point: 0 outside, at least 1 inside (van Oosterom 1983). */
export function winding(mesh: MeshShape, p: Vec3): number {
  let angle = 0;
  for (const t of mesh.triangles) {
    const [a, b, c] = t.map((i) => sub(mesh.vertices[i] as Vec3, p)) as [Vec3, Vec3, Vec3];
    const [la, lb, lc] = [length(a), length(b), length(c)];
    const below = la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb;
    angle += 2 * Math.atan2(dot(a, cross(b, c)), below);
  }
  return Math.round(angle / (4 * Math.PI));
}

export function toSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const d = sub(b, a);
  const l2 = dot(d, d);
  const t = l2 > 0 ? Math.min(1, Math.max(0, dot(sub(p, a), d) / l2)) : 0;
  return distance(p, mix(a, b, t));
}

function toTriangle(p: Vec3, a: Vec3, b: Vec3, c: Vec3): number {
  const n = cross(sub(b, a), sub(c, a));
  const l = length(n);
  const inside =
    l > 0 &&
    dot(cross(sub(b, a), sub(p, a)), n) >= 0 &&
    dot(cross(sub(c, b), sub(p, b)), n) >= 0 &&
    dot(cross(sub(a, c), sub(p, c)), n) >= 0;
  if (inside) return Math.abs(dot(sub(p, a), n)) / l;
  return Math.min(toSegment(p, a, b), toSegment(p, b, c), toSegment(p, c, a));
}

/** From a point to the box round a mesh, mm. */
function toBounds(mesh: MeshShape, p: Vec3): number {
  let sum = 0;
  for (const i of [0, 1, 2] as const) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const v of mesh.vertices) {
      low = Math.min(low, v[i]);
      high = Math.max(high, v[i]);
    }
    sum += Math.max(0, low - p[i], p[i] - high) ** 2;
  }
  return Math.sqrt(sum);
}

/** Farther than this from the box round a mesh, that distance is close enough. */
const FAR = 120;

/**
 * From a point to a body, mm: 0 inside it; far away only to the box round it, so too little rather than too much. Boxes are
 * none of this cabin's obstacles.
 */
export function clearance(shape: Shape, p: Vec3): number {
  switch (shape.shape) {
    case 'capsule':
      return Math.max(0, toSegment(p, shape.from, shape.to) - shape.radius);
    case 'ring': {
      const v = sub(p, shape.center);
      const up = dot(v, shape.axis) / length(shape.axis);
      const out = Math.sqrt(Math.max(0, dot(v, v) - up * up)) - shape.diameter / 2;
      return Math.max(0, Math.sqrt(out * out + up * up) - shape.thickness / 2);
    }
    case 'mesh': {
      const far = toBounds(shape, p);
      if (far > FAR) return far;
      if (winding(shape, p) !== 0) return 0;
      let least = Number.POSITIVE_INFINITY;
      for (const t of shape.triangles) {
        const [a, b, c] = t.map((i) => shape.vertices[i] as Vec3) as [Vec3, Vec3, Vec3];
        least = Math.min(least, toTriangle(p, a, b, c));
      }
      return least;
    }
    case 'box':
      throw new Error('clearance: no box expected');
  }
}
