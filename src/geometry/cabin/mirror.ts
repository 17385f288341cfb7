/**
 * Mirror images in the car's centre plane, Y = 0: how one set of code serves both drive sides.
 * Everything is built for left-hand drive and mirrored. Negation is exact in floating point, so the
 * mirrored car has exactly (===) the mirrored numbers.
 */
import type { Shape, Side } from '../input';
import { mirrorY, type Vec3 } from '../vector';
import type { Drawn, KeepClearZone, Obstacle, Patch, ReferencePoint, Seat } from './model';

const other = { left: 'right', right: 'left', Left: 'Right', Right: 'Left' } as const;

/** Swaps the words left and right, in an id or in a name. */
export const mirrorWords = (text: string): string =>
  text.replace(/\b(left|right|Left|Right)\b/g, (word) => other[word as keyof typeof other]);

/** Like mirrorY for one number: 0 stays 0, never −0. */
const negate = (x: number): number => (x === 0 ? 0 : -x);

/** Also turns every triangle round, so that a mesh's outside stays its outside. */
export function mirrorMesh<M extends Shape & { shape: 'mesh' }>(mesh: M): M {
  return {
    ...mesh,
    vertices: mesh.vertices.map(mirrorY),
    triangles: mesh.triangles.map(([a, b, c]) => [a, c, b] as const),
  };
}

/** Keeps whatever else the value carries. */
export function mirrorShape<S extends Shape>(shape: S): S {
  const s: Shape = shape;
  switch (s.shape) {
    case 'box': {
      const turned = { ...shape, center: mirrorY(s.center) };
      // Turns about X and Z change sense in a mirror that holds X and Z, the one about Y does not.
      return s.turnDeg === undefined
        ? turned
        : { ...turned, turnDeg: [negate(s.turnDeg[0]), s.turnDeg[1], negate(s.turnDeg[2])] };
    }
    case 'ring':
      return { ...shape, center: mirrorY(s.center), axis: mirrorY(s.axis) };
    case 'capsule':
      return { ...shape, from: mirrorY(s.from), to: mirrorY(s.to) };
    case 'mesh':
      return mirrorMesh(s) as typeof shape;
  }
}

export const mirrorDrawn = (drawn: Drawn): Drawn => ({ ...drawn, mesh: mirrorMesh(drawn.mesh) });

export function mirrorObstacle(o: Obstacle): Obstacle {
  const mirrored: Obstacle = {
    ...o,
    id: mirrorWords(o.id),
    name: mirrorWords(o.name),
    shape: mirrorShape(o.shape),
  };
  if (o.drawn) mirrored.drawn = o.drawn.map(mirrorDrawn);
  if (o.occupant) mirrored.occupant = { ...o.occupant, seat: mirrorWords(o.occupant.seat) };
  if (o.seat !== undefined) mirrored.seat = mirrorWords(o.seat);
  return mirrored;
}

export const mirrorZone = (zone: KeepClearZone): KeepClearZone => ({
  ...zone,
  id: mirrorWords(zone.id),
  name: mirrorWords(zone.name),
  shape: mirrorShape(zone.shape),
});

export const mirrorReference = (r: ReferencePoint): ReferencePoint => ({
  id: mirrorWords(r.id),
  name: mirrorWords(r.name),
  point: mirrorY(r.point),
});

export const mirrorSeat = (s: Seat): Seat => ({
  ...s,
  id: mirrorWords(s.id),
  name: mirrorWords(s.name),
  head: mirrorY(s.head),
  // A mirror turns the left ear into the right one.
  ears: { left: mirrorY(s.ears.right), right: mirrorY(s.ears.left) },
  eye: mirrorY(s.eye),
  facingDeg: negate(s.facingDeg),
  posture: s.posture && { ...s.posture, hip: mirrorY(s.posture.hip) },
});

/** The same (u, v) names mirrored places: how a panel with `…-left` becomes its `…-right`. */
export const mirrorSidedPatch = (patch: Patch): Patch => ({
  control: patch.control.map(mirrorY),
  facing: patch.facing === 1 ? -1 : 1,
});

/**
 * For panels across the car, whose u runs from the car's left to its right: the columns swap
 * places so that u still does, and the facing stays.
 */
export function mirrorCentrePatch(patch: Patch): Patch {
  const at = (k: number): Vec3 => mirrorY(patch.control[k] as Vec3);
  return { control: [2, 1, 0, 5, 4, 3, 8, 7, 6].map(at), facing: patch.facing };
}

export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');
