import { loft, merge, ring } from '../cabin/furniture/solid';
import { buildTriangleTree } from '../paths/build-triangle-tree';
import { along, scale, type Vec3 } from '../vector';
import type { Body } from './body';
import type { Solid } from './solid';

/** Sides of the round body: a flange of 180 mm strays 0.2 mm. */
const SIDES = 48;

/** A flange is this thick here, so that it has an inside, mm. */
const THIN = 0.01;

const solids = new WeakMap<Body, Solid | null>();

/** A speaker's own body as a solid for others to meet; `null` where it has no size. */
export function speakerSolid(body: Body): Solid | null {
  if (body.flange === 0) return null;
  let solid = solids.get(body);
  if (solid === undefined) {
    const { at, axis, across, depth, cutout, flange } = body;
    const disc = (back: number, r: number): Vec3[] =>
      ring(along(at, axis, -back), scale(across[0], r), scale(across[1], r), SIDES);
    const { vertices, triangles } = merge(
      loft([disc(0, cutout), disc(depth, cutout)]),
      loft([disc(0, flange), disc(THIN, flange)]),
    );
    const tree = buildTriangleTree(vertices, triangles);
    solid = tree && { tree, closed: true };
    solids.set(body, solid);
  }
  return solid;
}
