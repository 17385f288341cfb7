/** Where the eye stands for each view. */
import {
  along,
  degrees,
  direction,
  radians,
  type Seat,
  type Side,
  type Vec3,
} from '../../geometry';
import type { ViewName } from '../../store';
import { fitPoints } from './fit';

export interface Pose {
  /** Both in car axes, mm. */
  eye: Vec3;
  target: Vec3;
  fovDeg: number;
}

export interface PoseNeeds {
  /** The whole car: what an elevation must hold. */
  car: readonly Vec3[];
  /** Cabin from the toe board to the last listener: what the free view must hold. */
  stage: readonly Vec3[];
  aspect: number;
  /** The seat in view. */
  seat: Seat | null;
  wheelSide: Side;
}

/** A long lens keeps parallels nearly parallel: the three elevations read as drawings. */
const ELEVATION_FOV = 7;
const FREE_FOV = 24;
/** Across, so that both front pillars are on the sheet from either front seat. */
const SEAT_ACROSS = 108;
/** Upright sheets would need a fish eye: no more than this from top to bottom. */
const SEAT_MOST = 92;
/** How far the head is turned towards the middle of the car. */
const TURN_IN = 14;
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
      return from(needs.stage, needs.aspect, [0.6, passenger * 0.34, 0.64], FREE_FOV, 0.03);
    case 'plan':
      // Front to the left on a wide sheet, as the side view below it; front up on a tall one.
      return needs.aspect > 1.15
        ? from(needs.car, needs.aspect, [0, -TILT, 1], ELEVATION_FOV)
        : from(needs.car, needs.aspect, [TILT, 0, 1], ELEVATION_FOV);
    case 'side':
      return from(needs.car, needs.aspect, [0, -1, 0.04], ELEVATION_FOV);
    case 'front':
      return from(needs.car, needs.aspect, [-1, 0, 0.06], ELEVATION_FOV);
    case 'seat': {
      if (!needs.seat) return poseFor('free', needs);
      const { eye, facingDeg } = needs.seat;
      // Turned a little towards the middle of the car, so that both pillars are on the sheet.
      const inward = facingDeg - Math.sign(Math.round(eye[1])) * TURN_IN;
      const [sin, cos] = [Math.sin(radians(inward)), Math.cos(radians(inward))];
      // A little downward: at rest the eye looks over the wheel, and the dash should be seen.
      const ahead = direction([-cos, sin, -0.2]) as Vec3;
      const target = along(eye, ahead, LOOK_ROUND);
      const upright = 2 * degrees(Math.atan(Math.tan(radians(SEAT_ACROSS / 2)) / needs.aspect));
      return { eye, target, fovDeg: Math.min(SEAT_MOST, upright) };
    }
  }
}

function from(
  points: readonly Vec3[],
  aspect: number,
  out: Vec3,
  fovDeg: number,
  margin = 0.06,
): Pose {
  const unit = direction(out) as Vec3;
  const fit = fitPoints(points, unit, fovDeg, aspect, margin);
  return { eye: along(fit.target, unit, fit.distance), target: fit.target, fovDeg };
}
