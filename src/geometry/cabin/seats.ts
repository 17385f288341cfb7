import type { SeatInput, Side } from '../input';
import { radians, type Vec3 } from '../vector';
import type { Dimensions } from './dimensions';
import type { Refusal, Seat, SeatPosture } from './model';
import {
  EAR_SPACING,
  EYE_TO_EAR_DOWN,
  EYE_TO_EAR_REARWARD,
  fixedSeatEye,
  hipUnderEye,
  type SidePoint,
  sitDown,
  slidingSeatEye,
} from './posture';

/** What of a template decides its seats. */
export interface SeatTemplate {
  id: string;
  /** Rows of seats. */
  rows: number;
  /** True with a clutch pedal. */
  manual?: boolean;
}

export type SeatsAnswer = { ok: true; seats: Seat[] } | { ok: false; error: Refusal };

/** One seat as the template has it, before anybody adjusts it. */
interface Stand {
  row: 1 | 2;
  y: number;
  torsoDeg: number;
  eye: SidePoint;
  hip: SidePoint;
  /** Where the hip is with the seat all the way forward and back; null for a fixed seat. */
  rails: readonly [number, number] | null;
}

/** Backrest angle of a rear bench. Typical value, from memory; `torsoAngle` is the front seats'. */
export const REAR_TORSO_DEG = 24;

/** The R points, by row: (x, z), mm. The rear one stands on the rear floor, at Z = 0. */
export const rPoint = (d: Dimensions, row: 1 | 2): SidePoint =>
  row === 1
    ? { x: d.seatReach, z: d.seatHeight }
    : { x: d.seatReach + d.secondRowDistance, z: d.rearSeatHeight };

function stands(d: Dimensions, template: SeatTemplate, wheelSide: Side): Map<string, Stand> {
  const found = new Map<string, Stand>();
  const r = rPoint(d, 1);
  const rails = [r.x - d.seatTravel, r.x] as const;
  for (const side of ['left', 'right'] as const) {
    // Only the person at the wheel works a clutch.
    const clutchPedal = template.manual === true && side === wheelSide;
    const eye = slidingSeatEye({ ...d, clutchPedal });
    const hip = hipUnderEye(eye, r, d.torsoAngle, d.seatTravel);
    const y = side === 'left' ? -d.seatOffset : d.seatOffset;
    found.set(`front-${side}`, { row: 1, y, torsoDeg: d.torsoAngle, eye, hip, rails });
  }
  if (template.rows < 2) return found;
  const hip = rPoint(d, 2);
  const eye = fixedSeatEye(hip, REAR_TORSO_DEG);
  for (const side of ['left', 'right'] as const) {
    const y = side === 'left' ? -d.rearSeatOffset : d.rearSeatOffset;
    found.set(`rear-${side}`, { row: 2, y, torsoDeg: REAR_TORSO_DEG, eye, hip, rails: null });
  }
  return found;
}

/** Ears and eye round a head that faces `facingDeg` to the right of straight ahead. */
export function faceForward(
  head: Vec3,
  facingDeg: number,
  earSpacing: number,
): Pick<Seat, 'ears' | 'eye'> {
  const [sin, cos] = [Math.sin(radians(facingDeg)), Math.cos(radians(facingDeg))];
  const half = earSpacing / 2;
  const [dx, dy] = [sin * half, cos * half];
  return {
    ears: {
      left: [head[0] - dx, head[1] - dy, head[2]],
      right: [head[0] + dx, head[1] + dy, head[2]],
    },
    eye: [
      head[0] - cos * EYE_TO_EAR_REARWARD,
      head[1] + sin * EYE_TO_EAR_REARWARD,
      head[2] + EYE_TO_EAR_DOWN,
    ],
  };
}

function fromTemplate(input: SeatInput, stand: Stand, d: Dimensions): Seat {
  const stature = input.occupantHeight ?? d.occupantHeight;
  const reclineDeg = input.reclineDeg ?? 0;
  const slide = input.slide ?? 0;
  const { head, hip } = sitDown(stand.eye, stand.hip, { stature, reclineDeg, slide });
  const torsoDeg = stand.torsoDeg + reclineDeg;
  return seatAt(input, [head.x, stand.y, head.z], {
    slideRange: stand.rails && [stand.rails[0] - hip.x, stand.rails[1] - hip.x],
    posture: { hip: [hip.x, stand.y, hip.z], torsoDeg, stature, row: stand.row },
  });
}

/** Under a head placed by hand: the seat slides after it as far as its rails go. */
function postureUnder(head: Vec3, input: SeatInput, stand: Stand | undefined, d: Dimensions) {
  const stature = input.occupantHeight ?? d.occupantHeight;
  const reclineDeg = input.reclineDeg ?? 0;
  const torsoDeg = (stand?.torsoDeg ?? REAR_TORSO_DEG) + reclineDeg;
  if (!stand) {
    const origin = { x: 0, z: 0 };
    const sat = sitDown(fixedSeatEye(origin, REAR_TORSO_DEG), origin, {
      stature,
      reclineDeg,
      slide: 0,
    });
    const hip: Vec3 = [head[0] - sat.head.x, head[1], head[2] - sat.head.z];
    return { hip, torsoDeg, stature, row: null };
  }
  const usual = sitDown(stand.eye, stand.hip, { stature, reclineDeg, slide: 0 });
  const wanted = stand.hip.x + head[0] - usual.head.x;
  const x = stand.rails ? Math.min(stand.rails[1], Math.max(stand.rails[0], wanted)) : stand.hip.x;
  return { hip: [x, stand.y, stand.hip.z] as Vec3, torsoDeg, stature, row: stand.row };
}

function seatAt(
  input: SeatInput,
  head: Vec3,
  rest: { slideRange: Seat['slideRange']; posture: SeatPosture | null },
): Seat {
  const facingDeg = input.facingDeg ?? 0;
  const earSpacing = input.earSpacing ?? EAR_SPACING;
  return {
    id: input.id,
    name: input.id.replaceAll('-', ' '),
    head,
    ...faceForward(head, facingDeg, earSpacing),
    facingDeg,
    earSpacing,
    ...rest,
  };
}

/**
 * The listening positions of a plan, in mm and degrees.
 *
 * No list (or an empty one) means every seat of the template: front left, front right and, with two
 * rows, rear left and rear right. A list means exactly those, in its order. An entry without `head`
 * adjusts the template's seat of its id (slide rearward, recline, stature); one with `head` is
 * placed by hand. Without a template (`null`: no dimensions either) only the latter exist.
 *
 * Ears are from posture: see posture.ts for the equations and their sources.
 *
 * @returns the seats, or a refusal naming the seat and the template when a seat without `head` is
 * not one the template has
 */
export function placeSeats(
  dimensions: Dimensions | null,
  template: SeatTemplate | null,
  wheelSide: Side,
  inputs: readonly SeatInput[] | undefined,
): SeatsAnswer {
  const d = dimensions;
  const known = d && template ? stands(d, template, wheelSide) : new Map<string, Stand>();
  const listed: readonly SeatInput[] = inputs?.length
    ? inputs
    : [...known.keys()].map((id) => ({ id }));
  const seats: Seat[] = [];
  for (const [i, input] of listed.entries()) {
    const stand = known.get(input.id);
    if (input.head) {
      const posture = d && template ? postureUnder(input.head, input, stand, d) : null;
      seats.push(seatAt(input, input.head, { slideRange: null, posture }));
    } else if (stand && d) {
      seats.push(fromTemplate(input, stand, d));
    } else {
      const has = [...known.keys()].join(', ') || 'no seats';
      const name = template?.id ?? 'none';
      const message = `seat "${input.id}" has no head, and template "${name}" has no such seat (it has ${has})`;
      return { ok: false, error: { message, path: `seats[${i}].id` } };
    }
  }
  return { ok: true, seats };
}
