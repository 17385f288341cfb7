import { along, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Seat, SeatPosture } from '../model';
import {
  type BuiltSeat,
  backrestAxes,
  backrestStations,
  cushionStations,
  HIP_ABOVE_CUSHION,
} from './seat-body';
import { block, merge } from './solid';
import { inset, padded, type Station, smooth } from './upholstery';

/** Clear of the side trim at hip height. Typical value, from memory. */
const SIDE_GAP = 60;
/** How much wider than the floor a backrest may be, where the sides have leant out. Typical. */
const BACK_OVER_FLOOR = 42;
/** Shorter towards the knees than a front cushion: the tunnel's end lies before it. Typical. */
const CUSHION_LENGTH = 0.86;
/** The cushion ends this far behind the hip, before the wall leans in. Typical, from memory. */
const CUSHION_REAR = 110;
/** The rear floor, as the rear seat height is measured from it. */
const FLOOR = 0;

/** A rear backrest is a board: it stands before the wall behind it. Typical value, from memory. */
const BOARD = 48;

/** Half of a bench: as wide all the way, and with gentler bolsters than a seat of its own. */
const asBench = (stations: readonly Station[], halfWidth: number, most: number): Station[] =>
  stations.map((s) => ({
    ...s,
    bolster: s.bolster * 0.4,
    thickness: Math.min(s.thickness, most),
    halfWidth,
  }));

/**
 * One half of the rear bench, from the middle of the car to its side: the two meet on the
 * centreline, and each leans and slides with its own seat.
 */
export function rearSeat(seat: Seat, posture: SeatPosture, d: Dimensions): BuiltSeat {
  const { hip, torsoDeg } = posture;
  const floorEdge = d.tunnelWidth / 2 + d.footwellWidth;
  const least = d.rearSeatOffset + 150;
  // Half of what lies between the middle of the car and its side: each half is one body.
  const half = (outer: number) => Math.max(least, Math.min(d.hipRoom / 2 - SIDE_GAP, outer)) / 2;
  const [cushionHalf, backHalf] = [half(floorEdge - 4), half(floorEdge + BACK_OVER_FLOOR)];
  const middle = (halfWidth: number): Vec3 => [hip[0], hip[1] < 0 ? -halfWidth : halfWidth, hip[2]];
  const cushion = asBench(
    cushionStations(middle(cushionHalf), cushionHalf, FLOOR),
    cushionHalf,
    130,
  )
    .filter((s) => s.face[0] <= hip[0] + CUSHION_REAR + 1e-6)
    .map((s) => ({ ...s, face: shortened(s.face, hip[0]) }));
  const backrest = asBench(backrestStations(middle(backHalf), backHalf, torsoDeg), backHalf, BOARD);
  const baseTop = Math.max(30, hip[2] - HIP_ABOVE_CUSHION - 110);
  const base = block(
    [hip[0] - 130, middle(cushionHalf)[1], FLOOR + baseTop / 2],
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
    [165, cushionHalf * 0.97, baseTop / 2],
    12,
    12,
    8,
  );
  const { up } = backrestAxes(torsoDeg);
  const last = backrest[backrest.length - 1] as Station;
  const top = along(last.face, last.out, -last.thickness / 2);
  return {
    back: { top: [top[0], hip[1], top[2]], up },
    obstacle: {
      id: `seat-${seat.id}`,
      name: `${seat.name} seat`,
      shape: merge(padded(cushion, false), padded(backrest, false), base),
      drawn: [
        {
          material: 'leather',
          mesh: merge(padded(smooth(cushion, 2), true), padded(smooth(backrest, 2), true)),
        },
        { material: 'carpet', mesh: base },
        {
          material: 'fabric',
          mesh: merge(
            inset(smooth(cushion.slice(1, 6), 2)),
            inset(smooth(backrest.slice(1, 8), 2)),
          ),
        },
      ],
      seat: seat.id,
      given: false,
    },
  };
}

const shortened = (p: Vec3, hipX: number): Vec3 => [
  p[0] < hipX ? hipX + (p[0] - hipX) * CUSHION_LENGTH : p[0],
  p[1],
  p[2],
];
