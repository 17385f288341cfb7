/** Where nothing may be mounted. Typical places, from memory: the maker's documents decide. */
import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';
import { frontHalfWidth } from '../furniture/front-width';
import { leftHandDrivePatches } from '../furniture/patches';
import { mirrorSeat, mirrorZone } from '../mirror';
import type { KeepClearZone, Panel, Seat } from '../model';
import { placeSeats, type SeatTemplate } from '../seats';
import { airbags } from './airbags';
import { dashZones } from './dash';
import { glassTravel } from './doors';
import { feetZones } from './feet';
import { sightLines } from './sight';

export { type PedalLayout, pedalLayout } from './pedal-layout';

/**
 * The keep-clear zones of a cabin with a template: airbags (steering wheel, dash, knees, curtain,
 * seat sides), steering column, glove box, ducts and demisters, door glass travel, the view past
 * the front pillars from the eyes at the wheel, and pedals with foot room. mm, car axes.
 *
 * Right-hand drive is the exact mirror image, but for the pedals, whose order does not mirror.
 */
export function buildKeepClear(
  dimensions: Dimensions,
  panels: readonly Panel[],
  seats: readonly Seat[],
  template: SeatTemplate,
  wheelSide: Side,
): KeepClearZone[] {
  const find = leftHandDrivePatches(panels, wheelSide);
  const canonical = wheelSide === 'left' ? seats : seats.map(mirrorSeat);
  const usual = placeSeats(dimensions, template, 'left', []);
  const front = (usual.ok ? usual.seats : [])
    .filter((s) => s.id.startsWith('front-'))
    .map((s) => canonical.find((c) => c.id === s.id) ?? s);
  const wheelSeat = front.find((s) => s.id === 'front-left');
  const zones = [
    ...airbags(dimensions, find, front, frontHalfWidth(dimensions)),
    ...dashZones(dimensions, find),
    ...glassTravel(dimensions, find),
    ...(wheelSeat ? sightLines(find, wheelSeat) : []),
  ];
  return [
    ...(wheelSide === 'left' ? zones : zones.map(mirrorZone)),
    ...feetZones(dimensions, wheelSide, template.manual === true),
  ];
}
