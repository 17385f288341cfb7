import type { MeshShape } from '../../input';
import { along, type Vec3 } from '../../vector';
import { mirrorObstacle } from '../mirror';
import type { Obstacle, Patch } from '../model';
import { patchNormal, pointOnPatch } from '../patch';
import type { PatchFinder } from './patches';
import { loft, ring } from './solid';

/** One cut through a bar along the door: place on the card, half height, how far it stands out. */
type Cut = readonly [u: number, v: number, halfHeight: number, out: number];

/** A padded bar that follows the card: every cut sits on the panel, along its own normal. */
function bar(patch: Patch, cuts: readonly Cut[], around: number, power: number): MeshShape {
  return loft(
    cuts.map(([u, v, halfHeight, out]) => {
      const on = pointOnPatch(patch, u, v);
      const n = patchNormal(patch, u, v);
      // From 6 mm behind the card, so that no slit shows, to `out` before it.
      const middle = along(on, n, (out - 6) / 2);
      const half = (out + 6) / 2;
      const up: Vec3 = [0, 0, halfHeight];
      return ring(middle, [n[0] * half, n[1] * half, n[2] * half], up, around, power);
    }),
  );
}

/** Depth of armrest and pocket before the card. Typical values, from memory. */
const ARMREST_OUT = 58;
const POCKET_OUT = 24;

/** Armrest and map pocket of the left front door; a door card's u runs rearward, v upward. */
function leftDoor(find: PatchFinder): Obstacle[] {
  const out: Obstacle[] = [];
  const upper = find('door-upper-left');
  if (upper) {
    const run: Cut[] = [
      [0.3, 0.3, 6, 8],
      [0.34, 0.27, 22, 40],
      [0.44, 0.22, 28, ARMREST_OUT - 6],
      [0.62, 0.17, 30, ARMREST_OUT],
      [0.84, 0.15, 30, ARMREST_OUT],
      [0.93, 0.15, 26, 46],
      [0.96, 0.15, 10, 14],
    ];
    out.push({
      id: 'door-armrest-left',
      name: 'left door armrest',
      shape: bar(upper, run, 8, 3),
      drawn: [{ material: 'leather', mesh: bar(upper, run, 20, 3.4) }],
      given: false,
    });
  }
  const lower = find('door-lower-left');
  if (lower) {
    const run: Cut[] = [
      // Behind the lower front corner, where door speakers sit, and shallow beside the seat.
      [0.36, 0.15, 14, 4],
      [0.39, 0.15, 40, 18],
      [0.46, 0.15, 46, POCKET_OUT],
      [0.76, 0.15, 46, POCKET_OUT],
      [0.84, 0.15, 40, 16],
      [0.87, 0.15, 18, 4],
    ];
    out.push({
      id: 'door-pocket-left',
      name: 'left door pocket',
      shape: bar(lower, run, 8, 5),
      drawn: [{ material: 'hard-trim', mesh: bar(lower, run, 20, 5) }],
      given: false,
    });
  }
  return out;
}

/** Armrests and pockets of both front doors. */
export function doorFurniture(find: PatchFinder): Obstacle[] {
  const left = leftDoor(find);
  return [...left, ...left.map(mirrorObstacle)];
}
