import { along, clamp, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Obstacle, Seat, SeatPosture } from '../model';
import { frontHalfWidth } from './front-width';
import { merge } from './solid';
import { inset, padded, type Station, smooth } from './upholstery';

/** Where a backrest ends, for what stands on it. */
export interface Backrest {
  /** Middle of its top. */
  top: Vec3;
  /** Unit vector up along it. */
  up: Vec3;
}

/** Hip joint above the pressed cushion. Typical value, from memory. */
export const HIP_ABOVE_CUSHION = 80;
/** A cushion rises this much towards its front, degrees. Typical value, from memory. */
const CUSHION_PITCH_DEG = 13;

/** Along the cushion: ahead of the hip, width, drop of the face, bolster. Typical, from memory. */
const CUSHION: readonly (readonly [number, number, number, number])[] = [
  [-165, 0.84, 8, 0],
  [-110, 0.95, 2, 8],
  [0, 1, 0, 24],
  [130, 1, 0, 38],
  [250, 0.99, -2, 38],
  [330, 0.96, 2, 26],
  [372, 0.92, 18, 10],
  [396, 0.84, 52, 0],
];

/** Up the backrest from the hip: width, face behind the trunk line, thickness, bolster. */
const BACKREST: readonly (readonly [number, number, number, number, number])[] = [
  [-75, 0.78, 116, 70, 0],
  [-30, 0.92, 112, 112, 14],
  [60, 1, 106, 128, 36],
  [170, 0.97, 98, 122, 54],
  [290, 0.93, 100, 108, 56],
  [400, 0.95, 106, 94, 44],
  [485, 0.9, 113, 82, 24],
  [552, 0.74, 121, 66, 8],
  [592, 0.6, 130, 46, 0],
  [608, 0.5, 141, 22, 0],
];

/** Up along a backrest, and out of its face towards the occupant. */
export function backrestAxes(torsoDeg: number): { up: Vec3; out: Vec3 } {
  const a = radians(clamp(torsoDeg, -20, 88));
  return { up: [Math.sin(a), 0, Math.cos(a)], out: [-Math.cos(a), 0, Math.sin(a)] };
}

export function cushionStations(hip: Vec3, halfWidth: number, floor: number): Station[] {
  const rise = Math.tan(radians(CUSHION_PITCH_DEG));
  return CUSHION.map(([ahead, width, drop, bolster]) => {
    const z = Math.max(floor + 40, hip[2] - HIP_ABOVE_CUSHION + Math.max(-60, ahead) * rise - drop);
    return {
      face: [hip[0] - ahead, hip[1], z],
      out: [0, 0, 1],
      halfWidth: halfWidth * width,
      thickness: clamp(z - floor - 12, 20, drop > 40 ? 70 : 118),
      bolster,
    };
  });
}

export function backrestStations(hip: Vec3, halfWidth: number, torsoDeg: number): Station[] {
  const { up, out } = backrestAxes(torsoDeg);
  return BACKREST.map(([s, width, behind, thickness, bolster]) => ({
    face: along(along(hip, up, s), out, -behind),
    out,
    halfWidth: halfWidth * width,
    thickness,
    bolster,
  }));
}

/** The part of the stations an inset covers: neither the rolled ends nor the rounded front. */
const middleOf = (stations: readonly Station[], from: number, to: number) =>
  smooth(stations.slice(from, to), 2);

export interface BuiltSeat {
  obstacle: Obstacle;
  back: Backrest;
}

/** The front seats stand on the floor at heel level. */
const FLOOR = 0;

/** One front seat where it stands now: cushion and backrest with bolsters. */
export function frontSeat(seat: Seat, posture: SeatPosture, d: Dimensions): BuiltSeat {
  const { hip, torsoDeg } = posture;
  const floor = FLOOR;
  const halfWidth = frontHalfWidth(d);
  const cushion = cushionStations(hip, halfWidth, floor);
  const backrest = backrestStations(hip, halfWidth, torsoDeg);
  const { up } = backrestAxes(torsoDeg);
  const last = backrest[backrest.length - 1] as Station;
  const top = along(last.face, last.out, -last.thickness / 2);

  return {
    back: { top, up },
    obstacle: {
      id: `seat-${seat.id}`,
      name: `${seat.name} seat`,
      shape: merge(padded(cushion, false), padded(backrest, false)),
      drawn: [
        {
          material: 'leather',
          mesh: merge(padded(smooth(cushion, 2), true), padded(smooth(backrest, 2), true)),
        },
        {
          material: 'fabric',
          mesh: merge(inset(middleOf(cushion, 1, 6)), inset(middleOf(backrest, 1, 8))),
        },
      ],
      seat: seat.id,
      given: false,
    },
  };
}
