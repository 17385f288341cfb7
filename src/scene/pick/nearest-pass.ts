/** Where a straight line passes a body or panel most narrowly. */
import {
  along,
  clamp,
  direction,
  distance,
  dot,
  type MeshShape,
  mix,
  type Panel,
  type RingShape,
  type Shape,
  scale,
  sub,
  tessellate,
  type Vec3,
} from '../../geometry';
import { basisAround, shapeMesh } from '../meshes/shape-mesh';

export interface Pass {
  onLine: Vec3;
  onBody: Vec3;
}

const ROUND_RING = 96;
/** Cells a panel is cut into along u and v. */
const CELLS = 10;

/**
 * The place between `from` and `to` where the body comes nearest, measured as sound does: a gap
 * counts for less in the middle of the line, where the Fresnel zone is wide, than near its ends.
 * For lines nothing crosses; to a few millimetres on curved bodies. `null` where there is no line.
 */
export function nearestPass(from: Vec3, to: Vec3, body: Shape | Panel): Pass | null {
  if (!direction(sub(to, from))) return null;
  if (!('shape' in body)) {
    return pastMesh(from, to, tessellate(body.patch, CELLS, CELLS));
  }
  switch (body.shape) {
    case 'capsule':
      return pastCapsule(from, to, body.from, body.to, body.radius);
    case 'ring':
      return pastRing(from, to, body);
    default:
      return pastMesh(from, to, shapeMesh(body));
  }
}

function pastCapsule(from: Vec3, to: Vec3, a: Vec3, b: Vec3, radius: number): Pass {
  const [s, t] = nearestParameters(from, to, a, b);
  const onLine = mix(from, to, s);
  return { onLine, onBody: towards(mix(a, b, t), onLine, radius) };
}

function pastRing(from: Vec3, to: Vec3, { center, axis, diameter, thickness }: RingShape): Pass {
  const { side, over } = basisAround(axis);
  let best: Pass = { onLine: from, onBody: center };
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ROUND_RING; i++) {
    const t = (2 * Math.PI * i) / ROUND_RING;
    const out = along(scale(side, Math.cos(t)), over, Math.sin(t));
    const middle = along(center, out, diameter / 2);
    const onLine = mix(from, to, parameterOf(from, to, middle));
    const onBody = towards(middle, onLine, thickness / 2);
    const gap = narrowness(from, to, onLine, onBody);
    if (gap >= least) continue;
    least = gap;
    best = { onLine, onBody };
  }
  return best;
}

/** An edge of a mesh is nearest to a line outside it, wherever the two do not meet. */
function pastMesh(
  from: Vec3,
  to: Vec3,
  { vertices, triangles }: Pick<MeshShape, 'vertices' | 'triangles'>,
): Pass | null {
  let best: Pass | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const triangle of triangles) {
    for (let k = 0; k < 3; k++) {
      const i = triangle[k] as number;
      const j = triangle[(k + 1) % 3] as number;
      const [a, b] = [vertices[i], vertices[j]];
      if (!a || !b) continue;
      const [s, t] = nearestParameters(from, to, a, b);
      const onLine = mix(from, to, s);
      const onBody = mix(a, b, t);
      const gap = narrowness(from, to, onLine, onBody);
      if (gap >= least) continue;
      least = gap;
      best = { onLine, onBody };
    }
  }
  return best;
}

/** Gap² over the square of the Fresnel radius there, but for the wavelength. */
function narrowness(from: Vec3, to: Vec3, onLine: Vec3, onBody: Vec3): number {
  const gap = sub(onBody, onLine);
  const [d1, d2] = [Math.max(1, distance(from, onLine)), Math.max(1, distance(onLine, to))];
  return dot(gap, gap) * (1 / d1 + 1 / d2);
}

function parameterOf(from: Vec3, to: Vec3, point: Vec3): number {
  const way = sub(to, from);
  return clamp(dot(sub(point, from), way) / dot(way, way), 0, 1);
}

/** From `middle` towards `point`, no farther than it. */
function towards(middle: Vec3, point: Vec3, reach: number): Vec3 {
  const out = direction(sub(point, middle));
  return out ? along(middle, out, Math.min(reach, distance(middle, point))) : middle;
}

/** Where on two segments (0 to 1 each) they come nearest; the first has a length. */
function nearestParameters(p: Vec3, q: Vec3, a: Vec3, b: Vec3): [number, number] {
  const [u, v, w] = [sub(q, p), sub(b, a), sub(p, a)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const denominator = uu * vv - uv * uv;
  let s = denominator > 1e-9 * uu * vv ? clamp((uv * vw - vv * uw) / denominator, 0, 1) : 0;
  const t = vv > 0 ? clamp((uv * s + vw) / vv, 0, 1) : 0;
  s = clamp((uv * t - uw) / uu, 0, 1);
  return [s, t];
}
