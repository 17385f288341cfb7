/** Measured arrivals against predicted ones, when nobody knows how long the measuring loop takes. */

export interface ComparedArrival {
  /** Of the speaker. */
  id: string;
  /** First arrival as measured, ms, from any beginning common to all. */
  measuredMs: number;
  /** As predicted, ms: the path over the speed of sound. */
  predictedMs: number;
  /** What the channel was delayed by while measuring, ms; left out: nothing. */
  delayMs?: number;
  /** Standard deviations, ms; combined they are above 0. */
  measuredSdMs: number;
  predictedSdMs: number;
}

export interface ArrivalDifference {
  id: string;
  /** Measured less predicted, delay and loop taken off, ms: above 0, sound comes later than predicted. */
  differenceMs: number;
  /** Combined standard deviation of measurement and prediction, ms. */
  sdMs: number;
  /** The difference is within twice that: what was to be expected. */
  within: boolean;
  /** It stands out from the channel's own uncertainty and from all others. */
  outlier: boolean;
}

export interface ArrivalComparison {
  /** In the order given. */
  channels: ArrivalDifference[];
  /** What the loop adds to every channel, ms, with its standard deviation. */
  offsetMs: number;
  offsetSdMs: number;
  /** Ids, the farthest off first. */
  outliers: string[];
  /** Every channel is within its uncertainty. */
  agrees: boolean;
  /** Root mean square of the differences without the outliers, ms. */
  rmsMs: number;
  /** What cannot be told from so few channels, in one sentence; `null` from three on. */
  tooFew: string | null;
}

/**
 * Twice the combined standard uncertainty holds about 95 in 100: JCGM 100:2008 (GUM), 6.3.3. Three
 * times it, hardly any: the usual bound for blunders (common practice).
 */
const EXPECTED = 2;
const BLUNDER = 3;
/** 1.4826 · median |x| is a normal standard deviation: Rousseeuw and Croux, JASA 88, 1993. */
const MAD_TO_SD = 1.4826;

/**
 * Takes the loop's own delay off and compares channel by channel. The loop is the median of
 * measured less predicted at first; channels more than three times their uncertainty off, and three
 * times the spread of all by its median, are outliers; then it is the mean of the others weighted by
 * 1/sd² (least squares), until the same ones stay out.
 * @throws RangeError for no channels, ids given twice, numbers that are none, or no uncertainty
 */
export function compareArrivals(arrivals: readonly ComparedArrival[]): ArrivalComparison {
  const given = arrivals.map(checked);
  if (given.length === 0) throw new RangeError('compareArrivals: expected a channel at least');
  const twice = given.find(({ id }, i) => given.findIndex((one) => one.id === id) !== i);
  if (twice) throw new RangeError(`compareArrivals: "${twice.id}" is given twice`);

  const few = given.length < 3;
  let offset = median(given.map(({ raw }) => raw));
  const spread = MAD_TO_SD * median(given.map(({ raw }) => Math.abs(raw - offset)));
  const standsOut = ({ raw, sd }: Given) =>
    !few && Math.abs(raw - offset) > BLUNDER * Math.max(sd, spread);
  let out = new Set(given.filter(standsOut));
  let weight = 0;
  // Each round either repeats the last, which ends it, or is cut off: two sets may take turns.
  for (let round = 0; round < 10; round++) {
    const kept = given.filter((one) => !out.has(one));
    weight = kept.reduce((sum, { sd }) => sum + 1 / sd ** 2, 0);
    offset = kept.reduce((sum, { raw, sd }) => sum + raw / sd ** 2, 0) / weight;
    const next = new Set(given.filter(standsOut));
    if (next.size === out.size && [...next].every((one) => out.has(one))) break;
    if (given.length - next.size < 2 || round === 9) break;
    out = next;
  }

  const channels = given.map((one): ArrivalDifference => {
    const differenceMs = one.raw - offset;
    return {
      id: one.id,
      differenceMs,
      sdMs: one.sd,
      within: Math.abs(differenceMs) <= EXPECTED * one.sd,
      outlier: out.has(one),
    };
  });
  const kept = channels.filter(({ outlier }) => !outlier);
  return {
    channels,
    offsetMs: offset,
    offsetSdMs: 1 / Math.sqrt(weight),
    outliers: channels
      .filter(({ outlier }) => outlier)
      .sort((a, b) => Math.abs(b.differenceMs) - Math.abs(a.differenceMs))
      .map(({ id }) => id),
    agrees: channels.every(({ within }) => within),
    rmsMs: Math.sqrt(kept.reduce((sum, c) => sum + c.differenceMs ** 2, 0) / kept.length),
    tooFew: TOO_FEW[given.length] ?? null,
  };
}

const TOO_FEW: Readonly<Record<number, string>> = {
  1: 'a single channel shows only what the loop takes: measure at least three',
  2: 'of two channels only the difference can be told, not which one is off: measure at least three',
};

interface Given {
  id: string;
  raw: number;
  sd: number;
}

function checked(arrival: ComparedArrival): Given {
  const { id, measuredMs, predictedMs, delayMs = 0, measuredSdMs, predictedSdMs } = arrival;
  const raw = measuredMs - predictedMs - delayMs;
  const sd = Math.sqrt(measuredSdMs ** 2 + predictedSdMs ** 2);
  if (!Number.isFinite(raw))
    throw new RangeError(
      `compareArrivals: "${id}" has ${measuredMs} ms measured, ${predictedMs} predicted, ${delayMs} delay`,
    );
  if (!(sd > 0 && sd < Number.POSITIVE_INFINITY))
    throw new RangeError(
      `compareArrivals: expected an uncertainty above 0 for "${id}", got ${measuredSdMs} and ${predictedSdMs} ms`,
    );
  return { id, raw, sd };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  return ((sorted[(n - 1) >> 1] as number) + (sorted[n >> 1] as number)) / 2;
}
