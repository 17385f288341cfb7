/**
 * Where airbags are stored and open. Typical places and sizes, from memory: the maker's own repair
 * documents decide.
 */
import { add, along, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { atY, type PatchFinder } from '../furniture/patches';
import { backrestAxes } from '../furniture/seat-body';
import { across, loft } from '../furniture/solid';
import { wheelPlace } from '../furniture/steering';
import { mirrorZone } from '../mirror';
import type { KeepClearZone, Patch, Seat } from '../model';
import { bag, slabOver, zone } from './zone';

function wheelBag(d: Dimensions): KeepClearZone {
  const { center, axis, radius } = wheelPlace(d);
  const shape = bag(along(center, axis, -60), along(center, axis, 260), across(axis), [
    [0, 70, 70],
    [0.2, 90, 85],
    [0.45, radius * 1.15, radius * 1.15],
    [0.8, radius * 1.35, radius * 1.35],
    [1, radius * 0.9, radius * 0.9],
  ]);
  return zone('airbag-wheel', 'airbag in the steering wheel', 'airbag', shape);
}

/** Under a cover in the dash top before the passenger, opening up and rearward. */
function passengerBag(d: Dimensions, dashTop: Patch): KeepClearZone {
  const cover = atY(dashTop, d.seatOffset, 0.8);
  const out: Vec3 = [0.8, 0, 0.6];
  const shape = bag(along(cover, out, -90), along(cover, out, 330), across(out), [
    [0, 150, 70],
    [0.2, 165, 80],
    [0.5, 210, 150],
    [0.85, 225, 190],
    [1, 170, 130],
  ]);
  return zone('airbag-dash', "passenger's airbag in the dash", 'airbag', shape);
}

function kneeBag(side: 'left' | 'right', dashLower: Patch): KeepClearZone {
  const shape = slabOver(dashLower, [0.14, 0.86], [0.15, 0.95], [-70, 150]);
  return zone(`airbag-knee-${side}`, `${side} knee airbag`, 'airbag', shape);
}

/** Places over which a curtain lies stored or falls: panel, v, depth behind and before it. */
const CURTAIN = [
  ['pillar', 'in the upper half of the pillar', [0.5, 1], [-35, 20]],
  ['roof-edge', 'along the roof', [0, 1], [-40, 40]],
  ['roof-edge-rear', 'along the roof, rear', [0, 1], [-40, 40]],
  ['side-glass', 'over the door glass', [0.12, 1], [-30, 75]],
  ['rear-side-glass', 'over the rear glass', [0.12, 1], [-30, 75]],
] as const;

/** Stored along the edge of the roof from pillar to pillar, it falls over the glass. */
function curtain(find: PatchFinder): KeepClearZone[] {
  const zones: KeepClearZone[] = [];
  for (const [panel, where, v, depth] of CURTAIN) {
    const patch = find(`${panel}-left`);
    if (!patch) continue;
    const shape = slabOver(patch, [0, 1], v, depth, 8);
    const id = `airbag-curtain-${panel}-left`;
    zones.push(zone(id, `left curtain airbag, ${where}`, 'airbag', shape));
  }
  return zones;
}

/** In the outer bolster of a front backrest, opening forward between body and door. */
function seatSide(seat: Seat, halfWidth: number): KeepClearZone | null {
  const { posture } = seat;
  if (posture?.row !== 1) return null;
  const { up, out } = backrestAxes(posture.torsoDeg);
  const y = seat.id === 'front-left' ? -1 : 1;
  const root = along(add(posture.hip, [0, y * (halfWidth - 18), 0]), out, -120);
  const cut = (ahead: number, low: number, high: number, half: number): Vec3[] =>
    (
      [
        [low, -half],
        [low, half],
        [high, half],
        [high, -half],
      ] as const
    ).map(([s, dy]) => add(along(along(root, up, s), out, ahead), [0, dy, 0]));
  const side = seat.id === 'front-left' ? 'left' : 'right';
  const shape = loft([
    cut(-60, 150, 400, 28),
    cut(60, 120, 430, 45),
    cut(240, 70, 420, 70),
    cut(330, 120, 360, 40),
  ]);
  return zone(
    `airbag-seat-side-${side}`,
    `airbag in the side of the ${side} seat`,
    'airbag',
    shape,
  );
}

/** All airbag zones of the left-hand-drive car. */
export function airbags(
  d: Dimensions,
  find: PatchFinder,
  frontSeats: readonly Seat[],
  halfWidth: number,
): KeepClearZone[] {
  const zones: KeepClearZone[] = [wheelBag(d)];
  const dashTop = find('dash-top-right');
  if (dashTop) zones.push(passengerBag(d, dashTop));
  for (const side of ['left', 'right'] as const) {
    const lower = find(`dash-lower-${side}`);
    if (lower) zones.push(kneeBag(side, lower));
  }
  const left = curtain(find);
  zones.push(...left, ...left.map(mirrorZone));
  for (const seat of frontSeats) {
    const bagZone = seatSide(seat, halfWidth);
    if (bagZone) zones.push(bagZone);
  }
  return zones;
}
