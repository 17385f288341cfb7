/**
 * Closed triangle meshes from a few rings: everything soft or turned in the cabin is lofted. All
 * results are watertight and wound so that their outside is outside.
 */
import type { MeshShape } from '../../input';
import { along, cross, direction, distance, dot, mix, scale, sub, type Vec3 } from '../../vector';
import { remembering } from './remember';

type Triangle = readonly [number, number, number];

/**
 * How rings of n points are joined, right-handed about the way from first to last, or turned round.
 * It depends on the counts alone, so every body of a kind shares it: building the triangles anew
 * took half the time of a seat.
 */
const joined = remembering<readonly Triangle[]>(256);

function join(rings: number, n: number, turned: boolean): readonly Triangle[] {
  return joined(`${rings} ${n} ${turned}`, () => {
    const triangles: Triangle[] = [];
    for (let j = 0; j + 1 < rings; j++) {
      for (let i = 0; i < n; i++) {
        const a = j * n + i;
        const b = j * n + ((i + 1) % n);
        triangles.push([a, b, b + n], [a, b + n, a + n]);
      }
    }
    const [start, end, base] = [rings * n, rings * n + 1, (rings - 1) * n];
    for (let i = 0; i < n; i++) {
      const next = (i + 1) % n;
      triangles.push([start, next, i], [end, base + i, base + next]);
    }
    return turned ? triangles.map(([a, b, c]) => [a, c, b] as const) : triangles;
  });
}

function middleOf(ring: readonly Vec3[]): Vec3 {
  const n = ring.length;
  let [x, y, z] = [0, 0, 0];
  for (const p of ring) {
    x += p[0];
    y += p[1];
    z += p[2];
  }
  return [x / n, y / n, z / n];
}

/** The solid between rings of equally many points, closed by a fan at either end. */
export function loft(rings: readonly (readonly Vec3[])[]): MeshShape {
  const first = rings[0];
  const last = rings[rings.length - 1];
  if (!first || !last || rings.length < 2) {
    throw new RangeError(`loft: expected at least 2 rings, got ${rings.length}`);
  }
  const vertices: Vec3[] = rings.flat();
  const start = middleOf(first);
  vertices.push(start, middleOf(last));
  // The walls face outward when the first ring turns right-handed about the way to the second.
  const ahead = sub(middleOf(rings[1] as readonly Vec3[]), start);
  const turned = dot(areaVector(first), ahead) < 0;
  return { shape: 'mesh', vertices, triangles: join(rings.length, first.length, turned) };
}

/** Twice the area of a closed ring, along the axis it turns right-handed about (Newell). */
function areaVector(ring: readonly Vec3[]): Vec3 {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as Vec3;
    const q = ring[(i + 1) % ring.length] as Vec3;
    x += p[1] * q[2] - p[2] * q[1];
    y += p[2] * q[0] - p[0] * q[2];
    z += p[0] * q[1] - p[1] * q[0];
  }
  return [x, y, z];
}

/**
 * A ring round `center` in the plane of `a` and `b` (half axes with their lengths). `power` 2 is an
 * ellipse; larger is squarer with rounded corners.
 */
export function ring(center: Vec3, a: Vec3, b: Vec3, points: number, power = 2): Vec3[] {
  return unitRing(`${points} ${power}`, () => roundTheRing(points, power)).map(
    ([c, s]): Vec3 => [
      center[0] + c * a[0] + s * b[0],
      center[1] + c * a[1] + s * b[1],
      center[2] + c * a[2] + s * b[2],
    ],
  );
}

// A few kinds of rings make all bodies: their roots and cosines were half the time of a person.
const unitRing = remembering<readonly (readonly [number, number])[]>(64);

function roundTheRing(points: number, power: number): [number, number][] {
  return Array.from({ length: points }, (_, i) => {
    const t = (2 * Math.PI * (i + 0.5)) / points;
    const [c, s] = [Math.cos(t), Math.sin(t)];
    return [Math.sign(c) * Math.abs(c) ** (2 / power), Math.sign(s) * Math.abs(s) ** (2 / power)];
  });
}

/** Two unit vectors square to `axis` and to each other; the first as near the car's Y as it goes. */
export function across(axis: Vec3): [Vec3, Vec3] {
  const unit = direction(axis) ?? [1, 0, 0];
  const side = direction(sub([0, 1, 0], scale(unit, unit[1]))) ?? [1, 0, 0];
  return [side, cross(unit, side)];
}

/** A limb: round sections of the given radii through the points, with rounded ends. */
export function limb(points: readonly Vec3[], radii: readonly number[], around = 10): MeshShape {
  const last = points.length - 1;
  const rings: Vec3[][] = [];
  const put = (p: Vec3, axis: Vec3, r: number) => {
    const [a, b] = across(axis);
    rings.push(ring(p, scale(a, r), scale(b, r), around));
  };
  const heading = (i: number): Vec3 =>
    direction(sub(points[Math.min(i + 1, last)] as Vec3, points[Math.max(i - 1, 0)] as Vec3)) ?? [
      1, 0, 0,
    ];
  const end = (i: number, sign: number, steps: readonly number[]) => {
    const [p, r, axis] = [points[i] as Vec3, radii[i] as number, heading(i)];
    for (const t of steps) put(along(p, axis, sign * r * Math.sin(t)), axis, r * Math.cos(t));
  };
  end(0, -1, [1.35, 0.75]);
  for (let i = 0; i <= last; i++) put(points[i] as Vec3, heading(i), radii[i] as number);
  end(last, 1, [0.75, 1.35]);
  return loft(rings);
}

/** A straight rod with flat ends. */
export function rod(from: Vec3, to: Vec3, radius: number, around = 8): MeshShape {
  const [a, b] = across(sub(to, from));
  return loft([from, to].map((p) => ring(p, scale(a, radius), scale(b, radius), around)));
}

/**
 * A cushion-like block: `half` are the half lengths along the three unit axes, edges rounded by
 * `round` along the first axis and by the superellipse power across it.
 */
export function block(
  center: Vec3,
  axes: readonly [Vec3, Vec3, Vec3],
  half: Vec3,
  round: number,
  around = 16,
  power = 4,
): MeshShape {
  const r = Math.min(round, half[0] * 0.95, half[1] * 0.95, half[2] * 0.95);
  const rings: Vec3[][] = [];
  for (const [t, inset] of [
    [-half[0], r],
    [-half[0] + 0.3 * r, 0.29 * r],
    [-half[0] + r, 0],
    [half[0] - r, 0],
    [half[0] - 0.3 * r, 0.29 * r],
    [half[0], r],
  ] as const) {
    const p = along(center, axes[0], t);
    rings.push(
      ring(p, scale(axes[1], half[1] - inset), scale(axes[2], half[2] - inset), around, power),
    );
  }
  return loft(rings);
}

/** A torus: the steering wheel's rim. */
export function torus(
  center: Vec3,
  axis: Vec3,
  radius: number,
  tube: number,
  around: number,
  section: number,
): MeshShape {
  const [a, b] = across(axis);
  const n = direction(axis) ?? [1, 0, 0];
  const vertices: Vec3[] = [];
  const triangles: Triangle[] = [];
  for (let i = 0; i < around; i++) {
    const t = (2 * Math.PI * i) / around;
    const out = along(scale(a, Math.cos(t)), b, Math.sin(t));
    for (let j = 0; j < section; j++) {
      const s = (2 * Math.PI * j) / section;
      vertices.push(along(along(center, out, radius + tube * Math.cos(s)), n, tube * Math.sin(s)));
      const [i2, j2] = [(i + 1) % around, (j + 1) % section];
      const [p, q] = [i * section + j, i2 * section + j];
      const [p2, q2] = [i * section + j2, i2 * section + j2];
      triangles.push([p, q, q2], [p, q2, p2]);
    }
  }
  return { shape: 'mesh', vertices, triangles };
}

/** Several closed meshes as one. */
export function merge(...meshes: readonly MeshShape[]): MeshShape {
  const vertices: Vec3[] = [];
  const triangles: Triangle[] = [];
  for (const mesh of meshes) {
    const base = vertices.length;
    for (const v of mesh.vertices) vertices.push(v);
    for (const [a, b, c] of mesh.triangles) triangles.push([a + base, b + base, c + base]);
  }
  return { shape: 'mesh', vertices, triangles };
}

/** Where a joint between two limbs of given lengths comes to stand, bent towards `bend`. */
export function joint(from: Vec3, to: Vec3, first: number, second: number, bend: Vec3): Vec3 {
  const gap = distance(from, to);
  const axis = direction(sub(to, from)) ?? [1, 0, 0];
  if (gap >= first + second) return mix(from, to, first / (first + second));
  const reach = Math.max(gap, Math.abs(first - second) + 1);
  const foot = (first * first - second * second + reach * reach) / (2 * reach);
  const rise = Math.sqrt(Math.max(0, first * first - foot * foot));
  const side = direction(sub(bend, scale(axis, dot(bend, axis)))) ?? [0, 0, 1];
  return along(along(from, axis, foot), side, rise);
}
