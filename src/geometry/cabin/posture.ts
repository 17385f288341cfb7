/**
 * Ears from posture: SAE J941's mid-eye centroid and the anthropometric step from eye to ear.
 * Everything in car axes, mm and degrees, seen from the side: x rearward of the accelerator heel
 * point, z above it.
 */
import { clamp, degrees, radians } from '../vector';

/** A point in the seat's own vertical plane. */
export interface SidePoint {
  x: number;
  z: number;
}

/** How a person sits: where the eyes, the ears and the hip joint are. */
export interface SidePosture {
  /** Mid-eye. */
  eye: SidePoint;
  /** Midpoint between the ears. */
  head: SidePoint;
  /** Where the hip joint (H-point) of this occupant is: the seat's own reference while it slides. */
  hip: SidePoint;
}

/** Heel point to ball of foot, along the shoe [published; SAE J1100]. */
export const HEEL_TO_BALL = 203;

/** Ears rearward of the mid-eye. From memory. */
export const EYE_TO_EAR_REARWARD = 85;
/** Ears below the mid-eye: ANSUR II, eye height less tragion height [published]. */
export const EYE_TO_EAR_DOWN = 17;
/** Default ear spacing: between the head breadths of men (154) and women (148), ANSUR II. */
export const EAR_SPACING = 152;

/** The stature that needs no shift: the median man of ANSUR II. From memory. */
export const MEDIAN_STATURE = 1755;
/** His sitting eye height, ANSUR II [published]. */
export const MEDIAN_SITTING_EYE_HEIGHT = 804;

/**
 * How much higher (+) or lower (−) along the trunk the eyes sit for a stature.
 *
 * Sitting eye height is taken as proportional to stature, through the median man (804 of 1755).
 * Against ANSUR II's other percentiles (statures from memory: men 1647, 1871, women 1526, 1626,
 * 1736 at 5/95 and 5/50/95 %) it gives 755, 857, 699, 745, 795 where the survey has 750, 860, 698,
 * 748, 799: within 5 mm. That J941's centroid belongs to the median man is an assumption; its own
 * population mixes men and women and would put everybody about 28 mm higher.
 */
export const sittingEyeShift = (stature: number): number =>
  (MEDIAN_SITTING_EYE_HEIGHT / MEDIAN_STATURE) * (stature - MEDIAN_STATURE);

/** Angle of the shoe sole above the floor, on the accelerator: SAE J4004, 77 − 0.08·H30. From memory. */
export const shoeAngleDeg = (seatHeight: number): number => clamp(77 - 0.08 * seatHeight, 0, 90);

/** X of the pedal reference point (the ball of the foot): forward of the heel point, so negative. */
export const pedalReferenceX = (seatHeight: number): number =>
  -HEEL_TO_BALL * Math.cos(radians(shoeAngleDeg(seatHeight)));

/**
 * SAE J941 (2002 and later) mid-eye centroid of a seat that slides:
 * X = 664 + 0.587·L6 − 0.176·H30 − 12.5·t rearward of the pedal reference point, Z = 638 + H30.
 * From memory: the body of the standard was not seen; UN R46's 635 above the R point and the older
 * centroid agree within 12 mm. L6 is the horizontal distance from the pedal reference point to the
 * steering wheel's centre, t is 1 with a clutch pedal and 0 without.
 */
export function slidingSeatEye(d: {
  wheelReach: number;
  seatHeight: number;
  clutchPedal: boolean;
}): SidePoint {
  const pedal = pedalReferenceX(d.seatHeight);
  const l6 = d.wheelReach - pedal;
  const t = d.clutchPedal ? 1 : 0;
  return {
    x: pedal + 664 + 0.587 * l6 - 0.176 * d.seatHeight - 12.5 * t,
    z: 638 + d.seatHeight,
  };
}

/** Eyes from hip in a seat that does not slide. SAE J941 for fixed seats, from memory. */
const FIXED_SEAT_REACH = 640;
/** The same source: the eyes lean back 0.719 degree for each degree of torso angle, less 9.6. */
const eyeLeanDeg = (torsoAngleDeg: number): number => 0.719 * torsoAngleDeg - 9.6;

/** Mid-eye over the R point of a seat that does not slide (SAE J941, fixed seats; from memory). */
export function fixedSeatEye(hip: SidePoint, torsoAngleDeg: number): SidePoint {
  const lean = radians(eyeLeanDeg(torsoAngleDeg));
  return {
    x: hip.x + FIXED_SEAT_REACH * Math.sin(lean),
    z: hip.z + FIXED_SEAT_REACH * Math.cos(lean),
  };
}

/**
 * Where the hip is for a sliding seat's eye. The R point is the seat's rearmost normal place, and
 * J941's eye belongs to the place people choose, farther forward; the fixed seat's relation says
 * how far. Kept on the rails: between the R point and the foremost place of travel.
 */
export function hipUnderEye(
  eye: SidePoint,
  rPoint: SidePoint,
  torsoAngleDeg: number,
  seatTravel: number,
): SidePoint {
  const lean = radians(eyeLeanDeg(torsoAngleDeg));
  const x = eye.x - FIXED_SEAT_REACH * Math.sin(lean);
  return { x: clamp(x, rPoint.x - Math.max(0, seatTravel), rPoint.x), z: rPoint.z };
}

/** Turns a point rearward about another: positive degrees lean back. */
export function leanBack(point: SidePoint, about: SidePoint, deg: number): SidePoint {
  const [c, s] = [Math.cos(radians(deg)), Math.sin(radians(deg))];
  const [dx, dz] = [point.x - about.x, point.z - about.z];
  return { x: about.x + dx * c + dz * s, z: about.z - dx * s + dz * c };
}

/**
 * The posture of one occupant: the standard's eye and hip, shifted for stature along the trunk,
 * leaned back with the backrest about the hip, and slid with the seat. The gaze stays level, so
 * the ears turn about the hip and the eyes keep their place before the ears.
 */
export function sitDown(
  eye: SidePoint,
  hip: SidePoint,
  person: { stature: number; reclineDeg: number; slide: number },
): SidePosture {
  const [dx, dz] = [eye.x - hip.x, eye.z - hip.z];
  const trunk = Math.sqrt(dx * dx + dz * dz) || 1;
  const k = sittingEyeShift(person.stature) / trunk;
  const upright = {
    x: eye.x + k * dx + EYE_TO_EAR_REARWARD,
    z: eye.z + k * dz - EYE_TO_EAR_DOWN,
  };
  const leant = leanBack(upright, hip, person.reclineDeg);
  const head = { x: leant.x + person.slide, z: leant.z };
  return {
    head,
    eye: { x: head.x - EYE_TO_EAR_REARWARD, z: head.z + EYE_TO_EAR_DOWN },
    hip: { x: hip.x + person.slide, z: hip.z },
  };
}

/** The angle of the line from hip to eye, rearward of vertical. */
export const trunkLeanDeg = (hip: SidePoint, eye: SidePoint): number =>
  degrees(Math.atan2(eye.x - hip.x, eye.z - hip.z));
