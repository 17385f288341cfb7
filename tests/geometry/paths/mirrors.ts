/** Panels to mirror sound in: rooms, bowls, and patches cut in four. */
import type { Panel, Patch, Vec3 } from '../../../src/geometry';
import { bilinearPatch } from '../../../src/geometry/cabin/patch';
import { buildCaster } from '../../../src/geometry/paths/cast';
import { type ReflectionQuery, reflectionsBetween } from '../../../src/geometry/paths/reflection';
import type { Reflection } from '../../../src/geometry/result';
import { mix } from '../../../src/geometry/vector';

export const panelOf = (id: string, patch: Patch, reflectivity = 1): Panel => ({
  id,
  name: id,
  patch,
  mountable: false,
  material: 'glass',
  reflectivity,
  depthBehind: null,
  airspaceBehind: null,
  roles: [],
  ofSkin: false,
  given: true,
});

/** The six walls of a box with one corner at the origin, each facing inward. */
export function room([x, y, z]: Vec3, reflectivity = 1): Panel[] {
  const wall = (id: string, a: Vec3, b: Vec3, c: Vec3, d: Vec3, facing: 1 | -1) =>
    panelOf(id, bilinearPatch([a, b, c, d], facing), reflectivity);
  return [
    wall('x0', [0, 0, 0], [0, y, 0], [0, y, z], [0, 0, z], 1),
    wall('x1', [x, 0, 0], [x, y, 0], [x, y, z], [x, 0, z], -1),
    wall('y0', [0, 0, 0], [x, 0, 0], [x, 0, z], [0, 0, z], -1),
    wall('y1', [0, y, 0], [x, y, 0], [x, y, z], [0, y, z], 1),
    wall('z0', [0, 0, 0], [x, 0, 0], [x, y, 0], [0, y, 0], 1),
    wall('z1', [0, 0, z], [x, 0, z], [x, y, z], [0, y, z], -1),
  ];
}

/** Asks with nothing in the way but the panels themselves. */
export function reflect(
  panels: readonly Panel[],
  source: Vec3,
  receiver: Vec3,
  more: Partial<ReflectionQuery> = {},
): Reflection[] {
  const caster = more.caster ?? buildCaster(panels, []);
  const asked = { panels, caster, source, receiver, speed: 343.2, listener: null, spot: null };
  return reflectionsBetween({ ...asked, ...more });
}

/** Both halves of three Bézier points, sharing the middle one (de Casteljau). */
function halves(a: Vec3, b: Vec3, c: Vec3): Vec3[] {
  const [ab, bc] = [mix(a, b, 0.5), mix(b, c, 0.5)];
  return [a, ab, mix(ab, bc, 0.5), bc, c];
}

/** The same surface as four patches. */
export function quarters({ control, facing }: Patch): Patch[] {
  const at = (k: number) => control[k] as Vec3;
  const rows = [0, 3, 6].map((k) => halves(at(k), at(k + 1), at(k + 2)));
  const columns = [0, 1, 2, 3, 4].map((i) =>
    halves(...(rows.map((row) => row[i]) as [Vec3, Vec3, Vec3])),
  );
  return [0, 2].flatMap((j0) =>
    [0, 2].map((i0) => ({
      control: [0, 1, 2].flatMap((j) => [0, 1, 2].map((i) => columns[i0 + i]?.[j0 + j] as Vec3)),
      facing,
    })),
  );
}
