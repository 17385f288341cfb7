import { loft, merge, ring } from '../cabin/furniture/solid';
import type { MeshShape } from '../input';
import { along, scale, type Vec3 } from '../vector';
import type { Body } from './body';
import { type Solid, solidOf } from './solid';

/** Sides of the round body: a flange of 180 mm strays 0.2 mm. */
const SIDES = 48;

/** A flange is this thick here, so that it has an inside, mm. */
const THIN = 0.01;

const meshes = new WeakMap<Body, MeshShape>();

/** A speaker's own body as a closed mesh: cylinder and flange. */
export function speakerMesh(body: Body): MeshShape {
  let mesh = meshes.get(body);
  if (!mesh) {
    const { at, axis, across, depth, cutout, flange } = body;
    const disc = (back: number, r: number): Vec3[] =>
      ring(along(at, axis, -back), scale(across[0], r), scale(across[1], r), SIDES);
    mesh = merge(
      loft([disc(0, cutout), disc(depth, cutout)]),
      loft([disc(0, flange), disc(THIN, flange)]),
    );
    meshes.set(body, mesh);
  }
  return mesh;
}

/** The same for others to meet; `null` where it has no size. */
export const speakerSolid = (body: Body): Solid | null =>
  body.flange === 0 ? null : solidOf(speakerMesh(body));
