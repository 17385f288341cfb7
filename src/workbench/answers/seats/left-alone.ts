import type { OptionResult } from '../../../geometry';

/** What delays for one seat alone leave at each seat, ms. */
export interface LeftAlone {
  seat: string;
  left: { id: string; largestError: number }[];
}

/**
 * The largest error at every seat with the delays of one of them, rounded as they are set: half the
 * spread of the arrivals, as a compromise counts it. `null` where the answer has no such seat.
 */
export function leftAlone(result: OptionResult, seat: string): LeftAlone | null {
  const own = result.seats.find(({ id }) => id === seat);
  if (!own || own.delays.length === 0) return null;
  const delays = new Map(own.delays.map(({ speaker, roundedDelay }) => [speaker, roundedDelay]));
  const left = result.seats.map(({ id, arrivals }) => {
    const times = arrivals.map(({ speaker, time }) => time + (delays.get(speaker) ?? 0));
    return { id, largestError: (Math.max(...times) - Math.min(...times)) / 2 };
  });
  return { seat, left };
}
