/** What was measured in the car, against the engine's own answer for the option it was built by. */
import { COVERAGE, USUAL_UNCERTAINTIES } from '../compare/causes';
import type { Arrival, OptionResult } from '../result';
import { direction, scale, sub, type Vec3 } from '../vector';
import { chiSquareBound } from './chi-square';
import {
  type ArrivalComparison,
  type ArrivalDifference,
  compareArrivals,
} from './compare-arrivals';

/** Where the microphone stood: between the ears, or where one of them is. */
export type MicrophonePlace = 'head' | 'left-ear' | 'right-ear';

/** One first arrival as it is kept: what was read from the response, not the response. */
export interface MeasuredArrival {
  speaker: string;
  seat: string;
  at: MicrophonePlace;
  /** First arrival, ms, from a beginning common to all taken at this place. */
  time: number;
  /** Standard deviation of reading it off the response, ms. */
  sd: number;
  /** What the processor delayed the channel by meanwhile, ms; left out: nothing. */
  delay?: number;
  /** By the rising edge, or by correlation with another channel. */
  method: 'edge' | 'correlation';
  sampleRateHz: number;
  /** Of the response it was read from. */
  file?: string;
}

/** Standard uncertainties of what is not measured by sound. */
export interface MeasuredDoubts {
  /** A speaker off its spot, along each axis, mm. */
  spot: number;
  /** The microphone off its place, along each axis, mm. */
  seat: number;
  temperatureC: number;
}

/** The ones used where none are given: as in the comparison of options. Choices of ours, no source. */
export const USUAL_DOUBTS: MeasuredDoubts = USUAL_UNCERTAINTIES;

/** Standard uncertainties of one channel by their cause, mm of path. */
export interface DoubtParts {
  spot: number;
  seat: number;
  temperature: number;
  /** Sampling, noise and how softly the edge rises. */
  reading: number;
}

export interface MeasuredChannelResult extends ArrivalDifference {
  /** As kept. */
  measured: MeasuredArrival;
  /** Time and path the engine foretells at this place. */
  predictedMs: number;
  path: number;
  parts: DoubtParts;
}

/** All arrivals taken at one place, which share the loop's delay. */
export interface MeasuredSet extends Omit<ArrivalComparison, 'channels'> {
  seat: string;
  at: MicrophonePlace;
  channels: MeasuredChannelResult[];
  /**
   * Whether all differences together are what the uncertainties let expect: Σ(difference/sd)² against
   * the value that 95 in 100 stay below. `null` for a single channel, which the loop swallows.
   */
  whole: { sum: number; bound: number; within: boolean } | null;
  /** Twice the combined standard uncertainty, mm of path: of the channel least and of the one most sure. */
  expected: readonly [number, number];
}

/**
 * Compares kept arrivals with the prediction, place by place. Arrivals of speakers or seats the
 * answer does not hold are passed over. What moves all paths alike goes with the loop's delay, so a
 * microphone off its place counts by how unlike the directions of the speakers are, and the
 * temperature by how unlike the paths.
 * @param temperatureC of the plan
 */
export function compareMeasured(
  measured: readonly MeasuredArrival[],
  result: Pick<OptionResult, 'seats' | 'speedOfSound' | 'placed'>,
  temperatureC: number,
  doubts: MeasuredDoubts = USUAL_DOUBTS,
): MeasuredSet[] {
  const places = new Map<string, MeasuredArrival[]>();
  for (const one of measured) {
    const key = JSON.stringify([one.seat, one.at]);
    places.set(key, [...(places.get(key) ?? []), one]);
  }
  return [...places.values()].flatMap((taken) => {
    const found = taken.flatMap((one) => foretold(one, result));
    return found.length > 0 ? [setOf(found, result.speedOfSound, temperatureC, doubts)] : [];
  });
}

interface Foretold {
  measured: MeasuredArrival;
  path: number;
  time: number;
  /** From where the sound comes in, unit. */
  from: Vec3;
}

function foretold(
  measured: MeasuredArrival,
  { seats, placed }: Pick<OptionResult, 'seats' | 'placed'>,
): Foretold[] {
  const seat = seats.find(({ id }) => id === measured.seat);
  const arrival = seat?.arrivals.find(({ speaker }) => speaker === measured.speaker);
  if (!seat || !arrival) return [];
  const { path, time } =
    measured.at === 'head' ? arrival : arrival.ears[measured.at === 'left-ear' ? 'left' : 'right'];
  return [{ measured, path, time, from: cameFrom(arrival, seat.head, placed) }];
}

/** The last leg's direction; an ear is so near the head that it has the head's. */
function cameFrom({ way, speaker }: Arrival, head: Vec3, placed: OptionResult['placed']): Vec3 {
  const last = way.at(-2) ?? placed.find((one) => one.speaker === speaker)?.position;
  // A speaker in the very middle of the head comes from nowhere.
  return (last && direction(sub(last, head))) ?? [0, 0, 0];
}

const KELVIN = 273.15;

function setOf(
  found: readonly Foretold[],
  speed: number,
  temperatureC: number,
  doubts: MeasuredDoubts,
): MeasuredSet {
  const n = found.length;
  const meanPath = found.reduce((sum, { path }) => sum + path, 0) / n;
  const meanFrom = scale(
    found.reduce<Vec3>(
      (sum, { from }) =>
        [0, 1, 2].map((k) => (sum[k] as number) + (from[k] as number)) as unknown as Vec3,
      [0, 0, 0],
    ),
    1 / n,
  );
  // The speed of sound goes with the root of the absolute temperature: of an ideal gas (for instance
  // ISO 9613-1:1993, annex A), so a path read as time is off by half the relative error.
  const perPath = (0.5 * doubts.temperatureC) / (temperatureC + KELVIN);
  const parts = found.map(({ measured, path, from }): DoubtParts => {
    const unlike = sub(from, meanFrom);
    return {
      spot: doubts.spot,
      seat: doubts.seat * Math.sqrt(unlike[0] ** 2 + unlike[1] ** 2 + unlike[2] ** 2),
      temperature: perPath * Math.abs(path - meanPath),
      reading: measured.sd * speed,
    };
  });
  const compared = compareArrivals(
    found.map(({ measured, time }, i) => {
      const { spot, seat, temperature } = parts[i] as DoubtParts;
      return {
        id: measured.speaker,
        measuredMs: measured.time,
        predictedMs: time,
        delayMs: measured.delay ?? 0,
        measuredSdMs: measured.sd,
        predictedSdMs: Math.sqrt(spot ** 2 + seat ** 2 + temperature ** 2) / speed,
      };
    }),
  );
  const channels = compared.channels.map((one, i): MeasuredChannelResult => {
    const { measured, path, time } = found[i] as Foretold;
    return { ...one, measured, path, predictedMs: time, parts: parts[i] as DoubtParts };
  });
  const sum = channels.reduce(
    (total, { differenceMs, sdMs }) => total + (differenceMs / sdMs) ** 2,
    0,
  );
  const bound = n > 1 ? chiSquareBound(0.95, n - 1) : 0;
  const widths = channels.map(({ sdMs }) => COVERAGE * sdMs * speed);
  const { seat, at } = (found[0] as Foretold).measured;
  return {
    ...compared,
    seat,
    at,
    channels,
    whole: n > 1 ? { sum, bound, within: sum <= bound } : null,
    expected: [Math.min(...widths), Math.max(...widths)],
  };
}
