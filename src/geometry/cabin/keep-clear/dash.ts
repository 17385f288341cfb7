/** In and under the dash: column, glove box, ducts and demisters. Typical places, from memory. */
import { along, direction, radians, sub, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { atY, type PatchFinder } from '../furniture/patches';
import { loft } from '../furniture/solid';
import { wheelPlace } from '../furniture/steering';
import { mirrorZone } from '../mirror';
import type { KeepClearZone, Patch } from '../model';
import { slabOver, zone } from './zone';

/** Column with what moves and folds round it. Typical value, from memory. */
const COLUMN_RADIUS = 92;

function column(d: Dimensions): KeepClearZone {
  const { center, axis } = wheelPlace(d);
  const length = Math.max(200, (center[0] + 60) / Math.max(0.3, axis[0]));
  return zone('column', 'steering column', 'column', {
    shape: 'capsule',
    from: along(center, axis, -110),
    to: along(center, axis, -length),
    radius: COLUMN_RADIUS,
  });
}

/** Half width of the glove box, its depth behind the lid, and how far the lid falls open. */
const GLOVE_HALF_WIDTH = 185;
const GLOVE_DEPTH = 240;
const GLOVE_OPEN_DEG = 80;

/** The lid's place on the lower dash before the passenger: hinge below, latch above. */
export function gloveBoxLid(
  d: Dimensions,
  find: PatchFinder,
): { hinge: Vec3; latch: Vec3; halfWidth: number; patch: Patch } | null {
  const patch = find('dash-lower-right');
  if (!patch) return null;
  return {
    hinge: atY(patch, d.seatOffset, 0.12),
    latch: atY(patch, d.seatOffset, 0.92),
    halfWidth: GLOVE_HALF_WIDTH,
    patch,
  };
}

function gloveBox(d: Dimensions, find: PatchFinder): KeepClearZone[] {
  const lid = gloveBoxLid(d, find);
  if (!lid) return [];
  const { hinge, latch } = lid;
  const rise = sub(latch, hinge);
  const back = direction([-1, 0, 0.1]) as Vec3;
  // Seen from the side: the box behind the lid, and the sector its latch sweeps.
  const outline: Vec3[] = [along(hinge, back, GLOVE_DEPTH), along(latch, back, GLOVE_DEPTH)];
  for (let i = 0; i <= 5; i++) {
    const a = radians((GLOVE_OPEN_DEG * i) / 5);
    const [c, s] = [Math.cos(a), Math.sin(a)];
    outline.push([
      hinge[0] + rise[0] * c + rise[2] * s,
      hinge[1],
      hinge[2] - rise[0] * s + rise[2] * c,
    ]);
  }
  outline.push(hinge);
  const at = (dy: number) => outline.map((p): Vec3 => [p[0], d.seatOffset + dy, p[2]]);
  const shape = loft([at(-GLOVE_HALF_WIDTH), at(GLOVE_HALF_WIDTH)]);
  return [zone('glove-box', 'glove box and its lid', 'glove box', shape)];
}

function ducts(find: PatchFinder): KeepClearZone[] {
  const zones: KeepClearZone[] = [];
  for (const side of ['left', 'center', 'right'] as const) {
    const top = find(`dash-top-${side}`);
    if (!top) continue;
    const name = side === 'center' ? 'demister, middle' : `${side} demister`;
    zones.push(
      zone(`demister-${side}`, name, 'duct', slabOver(top, [0.04, 0.96], [0.03, 0.16], [-90, 25])),
    );
  }
  const face = find('dash-face-left');
  if (face) {
    const shape = slabOver(face, [0.8, 0.97], [0.5, 0.92], [-180, 40], 2);
    const left = zone('vent-left', 'left air vent and its duct', 'duct', shape);
    zones.push(left, mirrorZone(left));
  }
  const middle = find('dash-face-center');
  if (middle) {
    const shape = slabOver(middle, [0.08, 0.92], [0.62, 0.94], [-180, 40], 4);
    zones.push(zone('vent-center', 'middle air vents and their duct', 'duct', shape));
  }
  return zones;
}

/** All zones in and under the dash of the left-hand-drive car. */
export const dashZones = (d: Dimensions, find: PatchFinder): KeepClearZone[] => [
  column(d),
  ...gloveBox(d, find),
  ...ducts(find),
];
