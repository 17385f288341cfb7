import type { ArrivalComparison } from './compare-arrivals';

/** A measured path as a survey takes it, beside readings of the tape. */
export interface ArrivalReading {
  /** Of the speaker. */
  speaker: string;
  seat: string;
  /** Measured less predicted, mm. */
  pathDifference: number;
  /** The whole path as measured, mm: predicted plus the difference. */
  path: number;
  /** Standard deviation, mm: of measuring and of the loop's own delay, not of the prediction. */
  sd: number;
}

export interface ReadingSource {
  seat: string;
  /** mm/ms. */
  speedOfSound: number;
  /** Predicted paths, mm, and the standard deviation of the measured time, ms; by speaker. */
  channels: readonly { id: string; path: number; measuredSdMs: number }[];
  /** Ids of the channels taken over; left out: all but the outliers. */
  accepted?: readonly string[];
}

/**
 * Accepted differences as path readings. The loop's delay is taken from the very predictions they
 * are compared with, so together they tell how far apart the paths are; their common length only as
 * far as the predictions were right on the whole. Of a single channel there is none: all it shows
 * is taken for the loop.
 * @throws RangeError for an accepted id that was not compared, or a speed that is not above 0
 */
export function arrivalReadings(
  comparison: ArrivalComparison,
  { seat, speedOfSound, channels, accepted }: ReadingSource,
): ArrivalReading[] {
  if (!(speedOfSound > 0))
    throw new RangeError(`arrivalReadings: expected a speed above 0, got ${speedOfSound}`);
  if (comparison.channels.length < 2) return [];
  const known = new Map(channels.map((channel) => [channel.id, channel]));
  const compared = new Map(comparison.channels.map((channel) => [channel.id, channel]));
  const taken = accepted ?? comparison.channels.flatMap(({ id, outlier }) => (outlier ? [] : [id]));
  return taken.map((id) => {
    const [difference, channel] = [compared.get(id), known.get(id)];
    if (!difference || !channel)
      throw new RangeError(`arrivalReadings: "${id}" was not compared, or its path is not given`);
    const pathDifference = difference.differenceMs * speedOfSound;
    const sdMs = Math.sqrt(channel.measuredSdMs ** 2 + comparison.offsetSdMs ** 2);
    return {
      speaker: id,
      seat,
      pathDifference,
      path: channel.path + pathDifference,
      sd: sdMs * speedOfSound,
    };
  });
}
