/** Where the eye stands for each view. */
import { along, direction, radians, type Seat, type Side, type Vec3 } from '../../geometry';
import type { ViewName } from '../../store';
import { fitPoints } from './fit';

export interface Pose {
  /** Both in car axes, mm. */
  eye: Vec3;
  target: Vec3;
  fovDeg: number;
}

export interface PoseNeeds {
  /** All that must be on the sheet. */
  points: readonly Vec3[];
  aspect: number;
  /** The seat in view. */
  seat: Seat | null;
  wheelSide: Side;
}

/** A long lens keeps parallels nearly parallel: the three elevations read as drawings. */
const ELEVATION_FOV = 7;
const FREE_FOV = 24;
/** A seated person's comfortable field, from memory: wide enough for both pillars. */
const SEAT_FOV = 74;
/** The view turns about a point this far before the eye, mm: looking round, not walking round. */
const LOOK_ROUND = 2;
/** OrbitControls cannot stand exactly over its target. */
const TILT = 1e-4;

export function poseFor(view: ViewName, needs: PoseNeeds): Pose {
  const passenger = needs.wheelSide === 'left' ? 1 : -1;
  switch (view) {
    case 'free':
      // From behind the passenger's shoulder and above: dash, both pillars and both doors show
      // their cabin side, and the wheel does not hide the driver's corner.
      return from(needs, [0.74, passenger * 0.5, 0.52], FREE_FOV, 0.04);
    case 'plan':
      // Front to the left on a wide sheet, as the side view below it; front up on a tall one.
      return needs.aspect > 1.15
        ? from(needs, [0, -TILT, 1], ELEVATION_FOV)
        : from(needs, [TILT, 0, 1], ELEVATION_FOV);
    case 'side':
      return from(needs, [0, -1, 0.04], ELEVATION_FOV);
    case 'front':
      return from(needs, [-1, 0, 0.06], ELEVATION_FOV);
    case 'seat': {
      if (!needs.seat) return poseFor('free', needs);
      const { eye, facingDeg } = needs.seat;
      const [sin, cos] = [Math.sin(radians(facingDeg)), Math.cos(radians(facingDeg))];
      // A little downward: at rest the eye looks over the wheel, and the dash should be seen.
      const ahead = direction([-cos, sin, -0.2]) as Vec3;
      const target = along(eye, ahead, LOOK_ROUND);
      // Upright sheets would lose the pillars: widen until the sides show.
      const widen = Math.min(1.25, Math.max(1, 1.2 / needs.aspect));
      return { eye, target, fovDeg: Math.min(96, SEAT_FOV * widen) };
    }
  }
}

function from(needs: PoseNeeds, out: Vec3, fovDeg: number, margin = 0.07): Pose {
  const unit = direction(out) as Vec3;
  const fit = fitPoints(needs.points, unit, fovDeg, needs.aspect, margin);
  return { eye: along(fit.target, unit, fit.distance), target: fit.target, fovDeg };
}
