/** Which point to take the tape to next. */
import type { ReferencePoint } from '../cabin/model';
import { direction, distance, sub, type Vec3 } from '../vector';
import type { DistanceReading } from './distance-fit';
import { eigenOf, type Symmetric } from './eigen';

/** What is known of the place without any reading, mm: as good as nothing. Choice of ours. */
const UNKNOWN = 1000;
/** A tape shorter than this is hard to hold, and one longer does not fit a car, mm. Choices of ours. */
const REACH = [120, 2500] as const;
/** A reading tells two places apart when it differs by so many of its sds. Choice of ours. */
const TELLS = 5;

/**
 * The reference points to go on with, best first: so many that, with the readings there are, the
 * place is fixed best; each is the one that leaves the least sum of variances. With a mirror image
 * to be told apart, the first is the point whose distances to both differ most.
 * @returns fewer where there are no more points within reach
 */
export function nextReadings(
  near: Vec3,
  have: readonly Pick<DistanceReading, 'anchor' | 'sd'>[],
  candidates: readonly ReferencePoint[],
  count: number,
  { sd, mirror = null }: { sd: number; mirror?: Vec3 | null },
): ReferencePoint[] {
  const used = have.map(({ anchor }) => anchor);
  let left = candidates.filter(({ point }) => {
    const far = distance(point, near);
    return far >= REACH[0] && far <= REACH[1] && used.every((one) => distance(one, point) > 1);
  });
  const known: Pick<DistanceReading, 'anchor' | 'sd'>[] = [...have];
  const chosen: ReferencePoint[] = [];
  while (chosen.length < count && left.length > 0) {
    const telling =
      mirror && chosen.length === 0
        ? left.filter(({ point }) => apart(point, near, mirror) > TELLS * sd)
        : [];
    const best =
      telling.length > 0 && mirror
        ? largest(telling, ({ point }) => apart(point, near, mirror))
        : largest(left, ({ point }) => -spread(near, [...known, { anchor: point, sd }]));
    if (!best) break;
    chosen.push(best);
    known.push({ anchor: best.point, sd });
    left = left.filter((one) => one !== best);
  }
  return chosen;
}

const apart = (point: Vec3, a: Vec3, b: Vec3): number =>
  Math.abs(distance(point, a) - distance(point, b));

/** Sum of the variances of a place fixed like this, mm². */
function spread(near: Vec3, readings: readonly Pick<DistanceReading, 'anchor' | 'sd'>[]): number {
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) =>
      readings.reduce(
        (sum, { anchor, sd }) => {
          const way = direction(sub(near, anchor));
          return way ? sum + ((way[i] as number) * (way[j] as number)) / sd ** 2 : sum;
        },
        i === j ? 1 / UNKNOWN ** 2 : 0,
      ),
    ),
  ) as unknown as Symmetric;
  return eigenOf(normal).values.reduce((sum, value) => sum + 1 / value, 0);
}

function largest<T>(items: readonly T[], by: (item: T) => number): T | null {
  let [best, most] = [null as T | null, Number.NEGATIVE_INFINITY];
  for (const item of items) {
    const value = by(item);
    if (value > most) [best, most] = [item, value];
  }
  return best;
}
