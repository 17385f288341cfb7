import { SAME_POINT } from '../../tolerance';
import { distance, type Vec3 } from '../../vector';
import { isBaffle, isFree, type ReflectionQuery } from './reflections';
import { reflectorOf } from './reflector';
import { specularPoints } from './specular-points';
import type { Surface } from './surface';

/** A bound may be off by rounding, mm. */
const SLACK = 1e-6;

/**
 * How much longer than the straight line the first reflection's way is, mm: exactly the first
 * `extra` of `reflectionsBetween` of the first order. Panels are asked in the order of how short a
 * way by them could be, and no longer once none can be shorter than the way found: of some ninety
 * panels a handful.
 * @returns `null` where nothing is thrown back
 */
export function firstReflectionExtra(query: ReflectionQuery): number | null {
  const { source, receiver, panels, spot } = query;
  const reflector = reflectorOf(panels);
  const [s, r] = [reflector.view(source), reflector.view(receiver)];
  const direct = distance(source, receiver);
  const { bounds, surfaces } = reflector;
  const least = new Float64Array(panels.length);
  for (let i = 0; i < panels.length; i++)
    least[i] =
      (surfaces[i] as Surface).panel.reflectivity > 0
        ? gapTo(bounds, i, source) + gapTo(bounds, i, receiver)
        : Infinity;
  let best = Infinity;
  for (;;) {
    let next = -1;
    let shortest = best;
    for (let i = 0; i < panels.length; i++) {
      const bound = least[i] as number;
      if (bound - SLACK < shortest) {
        shortest = bound - SLACK;
        next = i;
      }
    }
    if (next < 0) break;
    least[next] = Infinity;
    const surface = surfaces[next] as Surface;
    for (const { point, normal, path } of specularPoints(reflector, next, s, r)) {
      if (!(path < best)) break;
      if (!(path - direct > SAME_POINT) || isBaffle(surface, spot, path - direct)) continue;
      if (!isFree(query, [{ surface, point, normal }])) continue;
      best = path;
      break;
    }
  }
  return best === Infinity ? null : best - direct;
}

/** From a place to the box round panel number `i`, mm. */
function gapTo(bounds: Float64Array, i: number, [x, y, z]: Vec3): number {
  const b = 6 * i;
  const dx = Math.max((bounds[b] as number) - x, 0, x - (bounds[b + 3] as number));
  const dy = Math.max((bounds[b + 1] as number) - y, 0, y - (bounds[b + 4] as number));
  const dz = Math.max((bounds[b + 2] as number) - z, 0, z - (bounds[b + 5] as number));
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}
