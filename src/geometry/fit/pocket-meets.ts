import type { CabinModel } from '../cabin/model';
import type { MeshShape } from '../input';
import { mix, type Vec3 } from '../vector';
import { nameOf } from './problem';
import { isInside } from './solid';
import { thingsOf } from './things';

/** Places looked at from front to back of a pocket: a slab of 20 mm is met in one of 100 mm. */
const LAYERS = 6;

/**
 * What a pocket's airspace lies in: keep-clear zones and obstacles, a sentence each. Looked for at
 * many places inside it, not exactly: something thinner than the distance between them can be
 * missed.
 * @param mesh as `pocketOf` makes it: one face's vertices, then the other's in the same order
 */
export function pocketMeets(
  cabin: Pick<CabinModel, 'obstacles' | 'keepClear' | 'seats'>,
  mesh: MeshShape,
): string[] {
  const { vertices } = mesh;
  const half = vertices.length / 2;
  const places: Vec3[] = [];
  for (let layer = 0; layer < LAYERS; layer++)
    for (let i = 0; i < half; i++)
      places.push(mix(vertices[i] as Vec3, vertices[i + half] as Vec3, (layer + 0.5) / LAYERS));
  const ends = [0, 1, 2].map((k) => {
    const all = places.map((p) => p[k] as number);
    return [Math.min(...all), Math.max(...all)] as const;
  });
  return thingsOf(cabin as CabinModel).flatMap((thing) => {
    const apart = ends.some(
      ([low, high], k) => (thing.low[k] as number) > high || (thing.high[k] as number) < low,
    );
    const solid = apart ? null : thing.solid();
    if (!solid || !places.some((place) => isInside(solid, place))) return [];
    return thing.kind === 'zone'
      ? [`part of it lies in the place kept clear for ${nameOf(thing)}: not there`]
      : [`part of it lies in ${nameOf(thing)}${thing.travels ? ', somewhere on its travel' : ''}`];
  });
}
