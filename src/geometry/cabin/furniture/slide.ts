/** Bodies that only slide along the car: built once at X = 0, then put where they stand. */
import type { MeshShape, Shape } from '../../input';
import type { Vec3 } from '../../vector';
import type { Obstacle, Seat } from '../model';

/** Nearer than this two places along the seat are one, mm: what a sum and a difference leave over. */
const SAME = 1e-6;

/**
 * The seat with its hip at X = 0. Rounded, so that one posture is one and the same wherever the
 * seat has been slid to, and whatever was asked before.
 */
export function atZero(seat: Seat): Seat {
  const x = seat.posture?.hip[0] ?? 0;
  const back = (p: Vec3): Vec3 => [Math.round((p[0] - x) / SAME) * SAME, p[1], p[2]];
  return {
    ...seat,
    head: back(seat.head),
    ears: { left: back(seat.ears.left), right: back(seat.ears.right) },
    eye: back(seat.eye),
    slideRange: null,
    posture: seat.posture && {
      ...seat.posture,
      hip: [0, seat.posture.hip[1], seat.posture.hip[2]],
    },
  };
}

const slidMesh = (mesh: MeshShape, x: number): MeshShape => ({
  ...mesh,
  vertices: mesh.vertices.map((p): Vec3 => [p[0] + x, p[1], p[2]]),
});

function slidShape(shape: Shape, x: number): Shape {
  const by = (p: Vec3): Vec3 => [p[0] + x, p[1], p[2]];
  switch (shape.shape) {
    case 'mesh':
      return slidMesh(shape, x);
    case 'capsule':
      return { ...shape, from: by(shape.from), to: by(shape.to) };
    default:
      return { ...shape, center: by(shape.center) };
  }
}

/** The obstacle moved rearward by `x` mm; its triangles stay the very same list. */
export const slid = (obstacle: Obstacle, x: number): Obstacle => ({
  ...obstacle,
  shape: slidShape(obstacle.shape, x),
  ...(obstacle.drawn && {
    drawn: obstacle.drawn.map((part) => ({ ...part, mesh: slidMesh(part.mesh, x) })),
  }),
});
