/**
 * The eyes that UN Regulation No. 125 looks past a front pillar with. From memory: the text of the
 * regulation was not before us. mm, as in a left-hand-drive car (Y to the right).
 */
import type { Vec3 } from '../vector';

/** Eyes apart, and each from the head's turning point P. */
export const EYES_APART = 65;
export const EYE_TO_P = 104;
/** From P straight ahead to between the eyes: √(104² − 32.5²) = 98.79. */
export const P_TO_EYES = Math.sqrt(EYE_TO_P ** 2 - (EYES_APART / 2) ** 2);

/** From the R point at a seat back of 25°: towards the driver's pillar, the other one, between. */
export const P_POINTS = {
  driver: [35, -20, 627],
  passenger: [63, 47, 627],
  middle: [43.36, 0, 627],
} as const satisfies Record<string, Vec3>;

/** Seat back angle, degrees: correction in X and Z for other angles than 25°. From memory. */
const SEAT_BACK: readonly (readonly [number, number, number])[] = [
  [5, -186, 28],
  [10, -137, 25],
  [15, -90, 20],
  [20, -44, 11],
  [25, 0, 0],
  [30, 43, -14],
  [35, 84, -32],
  [40, 123, -52],
];

/** Seat travel above, mm: forward correction of the P points. From memory. */
const TRAVEL: readonly (readonly [number, number])[] = [
  [158, -48],
  [145, -42],
  [132, -32],
  [120, -22],
  [108, -13],
];

/** Between the table's rows in a straight line, beyond its ends as at the end. */
export function seatBackCorrection(torsoDeg: number): { x: number; z: number } {
  const first = SEAT_BACK[0] as (typeof SEAT_BACK)[number];
  let before = first;
  for (const row of SEAT_BACK) {
    if (torsoDeg <= row[0]) {
      const span = row[0] - before[0];
      const t = span > 0 ? Math.max(0, torsoDeg - before[0]) / span : 0;
      return { x: before[1] + t * (row[1] - before[1]), z: before[2] + t * (row[2] - before[2]) };
    }
    before = row;
  }
  return { x: before[1], z: before[2] };
}

export const travelCorrection = (seatTravel: number): number =>
  TRAVEL.find(([above]) => seatTravel > above)?.[1] ?? 0;
