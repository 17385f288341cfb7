/**
 * Where the joints of a seated person are. Segment lengths as fractions of stature are the usual
 * ones of Drillis & Contini (thigh 0.245, shank 0.246, upper arm 0.186, forearm 0.146, hand to
 * grip 0.06), from memory; breadths are typical values, from memory.
 */
import { along, clamp, distance, mix, radians, sub, type Vec3 } from '../../vector';
import type { Seat, SeatPosture } from '../model';
import { MEDIAN_STATURE, shoeAngleDeg } from '../posture';
import { joint } from './solid';

/** Hands and feet to hold on to: where the wheel is, and the floor. */
export interface Holds {
  /** Wheel centre, its axis towards the person, and the radius of the rim; null beside the wheel. */
  wheel: { center: Vec3; axis: Vec3; radius: number } | null;
  /** X of the heels and the angle of the soles above the floor. */
  heelX: number;
  soleDeg: number;
  floor: number;
  /** How far the knees and feet may be from the middle of the seat. */
  kneeSpread: number;
  footSpread: number;
}

export interface Leg {
  hip: Vec3;
  knee: Vec3;
  ankle: Vec3;
  heel: Vec3;
  toe: Vec3;
}
export interface Arm {
  shoulder: Vec3;
  elbow: Vec3;
  hand: Vec3;
}
export interface Figure {
  /** Size against the median man. */
  size: number;
  head: Vec3;
  /** Pelvis to base of the neck. */
  spine: readonly [Vec3, Vec3, Vec3];
  legs: Record<'left' | 'right', Leg>;
  arms: Record<'left' | 'right', Arm>;
}

/** Outside this the figure would be no figure; the ears stay where the numbers put them. */
const SIZES = [0.75, 1.25] as const;

const sideways = (p: Vec3, dy: number): Vec3 => [p[0], p[1] + dy, p[2]];

function leg(hip: Vec3, size: number, sign: -1 | 1, holds: Holds): Leg {
  const [thigh, shank] = [430 * size, 432 * size];
  const joined = sideways(hip, sign * 82 * size);
  const sole = radians(holds.soleDeg);
  const forward: Vec3 = [-Math.cos(sole), 0, Math.sin(sole)];
  const above: Vec3 = [Math.sin(sole), 0, Math.cos(sole)];
  // A leg too short for the heel's place pulls the foot along the floor towards the seat.
  const reach = (thigh + shank) * 0.985;
  const drop = hip[2] - holds.floor - 85;
  const farthest = Math.sqrt(Math.max(1, reach * reach - drop * drop));
  const x = Math.max(holds.heelX, joined[0] - farthest);
  const heel: Vec3 = [x, hip[1] + sign * holds.footSpread, holds.floor];
  const ankle = along(along(heel, forward, 45), above, 88 * size);
  // Bent upward and towards the spread of the knees.
  const straight = joint(joined, ankle, thigh, shank, [-0.2, 0, 1]);
  const spread = hip[1] + sign * holds.kneeSpread;
  const knee: Vec3 = [straight[0], (straight[1] + spread) / 2, straight[2]];
  return {
    hip: joined,
    knee,
    ankle,
    heel: along(along(heel, forward, 15), above, 42),
    toe: along(along(heel, forward, 225 * size), above, 34),
  };
}

function arm(base: Vec3, hip: Vec3, knee: Vec3, size: number, sign: -1 | 1, holds: Holds): Arm {
  const [upper, fore] = [326 * size, 330 * size];
  const shoulder: Vec3 = [base[0] - 12, base[1] + sign * 178 * size, base[2] - 62 * size];
  let hand: Vec3;
  if (holds.wheel) {
    const { center, axis, radius } = holds.wheel;
    // Hands at a quarter to three, a little high, on the near side of the rim.
    const t = radians(14);
    const inPlaneUp: Vec3 = [-axis[2], 0, axis[0]];
    const rim = along(
      sideways(center, sign * radius * Math.cos(t)),
      inPlaneUp,
      radius * Math.sin(t),
    );
    hand = along(rim, axis, 14);
    const gap = distance(shoulder, hand);
    const reach = (upper + fore) * 0.99;
    if (gap > reach) hand = mix(shoulder, hand, reach / gap);
  } else {
    const lap = mix(hip, knee, 0.72);
    hand = [lap[0], base[1] + sign * 105, lap[2] + 95 * size];
  }
  // Elbows hang, a little out at the wheel; beside it they stay off console and door.
  const out = holds.wheel ? 0.42 : 0.22;
  const elbow = joint(shoulder, hand, upper, fore, [0.35, sign * out, -1]);
  return { shoulder, elbow, hand };
}

/** The joints of the person in a seat. */
export function figureIn(seat: Seat, posture: SeatPosture, holds: Holds): Figure {
  const size = clamp(posture.stature / MEDIAN_STATURE, ...SIZES);
  const { hip } = posture;
  const trunk = sub(seat.head, hip);
  const base: Vec3 = [
    seat.head[0] + 22 * size,
    seat.head[1],
    seat.head[2] - Math.min(122 * size, 0.3 * Math.abs(trunk[2])),
  ];
  // The back is a little round: its middle lies behind the straight line.
  const middle = mix(hip, base, 0.5);
  const legs = {
    left: leg(hip, size, -1, holds),
    right: leg(hip, size, 1, holds),
  };
  return {
    size,
    head: seat.head,
    spine: [[hip[0] + 12, hip[1], hip[2] - 12], [middle[0] + 14, middle[1], middle[2]], base],
    legs,
    arms: {
      left: arm(base, legs.left.hip, legs.left.knee, size, -1, holds),
      right: arm(base, legs.right.hip, legs.right.knee, size, 1, holds),
    },
  };
}

/** Soles on the pedals or on the toe board, from the seat's height. */
export const frontSoleDeg = (seatHeight: number): number => shoeAngleDeg(seatHeight);
