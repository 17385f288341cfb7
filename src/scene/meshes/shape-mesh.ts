/** Boxes, rings and capsules as triangles, wound outward; mm, car axes. */
import {
  along,
  cross,
  direction,
  type MeshShape,
  radians,
  type Shape,
  sub,
  type Vec3,
} from '../../geometry';

const AROUND_RING = 48;
const AROUND_TUBE = 12;
const AROUND_CAPSULE = 20;
const CAP_STEPS = 6;

/** A shape's surface. A ring or capsule without a direction is drawn upright. */
export function shapeMesh(shape: Shape): MeshShape {
  switch (shape.shape) {
    case 'mesh':
      return shape;
    case 'box':
      return boxMesh(shape.center, shape.size, shape.turnDeg ?? [0, 0, 0]);
    case 'ring':
      return ringMesh(shape.center, shape.axis, shape.diameter / 2, shape.thickness / 2);
    case 'capsule':
      return capsuleMesh(shape.from, shape.to, shape.radius);
  }
}

/** About X, then Y, then Z: fixed axes, right-handed. */
function turn(p: Vec3, deg: Vec3): Vec3 {
  const [cx, cy, cz] = deg.map((d) => Math.cos(radians(d))) as [number, number, number];
  const [sx, sy, sz] = deg.map((d) => Math.sin(radians(d))) as [number, number, number];
  const [x, y1, z1] = [p[0], p[1] * cx - p[2] * sx, p[1] * sx + p[2] * cx];
  const [x2, z2] = [x * cy + z1 * sy, -x * sy + z1 * cy];
  return [x2 * cz - y1 * sz, x2 * sz + y1 * cz, z2];
}

const BOX_FACES = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
] as const;

function boxMesh(center: Vec3, size: Vec3, turnDeg: Vec3): MeshShape {
  const vertices: Vec3[] = [];
  for (let i = 0; i < 8; i++) {
    const local: Vec3 = [
      (i & 1 ? 0.5 : -0.5) * size[0],
      (i & 2 ? 0.5 : -0.5) * size[1],
      (i & 4 ? 0.5 : -0.5) * size[2],
    ];
    vertices.push(along(center, turn(local, turnDeg), 1));
  }
  const triangles = BOX_FACES.flatMap(([a, b, c, d]): [number, number, number][] => [
    [a, b, c],
    [a, c, d],
  ]);
  return { shape: 'mesh', vertices, triangles };
}

/** Two unit vectors square to `axis` and to each other. */
export function basisAround(axis: Vec3): { axis: Vec3; side: Vec3; over: Vec3 } {
  const unit = direction(axis) ?? [0, 0, 1];
  const helper: Vec3 = Math.abs(unit[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const side = direction(cross(helper, unit)) as Vec3;
  return { axis: unit, side, over: cross(unit, side) };
}

function ringMesh(center: Vec3, axis: Vec3, radius: number, tube: number): MeshShape {
  const b = basisAround(axis);
  const vertices: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  for (let i = 0; i < AROUND_RING; i++) {
    const t = (2 * Math.PI * i) / AROUND_RING;
    const out = along(scaled(b.side, Math.cos(t)), b.over, Math.sin(t));
    for (let j = 0; j < AROUND_TUBE; j++) {
      const s = (2 * Math.PI * j) / AROUND_TUBE;
      const p = along(center, out, radius + tube * Math.cos(s));
      vertices.push(along(p, b.axis, tube * Math.sin(s)));
      const at = (k: number, l: number) => (k % AROUND_RING) * AROUND_TUBE + (l % AROUND_TUBE);
      triangles.push(
        [at(i, j), at(i + 1, j), at(i + 1, j + 1)],
        [at(i, j), at(i + 1, j + 1), at(i, j + 1)],
      );
    }
  }
  return { shape: 'mesh', vertices, triangles };
}

const scaled = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];

function capsuleMesh(from: Vec3, to: Vec3, radius: number): MeshShape {
  const b = basisAround(sub(to, from));
  const vertices: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  const rows: { middle: Vec3; height: number; wide: number }[] = [];
  for (let k = 0; k <= CAP_STEPS; k++) {
    const a = (Math.PI / 2) * (k / CAP_STEPS - 1);
    rows.push({ middle: from, height: radius * Math.sin(a), wide: radius * Math.cos(a) });
  }
  for (let k = 0; k <= CAP_STEPS; k++) {
    const a = (Math.PI / 2) * (k / CAP_STEPS);
    rows.push({ middle: to, height: radius * Math.sin(a), wide: radius * Math.cos(a) });
  }
  rows.forEach((row, r) => {
    for (let i = 0; i < AROUND_CAPSULE; i++) {
      const t = (2 * Math.PI * i) / AROUND_CAPSULE;
      const out = along(scaled(b.side, Math.cos(t)), b.over, Math.sin(t));
      vertices.push(along(along(row.middle, b.axis, row.height), out, row.wide));
      if (r === 0) continue;
      const at = (k: number, l: number) => k * AROUND_CAPSULE + (l % AROUND_CAPSULE);
      triangles.push(
        [at(r - 1, i), at(r - 1, i + 1), at(r, i + 1)],
        [at(r - 1, i), at(r, i + 1), at(r, i)],
      );
    }
  });
  return { shape: 'mesh', vertices, triangles };
}
