import {
  along,
  cross,
  direction,
  distance,
  dot,
  type MeshShape,
  radians,
  type Shape,
  sub,
  type Vec3,
} from '../../geometry';

/** True when the point lies inside the solid (a ring's solid is its tube). */
export function insideShape(shape: Shape, point: Vec3): boolean {
  switch (shape.shape) {
    case 'box': {
      const local = unturned(sub(point, shape.center), shape.turnDeg ?? [0, 0, 0]);
      return local.every((c, i) => Math.abs(c) <= (shape.size[i] as number) / 2);
    }
    case 'capsule':
      return distance(point, nearestOnSegment(shape.from, shape.to, point)) <= shape.radius;
    case 'ring': {
      const n = direction(shape.axis);
      if (!n) return false;
      const offset = sub(point, shape.center);
      const height = dot(offset, n);
      const radial = Math.sqrt(Math.max(dot(offset, offset) - height * height, 0));
      return Math.hypot(radial - shape.diameter / 2, height) <= shape.thickness / 2;
    }
    case 'mesh':
      return insideMesh(shape, point);
  }
}

/** Undoes a turn about X, then Y, then Z (fixed axes, right-handed, degrees). */
function unturned([x, y, z]: Vec3, [rx, ry, rz]: Vec3): Vec3 {
  const [cz, sz] = [Math.cos(radians(rz)), Math.sin(radians(rz))];
  const [x1, y1] = [x * cz + y * sz, -x * sz + y * cz];
  const [cy, sy] = [Math.cos(radians(ry)), Math.sin(radians(ry))];
  const [x2, z2] = [x1 * cy - z * sy, x1 * sy + z * cy];
  const [cx, sx] = [Math.cos(radians(rx)), Math.sin(radians(rx))];
  return [x2, y1 * cx + z2 * sx, -y1 * sx + z2 * cx];
}

function nearestOnSegment(from: Vec3, to: Vec3, point: Vec3): Vec3 {
  const d = sub(to, from);
  const size = dot(d, d);
  const t = size > 0 ? Math.min(1, Math.max(0, dot(sub(point, from), d) / size)) : 0;
  return along(from, d, t);
}

/** A direction along no axis and no likely edge, so that the ray seldom grazes one. */
const RAY: Vec3 = [0.3391, 0.5407, 0.7698];

/** By crossings of one ray (Möller–Trumbore): odd is inside, for a closed mesh. */
function insideMesh({ vertices, triangles }: MeshShape, point: Vec3): boolean {
  let crossings = 0;
  for (const [i, j, k] of triangles) {
    const [a, b, c] = [vertices[i], vertices[j], vertices[k]];
    if (!a || !b || !c) continue;
    const [e1, e2] = [sub(b, a), sub(c, a)];
    const p = cross(RAY, e2);
    const det = dot(e1, p);
    if (Math.abs(det) < 1e-9) continue;
    const s = sub(point, a);
    const u = dot(s, p) / det;
    if (u < 0 || u > 1) continue;
    const q = cross(s, e1);
    const v = dot(RAY, q) / det;
    if (v < 0 || u + v > 1) continue;
    if (dot(e2, q) / det > 0) crossings++;
  }
  return crossings % 2 === 1;
}
