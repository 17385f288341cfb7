/** What stands in the cabin, as obstacles: built for left-hand drive and mirrored. */
import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';
import { mirrorObstacle, mirrorSeat } from '../mirror';
import type { Obstacle, Panel, Seat, SeatPosture } from '../model';
import { placeSeats, type SeatTemplate } from '../seats';
import { binnacle } from './binnacle';
import { consoleFurniture } from './console';
import { doorFurniture } from './door';
import { frontSoleDeg, type Holds } from './figure';
import { frontHalfWidth } from './front-width';
import { headRestraint } from './head-restraint';
import { occupant } from './occupant';
import { leftHandDrivePatches } from './patches';
import { rearBench } from './rear-bench';
import { frontSeat } from './seat-body';
import { steering, wheelPlace } from './steering';

const inCarOf = (wheelSide: Side, obstacles: Obstacle[]): Obstacle[] =>
  wheelSide === 'left' ? obstacles : obstacles.map(mirrorObstacle);

/**
 * Everything that stays where it is while seats move: steering wheel and column, binnacle,
 * selector and console armrest, door armrests and pockets. mm, car axes.
 */
export function buildFixedFurniture(
  dimensions: Dimensions,
  panels: readonly Panel[],
  wheelSide: Side,
): Obstacle[] {
  const find = leftHandDrivePatches(panels, wheelSide);
  return inCarOf(wheelSide, [
    ...steering(dimensions),
    ...binnacle(dimensions, find),
    ...consoleFurniture(dimensions, find),
    ...doorFurniture(find),
  ]);
}

function holdsOf(d: Dimensions, seat: Seat, posture: SeatPosture): Holds {
  const front = posture.row === 1;
  const spread = Math.max(60, Math.min(118, d.footwellWidth / 2 - 60));
  return {
    wheel: seat.id === 'front-left' ? wheelPlace(d) : null,
    heelX: front ? 0 : posture.hip[0] - 530,
    soleDeg: front ? frontSoleDeg(d.seatHeight) : 8,
    floor: 0,
    kneeSpread: spread + 22,
    footSpread: spread,
  };
}

/** Front seats and rear bench with their head restraints, and whoever sits there: left-hand drive. */
function seatFurniture(d: Dimensions, seats: readonly Seat[], template: SeatTemplate): Obstacle[] {
  const usual = placeSeats(d, template, 'left', []);
  const all: Seat[] = usual.ok ? usual.seats : [];
  const sitting = new Map(seats.map((s) => [s.id, s]));
  const out: Obstacle[] = [];
  const bench = template.rows >= 2 ? rearBench(d) : null;
  if (bench) out.push(bench.obstacle);
  for (const stand of all) {
    const seat = sitting.get(stand.id) ?? stand;
    const posture = seat.posture ?? stand.posture;
    if (!posture) continue;
    let back = bench?.backs[seat.id];
    if (posture.row === 1) {
      const built = frontSeat(seat.id, {
        hip: posture.hip,
        torsoDeg: posture.torsoDeg,
        halfWidth: frontHalfWidth(d),
        floor: 0,
      });
      out.push(built.obstacle);
      back = built.back;
    }
    if (back) out.push(headRestraint(seat.id, stand.name, back, seat.head));
  }
  for (const seat of seats) {
    if (seat.posture) out.push(...occupant(seat, seat.posture, holdsOf(d, seat, seat.posture)));
  }
  return out;
}

/** What moves with the seats: rebuild only this while a seat is dragged. mm, car axes. */
export function buildSeatFurniture(
  dimensions: Dimensions,
  seats: readonly Seat[],
  template: SeatTemplate,
  wheelSide: Side,
): Obstacle[] {
  const canonical = wheelSide === 'left' ? seats : seats.map(mirrorSeat);
  return inCarOf(wheelSide, seatFurniture(dimensions, canonical, template));
}

/**
 * Every derived obstacle of a cabin with a template. mm, car axes. The places nobody is listed for
 * have a seat but no occupant.
 */
export function buildFurniture(
  dimensions: Dimensions,
  panels: readonly Panel[],
  seats: readonly Seat[],
  template: SeatTemplate,
  wheelSide: Side,
): Obstacle[] {
  return [
    ...buildFixedFurniture(dimensions, panels, wheelSide),
    ...buildSeatFurniture(dimensions, seats, template, wheelSide),
  ];
}
