import { add, along, cross, direction, radians, type Shape, type Vec3 } from '../../../geometry';

const STEPS = 24;

/** Points whose hull in any view is the shape's outline; a ring counts as the disc it rims. */
export function shapePoints(shape: Shape): readonly Vec3[] {
  if (shape.shape === 'mesh') return shape.vertices;
  if (shape.shape === 'capsule')
    return [...ball(shape.from, shape.radius), ...ball(shape.to, shape.radius)];
  if (shape.shape === 'ring')
    return circle(shape.center, shape.axis, (shape.diameter + shape.thickness) / 2);
  const [sx, sy, sz] = shape.size;
  return [-0.5, 0.5].flatMap((i) =>
    [-0.5, 0.5].flatMap((j) =>
      [-0.5, 0.5].map((k) =>
        add(shape.center, turned([i * sx, j * sy, k * sz], shape.turnDeg ?? [0, 0, 0])),
      ),
    ),
  );
}

/** Turned about X, then Y, then Z: fixed axes, right-handed, degrees. */
function turned([x, y, z]: Vec3, [rx, ry, rz]: Vec3): Vec3 {
  const [cx, sx] = [Math.cos(radians(rx)), Math.sin(radians(rx))];
  const [cy, sy] = [Math.cos(radians(ry)), Math.sin(radians(ry))];
  const [cz, sz] = [Math.cos(radians(rz)), Math.sin(radians(rz))];
  const [y1, z1] = [y * cx - z * sx, y * sx + z * cx];
  const [x2, z2] = [x * cy + z1 * sy, -x * sy + z1 * cy];
  return [x2 * cz - y1 * sz, x2 * sz + y1 * cz, z2];
}

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Three great circles: one of them is the outline in each view. */
const ball = (center: Vec3, radius: number): Vec3[] =>
  AXES.flatMap((axis) => circle(center, axis, radius));

function circle(center: Vec3, axis: Vec3, radius: number): Vec3[] {
  const n = direction(axis) ?? [1, 0, 0];
  // Any direction across the axis starts the circle; Y serves unless the axis lies along it.
  const a = direction(cross(n, Math.abs(n[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0])) ?? [0, 0, 1];
  const b = cross(n, a);
  return Array.from({ length: STEPS }, (_, i) => {
    const t = (2 * Math.PI * i) / STEPS;
    return along(along(center, a, Math.cos(t) * radius), b, Math.sin(t) * radius);
  });
}
