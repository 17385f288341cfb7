/** How the car comes onto the paper: from above and from the side without perspective, or with. */
import { along, cross, direction, dot, type Side, sub, type Vec3 } from '../../geometry';

export type ViewId = 'above' | 'side' | 'behind';

/** Right and down on the drawing, and how far away; mm of the car. */
export type Projected = readonly [x: number, y: number, depth: number];

export interface Camera {
  id: ViewId;
  /**
   * Without perspective x and y are true mm. With it they are true in the plane through the target.
   * Depth grows away from the eye and runs straight along straight lines on the drawing.
   */
  project(point: Vec3): Projected;
  /** From a point towards the eye. */
  towardsEye(point: Vec3): Vec3;
}

/** Nose to the left, as if one stood at the car's left: so both lie in line under each other. */
const ABOVE: Camera = {
  id: 'above',
  project: ([x, y, z]) => [x, -y, -z],
  towardsEye: () => [0, 0, 1],
};
const FROM_LEFT: Camera = {
  id: 'side',
  project: ([x, y, z]) => [x, -z, y],
  towardsEye: () => [0, -1, 0],
};

/** Chosen by eye: near enough to be seen as a room, far enough that nothing is drawn out. */
const EYE_DISTANCE = 4600;

/** From behind and above, over the shoulder of whoever sits beside the wheel: dash, doors and pillars show. */
function fromBehind(wheelSide: Side, target: Vec3): Camera {
  const side = wheelSide === 'left' ? 1 : -1;
  const out = direction([0.76, side * 0.2, 0.55]) as Vec3;
  const eye = along(target, out, EYE_DISTANCE);
  const right = direction(cross([0, 0, 1], out)) as Vec3;
  const up = cross(out, right);
  return {
    id: 'behind',
    project: (point) => {
      const from = sub(point, eye);
      const away = Math.max(-dot(from, out), 1);
      const scale = EYE_DISTANCE / away;
      return [dot(from, right) * scale, -dot(from, up) * scale, -EYE_DISTANCE * scale];
    },
    towardsEye: (point) => sub(eye, point),
  };
}

/** @param target what the view from behind looks at */
export function cameraOf(view: ViewId, wheelSide: Side, target: Vec3): Camera {
  if (view === 'above') return ABOVE;
  return view === 'side' ? FROM_LEFT : fromBehind(wheelSide, target);
}
