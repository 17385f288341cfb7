import { degrees, direction, radians, type Vec3 } from '../../geometry';

/** A direction as an installer would say it, degrees. */
export interface AimAngles {
  /** From straight rearward, positive towards the car's right. */
  turnDeg: number;
  /** Above the level, positive upward. */
  tiltDeg: number;
}

/** The angles of a direction in car axes; level and rearward for one without length. */
export function anglesOf(vector: Vec3): AimAngles {
  const unit = direction(vector) ?? ([1, 0, 0] as Vec3);
  const flat = Math.sqrt(unit[0] * unit[0] + unit[1] * unit[1]);
  return {
    // Straight up or down every turn is as good as another.
    turnDeg: flat < 1e-12 ? 0 : degrees(Math.atan2(unit[1], unit[0])),
    tiltDeg: degrees(Math.atan2(unit[2], flat)),
  };
}

/** The unit vector at those angles. */
export function directionAt({ turnDeg, tiltDeg }: AimAngles): Vec3 {
  const [turn, tilt] = [radians(turnDeg), radians(tiltDeg)];
  return [Math.cos(tilt) * Math.cos(turn), Math.cos(tilt) * Math.sin(turn), Math.sin(tilt)];
}
