/** In and under the dash: column, glove box, ducts and demisters. Typical places, from memory. */
import { along, direction, radians, sub, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { atY, type PatchFinder } from '../furniture/patches';
import { loft } from '../furniture/solid';
import { wheelPlace } from '../furniture/steering';
import { mirrorZone } from '../mirror';
import type { KeepClearZone } from '../model';
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

/** The lid before the passenger, from its hinge (t = 0) to its latch (t = 1). */
export interface GloveBoxLid {
  /** A point `dy` off the lid's middle; it lies on the lower dash and on the dash face above it. */
  at: (dy: number, t: number) => Vec3;
  halfWidth: number;
}

/** Share of the lid that lies on the lower dash. */
const ON_LOWER = 0.62;

export function gloveBoxLid(d: Dimensions, find: PatchFinder): GloveBoxLid | null {
  const lower = find('dash-lower-right');
  const face = find('dash-face-right');
  if (!lower || !face) return null;
  return {
    at: (dy, t) =>
      t <= ON_LOWER
        ? atY(lower, d.seatOffset + dy, 0.14 + (0.86 * t) / ON_LOWER)
        : atY(face, d.seatOffset + dy, (0.42 * (t - ON_LOWER)) / (1 - ON_LOWER)),
    halfWidth: GLOVE_HALF_WIDTH,
  };
}

function gloveBox(d: Dimensions, find: PatchFinder): KeepClearZone[] {
  const lid = gloveBoxLid(d, find);
  if (!lid) return [];
  const [hinge, latch] = [lid.at(0, 0), lid.at(0, 1)];
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
  if (!face) return zones;
  for (const [id, name, u] of [
    ['vent-outer-left', 'left air vent and its duct', [0.78, 0.97]],
    ['vent-inner-left', 'air vent left of the middle and its duct', [0.03, 0.24]],
  ] as const) {
    const left = zone(id, name, 'duct', slabOver(face, u, [0.3, 0.95], [-170, 40], 2));
    zones.push(left, mirrorZone(left));
  }
  return zones;
}

/** All zones in and under the dash of the left-hand-drive car. */
export const dashZones = (d: Dimensions, find: PatchFinder): KeepClearZone[] => [
  column(d),
  ...gloveBox(d, find),
  ...ducts(find),
];
