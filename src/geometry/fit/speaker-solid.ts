import { loft, merge, ring } from '../cabin/furniture/solid';
import type { MeshShape } from '../input';
import { along, dot, scale, sub, type Vec3 } from '../vector';
import { type Body, roundBody } from './body';
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

/** Solids of speakers that stand nowhere: at 0 0 0, facing along Z; by their size. */
const models = new Map<string, { body: Body; solid: Solid | null }>();
/** Sizes remembered: a plan has a handful, a slider that is dragged goes through many. */
const KEPT = 64;

/**
 * Another speaker as a solid and a body that may meet it, both seen from where that speaker stands:
 * of each size one solid is made, not one for every place.
 */
export function besideSpeaker(other: Body, body: Body): { solid: Solid | null; body: Body } {
  const { at, axis, across, flange, cutout, depth } = other;
  const size = `${flange} ${cutout} ${depth}`;
  let model = models.get(size);
  if (!model) {
    const standing = roundBody([0, 0, 0], [0, 0, 1], { flange, cutout, depth });
    model = { body: standing, solid: speakerSolid(standing) };
    if (models.size >= KEPT) models.clear();
    models.set(size, model);
  }
  const [a, b] = model.body.across;
  // Corner for corner as the other stands: its own directions fall on the model's.
  const seen = (v: Vec3): Vec3 =>
    along(along(scale(a, dot(v, across[0])), b, dot(v, across[1])), [0, 0, 1], dot(v, axis));
  return { solid: model.solid, body: roundBody(seen(sub(body.at, at)), seen(body.axis), body) };
}
