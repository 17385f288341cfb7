/** How zones are put together: left-hand drive, mm. */
import type { MeshShape } from '../../input';
import { along, type Vec3 } from '../../vector';
import { loft, ring } from '../furniture/solid';
import type { KeepClearZone, Patch } from '../model';
import { patchNormal, pointOnPatch } from '../patch';

export const zone = (
  id: string,
  name: string,
  reason: string,
  shape: KeepClearZone['shape'],
): KeepClearZone => ({ id, name, reason, shape, given: false });

/**
 * A slab over part of a panel: from `low` to `high` along its normal (negative is behind it), over
 * u and v between the given limits.
 */
export function slabOver(
  patch: Patch,
  u: readonly [number, number],
  v: readonly [number, number],
  depth: readonly [number, number],
  cuts = 6,
): MeshShape {
  const rings: Vec3[][] = [];
  for (let i = 0; i <= cuts; i++) {
    const at = u[0] + ((u[1] - u[0]) * i) / cuts;
    const corner = (vv: number, out: number) =>
      along(pointOnPatch(patch, at, vv), patchNormal(patch, at, vv), out);
    rings.push([
      corner(v[0], depth[0]),
      corner(v[0], depth[1]),
      corner(v[1], depth[1]),
      corner(v[1], depth[0]),
    ]);
  }
  return loft(rings);
}

/** A round or rectangular bag that opens from `from` to `to`, growing as it goes. */
export function bag(
  from: Vec3,
  to: Vec3,
  across: readonly [Vec3, Vec3],
  sizes: readonly (readonly [at: number, half: number, halfOther: number])[],
): MeshShape {
  return loft(
    sizes.map(([t, a, b]) => {
      const p = along(from, [to[0] - from[0], to[1] - from[1], to[2] - from[2]], t);
      const scaled = (axis: Vec3, k: number): Vec3 => [axis[0] * k, axis[1] * k, axis[2] * k];
      return ring(p, scaled(across[0], a), scaled(across[1], b), 14, 3);
    }),
  );
}
