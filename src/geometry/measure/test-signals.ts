/** Sounds to check by ear and by microphone that all channels arrive together. */
import { valueAt } from './windowed-sinc';

export interface SignalChannel {
  id: string;
  /** What it plays; left out: no burst can be made for it. */
  bandHz?: readonly [number, number];
  /** What the tune delays it by, ms; left out: nothing. */
  delay?: number;
}

export interface SignalSettings {
  /** A click: one sample alone. A burst: a tone in the middle of the channel's band. */
  kind: 'click' | 'burst';
  /** One channel each second and then the next, or all of them every second. */
  order: 'in-turn' | 'together';
  /** Whole Hz. */
  sampleRateHz: number;
  /** The delays of the tune are in the signal, for a processor that has none set. */
  withDelays: boolean;
  /** How often every channel sounds. */
  times: number;
}

/** What one channel's burst is made of. */
export interface Burst {
  frequencyHz: number;
  cycles: number;
}

export interface TestSignal {
  sampleRateHz: number;
  channels: { id: string; samples: Float32Array; burst: Burst | null }[];
  /** The highest sample, full scale 1: alike in all channels. */
  peak: number;
  /** Channels that stay silent, and why. */
  silent: { id: string; why: string }[];
}

/** −12 dB below full scale: room for the processor's own filters and gains. Choice of ours. */
const PEAK = 10 ** (-12 / 20);
/** Of each sound within its second, so that none is cut at either end. Choice of ours. */
const MARK = 0.5;
/** Longer ones would reach into the next second, ms and s. */
const LONGEST_DELAY = 150;
const LONGEST_BURST = 0.6;
/** Above this share of the sample rate nothing is played. */
const HIGHEST = 0.45;
/** A shorter burst is hardly a tone, choice of ours. */
const FEWEST_CYCLES = 4;

/**
 * One signal for each channel, all of the same length, the same on every run. Sounds stand in the
 * middle of their second (the burst's middle, the click's sample), plus the channel's delay; the
 * fraction of a sample by a windowed sinc for clicks (Laakso et al. 1996, see `windowed-sinc.ts`),
 * and exactly for bursts. Were all channels added up, the sum would still hold: above three channels
 * the peak falls to 1/n.
 * @throws RangeError for a rate that is not whole, a delay that is negative or over 150 ms, or a
 *   number of times that is none
 */
export function testSignal(
  channels: readonly SignalChannel[],
  { kind, order, sampleRateHz, withDelays, times }: SignalSettings,
): TestSignal {
  if (!Number.isInteger(sampleRateHz) || sampleRateHz < 1)
    throw new RangeError(`testSignal: expected a whole sample rate, got ${sampleRateHz}`);
  if (!Number.isInteger(times) || times < 1 || times > 100)
    throw new RangeError(`testSignal: expected 1 to 100 times, got ${times}`);
  for (const { id, delay = 0 } of channels)
    if (!(delay >= 0 && delay <= LONGEST_DELAY))
      throw new RangeError(
        `testSignal: expected a delay of 0 to ${LONGEST_DELAY} ms for "${id}", got ${delay}`,
      );
  const peak = Math.min(PEAK, 1 / Math.max(1, channels.length));
  const inTurn = order === 'in-turn';
  const seconds = inTurn ? times * channels.length : times;
  const silent: TestSignal['silent'] = [];
  const made = channels.map(({ id, bandHz, delay = 0 }, c) => {
    const samples = new Float32Array(seconds * sampleRateHz);
    const burst = kind === 'burst' ? burstFor(bandHz, sampleRateHz) : null;
    if (typeof burst === 'string') {
      silent.push({ id, why: burst });
      return { id, samples, burst: null };
    }
    const late = withDelays ? (delay * sampleRateHz) / 1000 : 0;
    for (let n = 0; n < times; n++) {
      const second = inTurn ? n * channels.length + c : n;
      const at = second * sampleRateHz + Math.round(MARK * sampleRateHz) + late;
      if (burst) addBurst(samples, at, peak, burst, sampleRateHz);
      else addClick(samples, at, peak);
    }
    return { id, samples, burst };
  });
  return { sampleRateHz, channels: made, peak, silent };
}

const ONE = [1] as const;

function addClick(samples: Float32Array, at: number, peak: number): void {
  const middle = Math.round(at);
  for (let i = middle - 40; i <= middle + 40; i++)
    if (i >= 0 && i < samples.length) samples[i] = peak * valueAt(ONE, i - at);
}

/**
 * The tone in the geometric middle of the band, and as many cycles as keep the window's main lobe
 * inside it: 4/T wide for Hann's (F. J. Harris, Proc. IEEE 66(1), 1978), so T ≥ 2/(f − lower end).
 * @returns one sentence where there is none
 */
function burstFor(
  bandHz: readonly [number, number] | undefined,
  sampleRateHz: number,
): Burst | string {
  if (!bandHz) return 'its band is not given, so it has no middle';
  const [low, high] = [bandHz[0], Math.min(bandHz[1], HIGHEST * sampleRateHz)];
  if (!(low > 0 && low < high))
    return `its band lies above what ${sampleRateHz} samples a second can hold`;
  const frequencyHz = Math.sqrt(low * high);
  const wanted = Math.ceil((2 * frequencyHz) / (frequencyHz - low));
  const most = Math.floor(LONGEST_BURST * frequencyHz);
  if (most < FEWEST_CYCLES) return 'its band is too low for a burst within a second';
  return { frequencyHz, cycles: Math.min(most, Math.max(FEWEST_CYCLES, wanted)) };
}

/** A cosine under a raised cosine (Hann), both highest in the middle. */
function addBurst(
  samples: Float32Array,
  at: number,
  peak: number,
  { frequencyHz, cycles }: Burst,
  sampleRateHz: number,
): void {
  const half = (cycles * sampleRateHz) / frequencyHz / 2;
  for (let i = Math.ceil(at - half); i <= at + half; i++) {
    const t = i - at;
    const window = Math.cos((Math.PI * t) / (2 * half)) ** 2;
    samples[i] = peak * window * Math.cos((2 * Math.PI * frequencyHz * t) / sampleRateHz);
  }
}
