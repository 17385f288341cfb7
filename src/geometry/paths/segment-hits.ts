/**
 * Where a segment first meets a simple solid, exactly rather than by triangles.
 * Each function returns the distance from `a` along a→b at which the segment first meets the solid
 * (0 when `a` is inside), or `null` when it does not. Axes and mm as everywhere.
 */
import type { BoxShape, CapsuleShape, RingShape } from '../input';
import { add, clamp, cross, direction, distance, dot, radians, sub, type Vec3 } from '../vector';

/** Turns `p` about X, then Y, then Z: fixed axes, right-handed, degrees. */
export function turn(p: Vec3, turnDeg: Vec3): Vec3 {
  const [rx, ry, rz] = [radians(turnDeg[0]), radians(turnDeg[1]), radians(turnDeg[2])];
  let [x, y, z] = p;
  [y, z] = [y * Math.cos(rx) - z * Math.sin(rx), y * Math.sin(rx) + z * Math.cos(rx)];
  [x, z] = [x * Math.cos(ry) + z * Math.sin(ry), -x * Math.sin(ry) + z * Math.cos(ry)];
  [x, y] = [x * Math.cos(rz) - y * Math.sin(rz), x * Math.sin(rz) + y * Math.cos(rz)];
  return [x, y, z];
}

/** The box's own three unit axes in car axes. */
export function boxAxes(box: BoxShape): readonly [Vec3, Vec3, Vec3] {
  const t = box.turnDeg;
  if (!t)
    return [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
  return [turn([1, 0, 0], t), turn([0, 1, 0], t), turn([0, 0, 1], t)];
}

/** Slab method in the box's own axes. */
export function segmentBox(a: Vec3, b: Vec3, box: BoxShape): number | null {
  const axes = boxAxes(box);
  const start = sub(a, box.center);
  const step = sub(b, a);
  let enter = 0;
  let leave = 1;
  for (let k = 0; k < 3; k++) {
    const axis = axes[k] as Vec3;
    const half = (box.size[k] as number) / 2;
    const s = dot(start, axis);
    const d = dot(step, axis);
    if (Math.abs(d) < 1e-12) {
      if (Math.abs(s) > half) return null;
      continue;
    }
    const t0 = (-half - s) / d;
    const t1 = (half - s) / d;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
    if (enter > leave) return null;
  }
  return enter * distance(a, b);
}

/** First meeting with a ball, as a fraction of a→b, or Infinity. */
function fractionBall(a: Vec3, b: Vec3, center: Vec3, radius: number): number {
  const mx = a[0] - center[0];
  const my = a[1] - center[1];
  const mz = a[2] - center[2];
  const qc = mx * mx + my * my + mz * mz - radius * radius;
  if (qc <= 0) return 0;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const dz = b[2] - a[2];
  const qb = mx * dx + my * dy + mz * dz;
  // Beyond the ball, or going away from it.
  if (qb >= 0) return Infinity;
  const qa = dx * dx + dy * dy + dz * dz;
  const root = qb * qb - qa * qc;
  if (root < 0) return Infinity;
  const t = (-qb - Math.sqrt(root)) / qa;
  return t <= 1 ? t : Infinity;
}

/** Fraction of a→b at which the segment enters the cylinder between a capsule's balls, or Infinity. */
function fractionCylinder(a: Vec3, b: Vec3, { from, to, radius }: CapsuleShape): number {
  const cx = to[0] - from[0];
  const cy = to[1] - from[1];
  const cz = to[2] - from[2];
  const coreSq = cx * cx + cy * cy + cz * cz;
  if (coreSq === 0) return Infinity;
  const mx = a[0] - from[0];
  const my = a[1] - from[1];
  const mz = a[2] - from[2];
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const dz = b[2] - a[2];
  // Distances from the core's line: drop the parts along it, then solve the quadratic.
  const md = (mx * cx + my * cy + mz * cz) / coreSq;
  const nd = (dx * cx + dy * cy + dz * cz) / coreSq;
  const px = mx - md * cx;
  const py = my - md * cy;
  const pz = mz - md * cz;
  const nx = dx - nd * cx;
  const ny = dy - nd * cy;
  const nz = dz - nd * cz;
  const qa = nx * nx + ny * ny + nz * nz;
  const qb = px * nx + py * ny + pz * nz;
  const qc = px * px + py * py + pz * pz - radius * radius;
  if (qc <= 0 && md >= 0 && md <= 1) return 0;
  if (qa <= 1e-12) return Infinity;
  const root = qb * qb - qa * qc;
  if (root < 0) return Infinity;
  const t = (-qb - Math.sqrt(root)) / qa;
  const s = md + t * nd;
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? t : Infinity;
}

/** A capsule is two balls and the cylinder between them. */
export function segmentCapsule(a: Vec3, b: Vec3, capsule: CapsuleShape): number | null {
  const { from, to, radius } = capsule;
  const first = Math.min(
    fractionBall(a, b, from, radius),
    fractionBall(a, b, to, radius),
    fractionCylinder(a, b, capsule),
  );
  return first === Infinity ? null : first * distance(a, b);
}

/**
 * A ring (torus) by sphere tracing: the distance to a torus's surface is exact (distance to its
 * circle less the tube's radius), so stepping by it cannot jump over the tube.
 */
export function segmentRing(a: Vec3, b: Vec3, ring: RingShape): number | null {
  const axis = direction(ring.axis);
  const reach = distance(a, b);
  if (!axis) return null;
  const radius = ring.diameter / 2;
  const tube = ring.thickness / 2;
  const [ax, ay, az] = axis;
  const [sx, sy, sz] = sub(a, ring.center);
  const [dx, dy, dz] = sub(b, a);
  const closeEnough = 1e-6;
  let s = 0;
  // A tangent line converges slowly; 200 steps leave well under a micrometre in doubt.
  for (let i = 0; i < 200 && s <= reach; i++) {
    const k = reach > 0 ? s / reach : 0;
    const x = sx + dx * k;
    const y = sy + dy * k;
    const z = sz + dz * k;
    // To the circle the tube runs on: out from it in its plane, and up from the plane.
    const up = x * ax + y * ay + z * az;
    const out = Math.sqrt(Math.max(0, x * x + y * y + z * z - up * up)) - radius;
    const gap = Math.sqrt(out * out + up * up) - tube;
    if (gap <= closeEnough) return clamp(s, 0, reach);
    s += gap;
  }
  return null;
}

/** Möller–Trumbore for a segment against one triangle, both faces; J. Graphics Tools 2(1), 1997. */
export function segmentTriangle(a: Vec3, b: Vec3, p: Vec3, q: Vec3, r: Vec3): number | null {
  const step = sub(b, a);
  const e1 = sub(q, p);
  const e2 = sub(r, p);
  const h = cross(step, e2);
  const det = dot(e1, h);
  if (det === 0) return null;
  const s = sub(a, p);
  const u = dot(s, h) / det;
  if (u < 0 || u > 1) return null;
  const k = cross(s, e1);
  const v = dot(step, k) / det;
  if (v < 0 || u + v > 1) return null;
  const t = dot(e2, k) / det;
  return t >= 0 && t <= 1 ? t * distance(a, b) : null;
}

/** Axis-aligned bounds of a simple solid: [low, high]. */
export function boundsOf(shape: BoxShape | CapsuleShape | RingShape): readonly [Vec3, Vec3] {
  if (shape.shape === 'capsule') {
    const r: Vec3 = [shape.radius, shape.radius, shape.radius];
    const low = (k: 0 | 1 | 2) => Math.min(shape.from[k], shape.to[k]);
    const high = (k: 0 | 1 | 2) => Math.max(shape.from[k], shape.to[k]);
    return [sub([low(0), low(1), low(2)], r), add([high(0), high(1), high(2)], r)];
  }
  if (shape.shape === 'ring') {
    const axis = direction(shape.axis) ?? [0, 0, 1];
    const reach = (k: 0 | 1 | 2) =>
      (shape.diameter / 2) * Math.sqrt(Math.max(0, 1 - axis[k] * axis[k])) + shape.thickness / 2;
    const r: Vec3 = [reach(0), reach(1), reach(2)];
    return [sub(shape.center, r), add(shape.center, r)];
  }
  const axes = boxAxes(shape);
  const reach = (k: 0 | 1 | 2) =>
    (Math.abs(axes[0][k]) * shape.size[0] +
      Math.abs(axes[1][k]) * shape.size[1] +
      Math.abs(axes[2][k]) * shape.size[2]) /
    2;
  const r: Vec3 = [reach(0), reach(1), reach(2)];
  return [sub(shape.center, r), add(shape.center, r)];
}
