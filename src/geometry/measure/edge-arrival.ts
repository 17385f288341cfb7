import { indexOfLargest, peakNear, valueAt } from './windowed-sinc';

/** A measured impulse response: any scale, all numbers finite. */
export interface ImpulseResponse {
  sampleRateHz: number;
  samples: ArrayLike<number>;
  /** When the first sample is, ms; left out: 0. */
  startMs?: number;
}

/** When the first sound arrives, by the rising edge of its impulse. */
export interface EdgeArrival {
  /** Where the edge crosses the threshold. For a sharp impulse that is some tenths of a sample before its peak. */
  ms: number;
  /** The first peak after it. */
  peakMs: number;
  /** The first peak points down: poles swapped somewhere on the way. */
  inverted: boolean;
  /** Where the threshold lay, dB below the highest point of all (negative). */
  thresholdDb: number;
  /** The noise is so high that the threshold had to be above the one asked for. */
  raisedByNoise: boolean;
  /** Noise before the arrival, dB below the highest point; `null` where too little stands before it. */
  noiseDb: number | null;
  /** Standard deviation of `ms` from that noise; `null` where it is not known. */
  sdMs: number | null;
}

/** Why there is no arrival, in one sentence. */
export interface NoArrival {
  problem: string;
}

export interface EdgeSettings {
  /** Threshold below the highest point, dB. */
  belowPeakDb?: number;
  /** But at least so far above the noise, dB. */
  aboveNoiseDb?: number;
}

/**
 * 12 dB: a direct sound up to 12 dB below the loudest reflection is still found, while the ripple
 * before an ideal band-limited impulse (−13.3 dB, the sinc's first side lobe) stays below. Choice of
 * ours; ISO 3382-1:2009 takes 20 dB [from memory], for rooms, where single samples do not matter.
 */
export const BELOW_PEAK_DB = 12;
/**
 * 14 dB is five standard deviations: even noise reaches that once in some 1.7 million samples.
 * Choice of ours.
 */
export const ABOVE_NOISE_DB = 14;
/** The threshold must lie below this share of the highest point. Choice of ours. */
const HIGHEST_SHARE = 0.9;

/** Samples left out between noise and arrival, and the fewest noise is told from. Choices of ours. */
const GUARD = 16;
const FEWEST = 16;

/**
 * First arrival by threshold: the first crossing of the highest point less `belowPeakDb`, between
 * samples by a windowed sinc. Noise is estimated before the arrival, and the threshold is raised
 * above it where need be, which moves the crossing up the edge: that is told.
 * @throws RangeError for a rate not above 0, a threshold at the peak, or a sample that is no number
 */
export function edgeArrival(
  { samples, sampleRateHz, startMs = 0 }: ImpulseResponse,
  { belowPeakDb = BELOW_PEAK_DB, aboveNoiseDb = ABOVE_NOISE_DB }: EdgeSettings = {},
): EdgeArrival | NoArrival {
  if (!(sampleRateHz > 0))
    throw new RangeError(`edgeArrival: expected a sample rate above 0, got ${sampleRateHz}`);
  if (!(belowPeakDb >= 1 && aboveNoiseDb >= 0))
    throw new RangeError(
      `edgeArrival: expected a threshold 1 dB or more below the peak and not below the noise, got ${belowPeakDb} and ${aboveNoiseDb}`,
    );
  for (let i = 0; i < samples.length; i++)
    if (!Number.isFinite(samples[i]))
      throw new RangeError(`edgeArrival: sample ${i} is ${samples[i]}`);
  const top = peakNear(samples, indexOfLargest(samples));
  const highest = Math.abs(top.value);
  if (!(highest > 0)) return { problem: 'the response is silent' };

  const asked = highest * 10 ** (-belowPeakDb / 20);
  let noise: number | null = null;
  let level = asked;
  let at: number | null = null;
  // Noise is told from what lies before the arrival, and the arrival by the noise: both settle soon.
  let end = Math.floor(top.position / 2);
  for (let pass = 0; pass < 4; pass++) {
    noise = noiseIn(samples, end);
    level = Math.max(asked, (noise ?? 0) * 10 ** (aboveNoiseDb / 20));
    if (level > HIGHEST_SHARE * highest)
      return {
        problem: `nothing stands out of the noise: its highest point is only ${dB(highest / (noise as number)).toFixed(0)} dB above it`,
      };
    at = firstCrossing(samples, level);
    if (at === null)
      return { problem: 'the response begins in the middle of the sound: cut it earlier' };
    const next = Math.max(0, Math.floor(at) - GUARD);
    if (next === end) break;
    end = next;
  }
  if (at === null) throw new Error('edgeArrival: no crossing below the highest point');
  const peak = firstPeak(samples, at);
  const slope = Math.abs(valueAt(samples, at + 0.05) - valueAt(samples, at - 0.05)) / 0.1;
  const toMs = (position: number) => startMs + (position * 1000) / sampleRateHz;
  return {
    ms: toMs(at),
    peakMs: toMs(peak.position),
    inverted: peak.value < 0,
    thresholdDb: dB(level / highest),
    raisedByNoise: level > asked,
    noiseDb: noise === null ? null : Math.max(SILENT_DB, dB(noise / highest)),
    // An error of height moves a crossing by itself over the slope, to first order.
    sdMs: noise === null || slope === 0 ? null : ((noise / slope) * 1000) / sampleRateHz,
  };
}

/** Less is no noise but rounding. */
const SILENT_DB = -200;
const dB = (ratio: number): number => 20 * Math.log10(ratio);

/**
 * Standard deviation of normal noise in the first samples by their median size, which a few that
 * belong to the sound do not spoil: 1.4826 · median |x| (P. J. Rousseeuw and C. Croux, JASA 88, 1993).
 */
function noiseIn(samples: ArrayLike<number>, end: number): number | null {
  if (end < FEWEST) return null;
  const sizes = Float64Array.from({ length: end }, (_, i) => Math.abs(samples[i] as number)).sort();
  const middle = ((sizes[(end - 1) >> 1] as number) + (sizes[end >> 1] as number)) / 2;
  return 1.4826 * middle;
}

/** Quarters of a sample: finer than any crossing of band-limited sound and back. */
const STEP = 0.25;
/** Between two samples sound rises at most this much above both, but for noise: 1/sinc(½) is 1.57. */
const BETWEEN = 0.6;

type Size = (position: number) => number;

/**
 * Ripple: a lobe that falls back below the threshold, and within so many samples is followed by one
 * so many times as high. A sinc's first side lobe stands 1.4 samples before its peak, at 1 to 4.6.
 * Choices of ours; 4 samples at 48 kHz are 29 mm.
 */
const RIPPLE = { samples: 4, times: 2.5 } as const;

/** The first rise through the level that is not ripple; `null` where the sound starts above it. */
function firstCrossing(samples: ArrayLike<number>, level: number): number | null {
  const size: Size = (position) => Math.abs(valueAt(samples, position));
  if (size(0) >= level) return null;
  let at = nextRise(samples, size, level, 0);
  while (at !== null) {
    let lobe = 0;
    let position = at;
    for (; position < samples.length && size(position) >= level; position += STEP)
      lobe = Math.max(lobe, size(position));
    let next = 0;
    for (let ahead = position; ahead <= position + RIPPLE.samples; ahead += STEP)
      next = Math.max(next, size(ahead));
    if (next < RIPPLE.times * lobe) return at;
    at = nextRise(samples, size, level, position);
  }
  return null;
}

/** From a place below the level on. */
function nextRise(
  samples: ArrayLike<number>,
  size: Size,
  level: number,
  from: number,
): number | null {
  for (let i = Math.floor(from); i < samples.length; i++) {
    const [a, b] = [Math.abs(samples[i] as number), Math.abs(samples[i + 1] ?? 0)];
    if (Math.max(a, b) < BETWEEN * level) continue;
    for (let high = Math.max(i, from) + STEP; high <= i + 1; high += STEP) {
      if (size(high) < level) continue;
      let [below, above] = [high - STEP, high];
      for (let pass = 0; pass < 30; pass++) {
        const middle = (below + above) / 2;
        if (size(middle) < level) below = middle;
        else above = middle;
      }
      return above;
    }
  }
  return null;
}

/** The first place after the crossing where |sound| falls again. */
function firstPeak(samples: ArrayLike<number>, crossing: number) {
  const size: Size = (position) => Math.abs(valueAt(samples, position));
  let position = crossing;
  while (position < samples.length && size(position + STEP) > size(position)) position += STEP;
  return peakNear(samples, position);
}
