import { add, along, cross, direction, scale, sub, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { binnaclePlace, RECESS } from '../furniture/binnacle';
import type { PatchFinder } from '../furniture/patches';
import { block, loft, merge, ring, torus } from '../furniture/solid';
import { gloveBoxLid } from '../keep-clear/dash';
import { mirrorDrawn } from '../mirror';
import type { Drawn, Patch } from '../model';
import { patchNormal, patchPartials, pointOnPatch } from '../patch';

/** Two round instruments and a small one between, looking at the person at the wheel. */
function instruments(d: Dimensions, find: PatchFinder): Drawn[] {
  const place = binnaclePlace(d, find);
  if (!place) return [];
  const z = (place.top + place.bottom) / 2 - 6;
  const radius = Math.min(50, (place.top - place.bottom) / 2 - 14);
  if (radius < 14) return [];
  const at = (dy: number): Vec3 => [place.rear[0] - RECESS, place.y + dy, z];
  const disc = (dy: number, r: number) =>
    loft([
      ring(at(dy), [0, r, 0], [0, 0, r], 28),
      ring(along(at(dy), [1, 0, 0], 5), [0, r * 0.97, 0], [0, 0, r * 0.97], 28),
    ]);
  const dials = [
    [-82, radius],
    [82, radius],
    [0, radius * 0.55],
  ] as const;
  return [
    { material: 'dark-trim', mesh: merge(...dials.map(([dy, r]) => disc(dy, r))) },
    {
      material: 'metal',
      mesh: merge(
        ...dials.map(([dy, r]) => torus(along(at(dy), [1, 0, 0], 5), [1, 0, 0], r, 2.2, 28, 6)),
      ),
    },
  ];
}

/** A vent lying in a panel: frame and slats. `half` are half width and half height. */
function vent(patch: Patch, u: number, v: number, half: readonly [number, number]): Drawn[] {
  const middle = pointOnPatch(patch, u, v);
  const n = patchNormal(patch, u, v);
  const wide = direction(patchPartials(patch, u, v).du);
  if (!wide) return [];
  const high = cross(n, wide);
  const slat = (t: number) =>
    block(
      along(along(middle, n, 3), high, t * half[1]),
      [wide, high, n],
      [half[0] - 7, 3, 3],
      2,
      8,
      4,
    );
  const frame = block(along(middle, n, -2), [wide, high, n], [half[0], half[1], 4], 3, 16, 6);
  return [
    { material: 'dark-trim', mesh: frame },
    { material: 'hard-trim', mesh: merge(slat(-0.5), slat(0), slat(0.5)) },
  ];
}

/** A thin raised line along points on a panel: a seam or the gap round a lid. */
function seam(points: readonly Vec3[], normals: readonly Vec3[], width: number): Drawn {
  const rings = points.map((p, i) => {
    const before = points[Math.max(0, i - 1)] as Vec3;
    const after = points[Math.min(points.length - 1, i + 1)] as Vec3;
    const run = direction(sub(after, before)) ?? [0, 1, 0];
    const n = normals[i] as Vec3;
    const side = direction(cross(run, n)) ?? [0, 0, 1];
    const on = along(p, n, 0.8);
    return ring(on, scale(side, width / 2), scale(n, 1.1), 6);
  });
  return { material: 'dark-trim', mesh: loft(rings) };
}

function gloveBox(d: Dimensions, find: PatchFinder): Drawn[] {
  const lid = gloveBoxLid(d, find);
  const face = find('dash-lower-right');
  if (!lid || !face) return [];
  const n = patchNormal(face, 0.5, 0.5);
  const w = lid.halfWidth - 6;
  const edge = (from: readonly [number, number], to: readonly [number, number]) => {
    // Enough places that one falls near the crease the lid is bent along.
    const points = Array.from({ length: 9 }, (_, i) => i / 8).map((t) =>
      lid.at(from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t),
    );
    return seam(
      points,
      points.map(() => n),
      4.5,
    ).mesh;
  };
  const outline = merge(
    edge([-w, 0], [w, 0]),
    edge([-w, 1], [w, 1]),
    edge([-w, 0], [-w, 1]),
    edge([w, 0], [w, 1]),
  );
  const latch = along(lid.at(0, 0.86), n, 3);
  return [
    { material: 'dark-trim', mesh: outline },
    {
      material: 'metal',
      mesh: block(latch, [[0, 1, 0], cross(n, [0, 1, 0]), n], [34, 9, 4], 4, 12, 4),
    },
  ];
}

/** The screen in the middle of the dash. */
function headUnit(find: PatchFinder): Drawn[] {
  const face = find('dash-face-center');
  if (!face) return [];
  const [u, v] = [0.5, 0.52];
  const middle = pointOnPatch(face, u, v);
  const n = patchNormal(face, u, v);
  const wide = direction(patchPartials(face, u, v).du);
  if (!wide) return [];
  const high = cross(n, wide);
  const edge = sub(pointOnPatch(face, 1, v), pointOnPatch(face, 0, v));
  const half = Math.min(112, Math.sqrt(edge[0] ** 2 + edge[1] ** 2) / 2 - 16);
  const tall = sub(pointOnPatch(face, u, 0.96), pointOnPatch(face, u, 0.08));
  const halfHeight = Math.min(66, Math.sqrt(tall[0] ** 2 + tall[2] ** 2) / 2);
  if (half < 40 || halfHeight < 20) return [];
  return [
    {
      material: 'dark-trim',
      mesh: block(add(middle, scale(n, 2)), [wide, high, n], [half, halfHeight, 6], 5, 16, 8),
    },
  ];
}

/** What is drawn on the dash of the left-hand-drive car. */
export function dashTrim(d: Dimensions, find: PatchFinder): Drawn[] {
  const out = [...instruments(d, find), ...gloveBox(d, find), ...headUnit(find)];
  const face = find('dash-face-left');
  if (face) {
    const left = [...vent(face, 0.88, 0.66, [54, 30]), ...vent(face, 0.13, 0.66, [50, 30])];
    out.push(...left, ...left.map(mirrorDrawn));
  }
  return out;
}
