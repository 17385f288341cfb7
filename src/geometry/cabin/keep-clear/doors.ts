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
  // One pane, as tall as the opening where that is tallest; its lower edge stays level.
  const tall = [0.3, 0.6, 0.9].map(
    (u) => pointOnPatch(glass, u, 1)[2] - pointOnPatch(glass, u, 0)[2],
  );
  const belt = pointOnPatch(glass, 0.5, 0);
  const drop = clamp(Math.max(...tall), 120, Math.max(130, belt[2] - d.sillHeight - 40));
  const rings = [0.06, 0.35, 0.65, 0.94].map((u): Vec3[] => {
    const edge = pointOnPatch(glass, u, 0);
    // Curved as side glass is: it leans out below the belt, stands upright, and comes back.
    const at = (down: number): Vec3 => [
      edge[0],
      edge[1] - lean * (down - (down * down) / (1.2 * drop)),
      edge[2] - down,
    ];
    const inner = [at(6), at(0.3 * drop), at(0.6 * drop), at(drop)];
    const outer = inner.map((p): Vec3 => [p[0], p[1] - THICKNESS, p[2]]);
    return [...inner, ...outer.reverse()];
  });
  const shape: MeshShape = loft(rings);
  const left = zone('glass-travel-left', 'left door glass wound down', 'glass travel', shape);
  return [left, mirrorZone(left)];
}
