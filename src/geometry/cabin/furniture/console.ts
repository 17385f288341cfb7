import { add, along, clamp, scale, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Obstacle } from '../model';
import { pointOnPatch } from '../patch';
import { type PatchFinder, solveOnLine } from './patches';
import { block, limb, loft, merge, ring } from './solid';

/** Selector knob above the console. Typical value, from memory. */
const SELECTOR_HEIGHT = 105;
/** Armrest above the console. Typical value, from memory. */
const ARMREST_HEIGHT = 62;

/** A point on the middle of the console's top at x, kept on it. */
function onTop(find: PatchFinder, x: number): Vec3 | null {
  const patch = find('console-top');
  if (!patch) return null;
  const at = (v: number) => pointOnPatch(patch, 0.5, v);
  return at(solveOnLine(at, 0, x));
}

/** The gear or drive selector with its gaiter, and the lidded armrest behind it. */
export function consoleFurniture(d: Dimensions, find: PatchFinder): Obstacle[] {
  const patch = find('console-top');
  const foot = onTop(find, d.wheelReach + 30);
  if (!patch || !foot) return [];
  const out: Obstacle[] = [selector(foot, d)];
  const rearEnd = pointOnPatch(patch, 0.5, 1);
  const front = onTop(find, Math.max(foot[0] + 130, d.seatReach - 150)) as Vec3;
  const rear = onTop(find, Math.min(rearEnd[0] - 12, front[0] + 320)) as Vec3;
  if (rear[0] - front[0] > 120) out.push(armrest(front, rear, d.consoleWidth));
  return out;
}

function selector(foot: Vec3, d: Dimensions): Obstacle {
  const lean: Vec3 = [0.16, 0, 0.987];
  const knob = along(foot, lean, SELECTOR_HEIGHT);
  const w = clamp(d.consoleWidth * 0.3, 28, 46);
  const cut = (t: number, k: number) =>
    ring(along(foot, lean, t), [w * 1.35 * k, 0, 0], [0, w * k, 0], 16, 3);
  const gaiter = loft([cut(-4, 1), cut(10, 0.86), cut(24, 0.6), cut(40, 0.36), cut(52, 0.2)]);
  return {
    id: 'selector',
    name: 'selector',
    shape: { shape: 'capsule', from: foot, to: knob, radius: 21 },
    drawn: [
      { material: 'leather', mesh: gaiter },
      { material: 'metal', mesh: limb([along(foot, lean, 30), along(knob, lean, -18)], [7, 7], 8) },
      {
        material: 'dark-trim',
        mesh: limb(
          [along(knob, lean, -24), along(knob, lean, -4), along(knob, lean, 6)],
          [15, 23, 22],
          14,
        ),
      },
    ],
    given: false,
  };
}

function armrest(front: Vec3, rear: Vec3, consoleWidth: number): Obstacle {
  const halfLength = (rear[0] - front[0]) / 2;
  const middle = scale(add(front, rear), 0.5);
  const top = Math.max(front[2], rear[2]) + ARMREST_HEIGHT;
  const low = Math.min(front[2], rear[2]) - 4;
  const halfWidth = Math.max(30, consoleWidth / 2 - 8);
  const axes: [Vec3, Vec3, Vec3] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const lidHalf = 15;
  const boxTop = top - 2 * lidHalf - 2;
  const box = (n: number) =>
    block(
      [middle[0], middle[1], (boxTop + low) / 2],
      axes,
      [halfLength - 6, halfWidth - 4, (boxTop - low) / 2],
      14,
      n,
      6,
    );
  const lid = (n: number) =>
    block([middle[0], middle[1], top - lidHalf], axes, [halfLength, halfWidth, lidHalf], 14, n, 5);
  return {
    id: 'console',
    name: 'console armrest',
    shape: merge(box(10), lid(10)),
    drawn: [
      { material: 'dark-trim', mesh: box(20) },
      { material: 'leather', mesh: lid(24) },
    ],
    given: false,
  };
}
