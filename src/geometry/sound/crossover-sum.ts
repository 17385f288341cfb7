import { LEVEL_FLOOR_DB } from '../tolerance';
import { degrees, radians } from '../vector';
import { type Complex, modulus, plus, polar, times } from './complex';
import { type Crossover, highPass, lowPass, usuallyInverted } from './crossover';
import { decibels, pressureRatio } from './decibels';

/** One of the two speakers that share a crossover, as it arrives at the seat. */
export interface CrossedSpeaker {
  /** What its sound travels, mm. */
  path: number;
  /** Added in its channel, ms. */
  delay: number;
  /**
   * Level at the seat without the crossover, dB: spreading, directivity, obstruction and gain, each
   * as far as the caller wants them counted. A number, or by frequency.
   */
  levelDb: number | ((frequencyHz: number) => number);
  /** Poles swapped. Left out: as usual for the crossover (see `usuallyInverted`) above, not below. */
  inverted?: boolean;
}

/** Two speakers of one side that share a crossover, heard at one seat. */
export interface CrossedPair {
  crossover: Crossover;
  /** The speaker behind the low-pass. */
  low: CrossedSpeaker;
  /** The speaker behind the high-pass. */
  high: CrossedSpeaker;
  /** mm/ms */
  speed: number;
}

export interface SumAt {
  frequencyHz: number;
  lowDb: number;
  highDb: number;
  /** Both together, with the times and poles they have. */
  sumDb: number;
  /** Both together at the same levels, in time and with the usual poles. */
  idealDb: number;
  /** sumDb − idealDb: what time and poles cost. */
  deviationDb: number;
  /** Phase of the high one against the low one, degrees, −180 to 180. */
  phaseDeg: number;
}

/** How much later the high speaker arrives than the low one, delays included, ms. */
export const lateness = ({ low, high, speed }: CrossedPair): number =>
  high.path / speed + high.delay - low.path / speed - low.delay;

const levelAt = (speaker: CrossedSpeaker, frequencyHz: number): number =>
  typeof speaker.levelDb === 'number' ? speaker.levelDb : speaker.levelDb(frequencyHz);

/**
 * Sum of the two speakers at one frequency, as complex pressures of the direct sound.
 * Two equal ones a phase φ apart give 20 lg|2cos(φ/2)|. Source: superposition, e.g. Kinsler et al.,
 * Fundamentals of Acoustics. Limits: direct sound in a free field; the speakers' own phase beyond
 * the crossover is taken as equal.
 */
export function crossoverSum(pair: CrossedPair, frequencyHz: number): SumAt {
  const { crossover, low, high } = pair;
  const usual = usuallyInverted(crossover);
  const below = scaled(lowPass(crossover, frequencyHz), pressureRatio(levelAt(low, frequencyHz)));
  const above = scaled(highPass(crossover, frequencyHz), pressureRatio(levelAt(high, frequencyHz)));
  const swapped = (low.inverted ?? false) !== (high.inverted ?? usual);
  const late = polar(swapped ? -1 : 1, -2 * Math.PI * (frequencyHz / 1000) * lateness(pair));
  const heard = times(above, late);
  const sumDb = decibels(modulus(plus(below, heard)));
  const idealDb = decibels(modulus(plus(below, scaled(above, usual ? -1 : 1))));
  const relative = times(heard, [below[0], -below[1]]);
  return {
    frequencyHz,
    lowDb: decibels(modulus(below)),
    highDb: decibels(modulus(above)),
    sumDb,
    idealDb,
    deviationDb: sumDb - idealDb,
    phaseDeg: degrees(Math.atan2(relative[1], relative[0])),
  };
}

const scaled = (a: Complex, k: number): Complex => [a[0] * k, a[1] * k];

/** A dip this far under the ideal sum counts as a null, dB. Choice of ours, no source. */
export const NULL_DEPTH_DB = -10;
/** Steps per octave of a curve; nulls are looked for between these, closer where times differ. */
const STEPS_PER_OCTAVE = 48;
/** Closer steps than this many are never taken, whatever the times. */
const MOST_STEPS = 20000;

function frequencies(pair: CrossedPair, [from, to]: readonly [number, number]): number[] {
  // At least 24 steps for each turn of phase, or a null could lie between two of them.
  const turn = Math.max(
    1000 / (24 * Math.max(1e-9, Math.abs(lateness(pair)))),
    (to - from) / MOST_STEPS,
  );
  const ratio = 2 ** (1 / STEPS_PER_OCTAVE) - 1;
  const all = [from];
  for (let f = from; f < to; ) {
    f = Math.min(to, f + Math.min(f * ratio, turn));
    all.push(f);
  }
  return all;
}

/** One dip of the sum. */
export interface CrossoverNull {
  frequencyHz: number;
  /** Under the ideal sum, dB, negative. */
  deviationDb: number;
}

export interface CrossoverResult {
  /** At the crossover frequency itself. */
  atCrossover: SumAt;
  /** Dips of NULL_DEPTH_DB and deeper under the ideal, two octaves to either side, from below. */
  nulls: CrossoverNull[];
  /** Two octaves to either side of the crossover. */
  curve: SumAt[];
}

/**
 * How two speakers of one side add up round their crossover at a seat: the number at the crossover
 * frequency, the dips, and the curve. Throws on a crossover `crossoverProblem` objects to.
 */
export function crossoverAtSeat(pair: CrossedPair): CrossoverResult {
  const centre = pair.crossover.frequencyHz;
  const curve = frequencies(pair, [centre / 4, centre * 4]).map((f) => crossoverSum(pair, f));
  const nulls: CrossoverNull[] = [];
  for (let i = 1; i + 1 < curve.length; i++) {
    const [a, b, c] = [curve[i - 1], curve[i], curve[i + 1]] as [SumAt, SumAt, SumAt];
    if (!(b.deviationDb < a.deviationDb && b.deviationDb <= c.deviationDb)) continue;
    const dip = deepest(pair, a.frequencyHz, c.frequencyHz);
    if (dip.deviationDb <= NULL_DEPTH_DB) nulls.push(dip);
  }
  return { atCrossover: crossoverSum(pair, centre), nulls, curve };
}

/** The lowest point between two frequencies with one dip between them, by golden section. */
function deepest(pair: CrossedPair, from: number, to: number): CrossoverNull {
  const cut = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  for (let i = 0; i < 60 && high - low > 1e-6 * low; i++) {
    const [p, q] = [high - cut * (high - low), low + cut * (high - low)];
    if (crossoverSum(pair, p).deviationDb < crossoverSum(pair, q).deviationDb) high = q;
    else low = p;
  }
  const frequencyHz = (low + high) / 2;
  const { deviationDb } = crossoverSum(pair, frequencyHz);
  return { frequencyHz, deviationDb: Math.max(LEVEL_FLOOR_DB, deviationDb) };
}

/**
 * Level of two signals together, dB, `phaseDeg` apart.
 * Source: superposition, 20 lg|a + b·e^(jφ)|; equal ones: 20 lg|2cos(φ/2)|.
 */
export function sumOfTwoDb(aDb: number, bDb: number, phaseDeg: number): number {
  const b = polar(pressureRatio(bDb), radians(phaseDeg));
  return decibels(modulus(plus([pressureRatio(aDb), 0], b)));
}
