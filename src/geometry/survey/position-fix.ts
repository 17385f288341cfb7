/** Where a speaker or a head really is, by readings from known points; and which of them lie. */
import { chiSquareBound } from '../measure/chi-square';
import { distance, dot, length, scale, sub, type Vec3 } from '../vector';
import { type DistanceFit, type DistanceReading, fitDistances } from './distance-fit';
import { eigenOf, type Symmetric } from './eigen';
import { sphereHolding } from './sphere-holding';

export interface PositionFix {
  position: Vec3;
  /** Standard deviations along X, Y and Z, mm. */
  sd: Vec3;
  /** With 95 in 100 the point lies within this, mm. */
  within95: number;
  /** The anchors lie in one plane, or nearly: this place beyond it fits as well. `null`: none does. */
  mirror: Vec3 | null;
  /** As read less as fitted, mm, of every reading, in the order given; blunders too. */
  residuals: readonly { id: string; off: number }[];
  /** Readings left out because all others agree without them; the farthest off first. */
  blunders: readonly { id: string; off: number }[];
  /** Readings contradict one another, and one of these is wrong: which cannot be told. Empty: they agree. */
  suspects: readonly string[];
}

/** `few`: fewer than three; `line`: all along one line; `weak`: the error would be over 30 times a reading's. */
export type FixAnswer =
  | { ok: true; fix: PositionFix }
  | { ok: false; why: 'few' | 'line' | 'weak' };

/** Of a χ² test of all readings together: one in a thousand is thrown out by chance. Baarda's choice too
 * (W. Baarda, A Testing Procedure for Use in Geodetic Networks, Delft 1968). */
const SURE = 0.999;
/** Another place fits as well when its sum is larger by less than this: 95 % of χ² with one degree. */
const AS_WELL = 3.84;
/** Nearer to each other than this, two places are one, mm. */
const SAME_PLACE = 1;
/** As in tape-fix.ts. */
const SINGULAR = 1e-3;

/**
 * The place that fits the readings best; of two mirror images the nearer to where it should be.
 * With two readings more than needed a blunder is found by leaving each out in turn: it is the one
 * without which the others agree, as long as that is true of one alone.
 * @param near where it should be: where the search begins
 * @throws RangeError for a reading whose distance or sd is not above 0
 */
export function positionFix(readings: readonly DistanceReading[], near: Vec3): FixAnswer {
  for (const { id, distance, sd } of readings)
    if (!(distance > 0 && sd > 0 && Number.isFinite(distance + sd)))
      throw new RangeError(
        `positionFix: expected a distance and sd above 0 for "${id}", got ${distance} and ${sd}`,
      );
  const { kept, blunders, suspects } = withoutBlunders(readings, near);
  if (kept.length < 3) return { ok: false, why: 'few' };
  const plane = planeOf(kept);
  if (!plane) return { ok: false, why: 'line' };
  const { best, mirror } = bothSides(kept, near, plane);
  const variance = kept.reduce((sum, { sd }) => sum + sd ** 2, 0) / kept.length;
  const { values, vectors } = best.eigen;
  if (!(values[2] * variance > SINGULAR)) return { ok: false, why: 'weak' };
  const sds = values.map((value) => 1 / Math.sqrt(value)) as unknown as Vec3;
  const offOf = ({ anchor, distance: read }: DistanceReading): number =>
    read - distance(best.position, anchor);
  const out = new Set(blunders);
  return {
    ok: true,
    fix: {
      position: best.position,
      sd: [0, 1, 2].map((k) =>
        Math.sqrt(
          vectors.reduce(
            (sum, vector, i) => sum + ((vector[k] as number) * (sds[i] as number)) ** 2,
            0,
          ),
        ),
      ) as unknown as Vec3,
      within95: sphereHolding(0.95, sds),
      mirror,
      residuals: readings.map((one) => ({ id: one.id, off: offOf(one) })),
      blunders: readings
        .filter(({ id }) => out.has(id))
        .map((one) => ({ id: one.id, off: offOf(one) }))
        .sort((a, b) => Math.abs(b.off) - Math.abs(a.off)),
      suspects,
    },
  };
}

function withoutBlunders(readings: readonly DistanceReading[], near: Vec3) {
  /** Whatever was left out so far did not make the others agree: nobody is named alone. */
  const untold = (more: readonly DistanceReading[]) => ({
    kept: readings,
    blunders: [],
    suspects: [...blunders, ...more.map(({ id }) => id)],
  });
  let kept = readings;
  const blunders: string[] = [];
  for (;;) {
    const spare = kept.length - 3;
    if (spare < 1 || agrees(kept, near)) return { kept, blunders, suspects: [] };
    // Taken out one by one: those without which the others agree.
    const tried = kept.map((one) => {
      const others = kept.filter((other) => other !== one);
      return { one, others, sum: sumOf(others, near) };
    });
    const bound = spare > 1 ? chiSquareBound(SURE, spare - 1) : 0;
    const guilty = tried.filter(({ sum }) => sum <= bound);
    const [first, second] = tried.sort((a, b) => a.sum - b.sum);
    // With one spare reading any three agree.
    if (spare === 1 || !first) return untold(kept);
    if (guilty.length > 1) return untold(guilty.map(({ one }) => one));
    if (guilty.length === 0 && (spare < 3 || (second && second.sum < 2 * first.sum)))
      return untold(kept);
    blunders.push(first.one.id);
    kept = first.others;
  }
}

const agrees = (readings: readonly DistanceReading[], near: Vec3): boolean =>
  sumOf(readings, near) <= chiSquareBound(SURE, readings.length - 3);

function sumOf(readings: readonly DistanceReading[], near: Vec3): number {
  const plane = planeOf(readings);
  return plane ? bothSides(readings, near, plane).best.sum : 0;
}

interface Plane {
  middle: Vec3;
  normal: Vec3;
}

/** The anchors' plane; `null` where they are fewer than three places or lie along a line. */
function planeOf(readings: readonly DistanceReading[]): Plane | null {
  const n = readings.length;
  const middle = [0, 1, 2].map(
    (k) => readings.reduce((sum, { anchor }) => sum + (anchor[k] as number), 0) / n,
  ) as unknown as Vec3;
  const scatter = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) =>
      readings.reduce((sum, { anchor }) => {
        const off = sub(anchor, middle);
        return sum + (off[i] as number) * (off[j] as number);
      }, 0),
    ),
  ) as unknown as Symmetric;
  const { values, vectors } = eigenOf(scatter);
  // A line: across it the anchors stray by less than a thousandth of its length.
  return values[1] > 1e-6 * values[0] ? { middle, normal: vectors[2] } : null;
}

/** The fit from where it should be, and from the other side of the anchors' plane. */
function bothSides(
  readings: readonly DistanceReading[],
  near: Vec3,
  { middle, normal }: Plane,
): { best: DistanceFit; mirror: Vec3 | null } {
  const height = dot(sub(near, middle), normal);
  // In the plane itself nothing pulls off it: begin a little beside.
  const side = Math.abs(height) < BESIDE ? BESIDE * (height < 0 ? -1 : 1) : height;
  const starts = [side, -side].map((to) => sub(near, scale(normal, height - to)));
  const [here, there] = starts.map((start) => fitDistances(readings, start)) as [
    DistanceFit,
    DistanceFit,
  ];
  if (length(sub(here.position, there.position)) < SAME_PLACE)
    return { best: here.sum <= there.sum ? here : there, mirror: null };
  if (Math.abs(here.sum - there.sum) >= AS_WELL)
    return { best: here.sum < there.sum ? here : there, mirror: null };
  const [best, other] =
    length(sub(here.position, near)) <= length(sub(there.position, near))
      ? [here, there]
      : [there, here];
  return { best, mirror: other.position };
}

const BESIDE = 20;
