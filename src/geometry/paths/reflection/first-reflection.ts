import { SAME_POINT } from '../../tolerance';
import { distance } from '../../vector';
import { isBaffle, isFree, type ReflectionQuery } from './reflections';
import { reflectorOf } from './reflector';
import { type SpecularPoint, specularPoints } from './specular-points';
import type { Surface } from './surface';

/**
 * How much longer than the straight line the first reflection's way is, mm: exactly the first
 * `extra` of `reflectionsBetween` of the first order, without working out the later ones.
 * @returns `null` where nothing is thrown back
 */
export function firstReflectionExtra(query: ReflectionQuery): number | null {
  const { source, receiver, panels, spot } = query;
  const reflector = reflectorOf(panels);
  const [s, r] = [reflector.view(source), reflector.view(receiver)];
  const direct = distance(source, receiver);
  const found: { surface: Surface; place: SpecularPoint }[] = [];
  for (let i = 0; i < panels.length; i++) {
    const surface = reflector.surfaces[i] as Surface;
    if (!(surface.panel.reflectivity > 0)) continue;
    for (const place of specularPoints(reflector, i, s, r)) {
      const extra = place.path - direct;
      if (extra > SAME_POINT && !isBaffle(surface, spot, extra)) found.push({ surface, place });
    }
  }
  // Casting both legs costs more than finding the place: shortest first, the first free one is it.
  found.sort((a, b) => a.place.path - b.place.path);
  for (const { surface, place } of found) {
    const { point, normal, path } = place;
    if (isFree(query, [{ surface, point, normal }])) return path - direct;
  }
  return null;
}
