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
import { headRestraint } from './head-restraint';
import { occupant } from './occupant';
import { leftHandDrivePatches } from './patches';
import { rearSeat } from './rear-seat';
import { remembering } from './remember';
import { frontSeat } from './seat-body';
import { seatFrames } from './seat-frame';
import { atZero, slid } from './slide';
import { steering, wheelPlace } from './steering';

const inCarOf = (wheelSide: Side, obstacles: Obstacle[]): Obstacle[] =>
  wheelSide === 'left' ? obstacles : obstacles.map(mirrorObstacle);

/**
 * Everything that stays where it is while seats move: steering wheel and column, binnacle,
 * selector and console armrest, door armrests and pockets, the front seats' frames and rails. mm, car
 * axes.
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
    ...seatFrames(dimensions),
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

/** One place of the left-hand-drive car: the seat with its restraint. */
function place(d: Dimensions, seat: Seat, posture: SeatPosture): Obstacle[] {
  const built = posture.row === 1 ? frontSeat(seat, posture, d) : rearSeat(seat, posture, d);
  return [built.obstacle, headRestraint(seat.id, seat.name, built.back, seat.head)];
}

/** Seats, and people: four of each in two cars, and a few places dragged past. */
const remember = remembering<Obstacle[]>(24);
/** Each posture's seat at X = 0: four in two cars, and a few postures tried. */
const rememberUnslid = remembering<Obstacle[]>(12);

/**
 * What moves with the seats: each place with its restraint, and whoever is listed to sit there. mm,
 * car axes. Rebuild only this while a seat is dragged; the places whose seat did not change come
 * back as the same objects.
 */
export function buildSeatFurniture(
  dimensions: Dimensions,
  seats: readonly Seat[],
  template: SeatTemplate,
  wheelSide: Side,
): Obstacle[] {
  const usual = placeSeats(dimensions, template, wheelSide, []);
  const stands = usual.ok ? usual.seats : [];
  const sitting = new Map(seats.map((s) => [s.id, s]));
  const car = `${wheelSide} ${Object.values(dimensions).join(' ')}`;
  const out: Obstacle[] = [];
  const put = (what: string, seat: Seat, build: (canonical: Seat) => Obstacle[]) => {
    const key = `${what} ${JSON.stringify(seat)} ${car}`;
    const canonical = () => (wheelSide === 'left' ? seat : mirrorSeat(seat));
    for (const o of remember(key, () => inCarOf(wheelSide, build(canonical())))) out.push(o);
  };
  for (const stand of stands) {
    const seat = sitting.get(stand.id) ?? stand;
    put('place', seat, (s) => {
      const unslid = atZero(s);
      const { posture } = unslid;
      if (!posture || !s.posture) return [];
      const key = `${JSON.stringify(unslid)} ${car}`;
      const built = rememberUnslid(key, () => place(dimensions, unslid, posture));
      const [x] = s.posture.hip;
      return built.map((o) => slid(o, x));
    });
  }
  for (const seat of seats) {
    put('person', seat, (s) =>
      s.posture ? occupant(s, s.posture, holdsOf(dimensions, s, s.posture)) : [],
    );
  }
  return out;
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
