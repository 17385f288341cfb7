import { degrees, dot, type Vec3 } from '../vector';

/** How an inclinometer is held on the speaker's face. */
export type HeldAlong = 'lengthwise' | 'crosswise' | 'upright';

/**
 * What an inclinometer shows that is laid on a flat board over the speaker's face: its edge along
 * the line of the face that runs most nearly lengthwise, crosswise or upright in the car.
 */
export interface FaceReading {
  held: HeldAlong;
  /** Unit, in the face: rearward, to the right, or upward. */
  along: Vec3;
  /** Above level, degrees; the end that `along` points to is the higher one where positive. */
  deg: number;
}

const AXES: readonly (readonly [HeldAlong, Vec3])[] = [
  ['lengthwise', [1, 0, 0]],
  ['crosswise', [0, 1, 0]],
  ['upright', [0, 0, 1]],
];

/**
 * The two readings that say most about a face: along the two car axes that lie nearest in it. No
 * two readings against gravity tell which way an upright face is turned; the laser does.
 * @param axis unit, out of the face
 */
export function faceReadings(axis: Vec3): readonly [FaceReading, FaceReading] {
  const inFace = AXES.map(([held, way]) => {
    const out = dot(way, axis);
    // What is left of the car's axis in the face; longer is nearer to lying in it.
    const rest: Vec3 = [way[0] - out * axis[0], way[1] - out * axis[1], way[2] - out * axis[2]];
    return { held, rest, size: Math.sqrt(dot(rest, rest)) };
  });
  // Stable, so that a tie does not hang on rounding of the sort.
  const leastIn = inFace.reduce((least, one) => (one.size < least.size - 1e-9 ? one : least));
  const [first, second] = inFace
    .filter((one) => one !== leastIn)
    .map(({ held, rest, size }): FaceReading => {
      const along: Vec3 = [rest[0] / size, rest[1] / size, rest[2] / size];
      return { held, along, deg: degrees(Math.asin(Math.min(1, Math.max(-1, along[2])))) };
    }) as [FaceReading, FaceReading];
  return [first, second];
}
