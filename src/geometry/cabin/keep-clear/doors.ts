import type { MeshShape } from '../../input';
import { clamp, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { PatchFinder } from '../furniture/patches';
import { loft } from '../furniture/solid';
import { mirrorZone } from '../mirror';
import type { KeepClearZone } from '../model';
import { pointOnPatch } from '../patch';
import { zone } from './zone';

/** Glass with its guides and lifter. Typical value, from memory. */
const THICKNESS = 26;

/**
 * Where the front door's glass goes when it is wound down: below the belt, in the surface of the
 * glass, which steepens towards the sill as doors do.
 */
export function glassTravel(d: Dimensions, find: PatchFinder): KeepClearZone[] {
  const glass = find('side-glass-left');
  if (!glass) return [];
  const lean = Math.tan(radians(clamp(d.sideGlassTumblehome, 0, 40)));
  const rings: Vec3[][] = [];
  for (const u of [0.06, 0.35, 0.65, 0.94]) {
    const belt = pointOnPatch(glass, u, 0);
    const top = pointOnPatch(glass, u, 1);
    // The pane is as tall as the opening; a little stays in the guides.
    const drop = clamp(top[2] - belt[2], 120, belt[2] - d.sillHeight - 40);
    const at = (down: number): Vec3 => [
      belt[0],
      belt[1] - lean * (down - (down * down) / (2.4 * drop)),
      belt[2] - down,
    ];
    const outer = (p: Vec3): Vec3 => [p[0], p[1] - THICKNESS, p[2]];
    const [a, b, c] = [at(6), at(drop / 2), at(drop)];
    rings.push([a, b, c, outer(c), outer(b), outer(a)]);
  }
  const shape: MeshShape = loft(rings);
  const left = zone('glass-travel-left', 'left door glass wound down', 'glass travel', shape);
  return [left, mirrorZone(left)];
}
