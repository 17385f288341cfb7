import { along } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Seat, SeatPosture } from '../model';
import { type BuiltSeat, backrestAxes, backrestStations, cushionStations } from './seat-body';
import { merge } from './solid';
import { inset, padded, type Station, smooth } from './upholstery';

/** Clear of the side trim. Typical value, from memory. */
const SIDE_GAP = 22;
/** The rear floor, as the rear seat height is measured from it. */
const FLOOR = 0;

/** Half of a bench: as wide all the way, and with gentler bolsters than a seat of its own. */
const asBench = (stations: readonly Station[], halfWidth: number): Station[] =>
  stations.map((s) => ({ ...s, bolster: s.bolster * 0.4, halfWidth }));

/**
 * One half of the rear bench, from the middle of the car to its side: the two meet on the
 * centreline, and each leans and slides with its own seat.
 */
export function rearSeat(seat: Seat, posture: SeatPosture, d: Dimensions): BuiltSeat {
  const across = Math.max(d.rearSeatOffset + 150, d.hipRoom / 2 - SIDE_GAP);
  const halfWidth = across / 2;
  const { hip, torsoDeg } = posture;
  const middle = [hip[0], hip[1] < 0 ? -halfWidth : halfWidth, hip[2]] as const;
  const cushion = asBench(cushionStations(middle, halfWidth, FLOOR), halfWidth);
  const backrest = asBench(backrestStations(middle, halfWidth, torsoDeg), halfWidth);
  const { up } = backrestAxes(torsoDeg);
  const last = backrest[backrest.length - 1] as Station;
  const top = along(last.face, last.out, -last.thickness / 2);
  return {
    back: { top: [top[0], hip[1], top[2]], up },
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
