import type { CrossoverInput, SideSum } from '../../../geometry';
import { formatFrequency, formatLevel } from '../../../plan/units';

export type CrossingResult = NonNullable<SideSum['result']>;

/** Nearer to ideal than this nothing is lost: half of the last digit shown, dB. */
const IDEAL_DB = 0.05;

/** "−0.4 dB from ideal at 3.2 kHz; null at 2.1 kHz" */
export function sumWords({ atCrossover, nulls }: CrossingResult): string {
  const { deviationDb, frequencyHz } = atCrossover;
  const at = formatFrequency(frequencyHz);
  const sum =
    Math.abs(deviationDb) < IDEAL_DB
      ? `Ideal at ${at}`
      : `${deviationDb > 0 ? '+' : ''}${formatLevel(deviationDb)} from ideal at ${at}`;
  return `${sum}; ${nullWords(nulls.map((one) => one.frequencyHz))}`;
}

/** "null at 2.1 kHz", "nulls at 1.2 kHz and 3.6 kHz", "no null". */
export function nullWords(frequenciesHz: readonly number[]): string {
  if (frequenciesHz.length === 0) return 'no null';
  return `${frequenciesHz.length > 1 ? 'nulls' : 'null'} at ${frequencyList(frequenciesHz)}`;
}

/** More than these are told by their ends. */
const MOST_NAMED = 4;

/** "1.2 kHz and 3.6 kHz"; out of step by much there is a null every few hundred Hz. */
export function frequencyList(frequenciesHz: readonly number[]): string {
  const names = frequenciesHz.map(formatFrequency);
  if (names.length > MOST_NAMED)
    return `${names.length} places from ${names[0]} to ${names.at(-1)}`;
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`;
}

/** "Linkwitz-Riley, order 4, at 2.5 kHz" */
export const crossoverWords = ({ family, order, frequencyHz }: CrossoverInput): string =>
  `${FAMILY_NAMES[family] ?? family}, order ${order}, at ${formatFrequency(frequencyHz)}`;

export const FAMILY_NAMES: Readonly<Record<CrossoverInput['family'], string>> = {
  butterworth: 'Butterworth',
  'linkwitz-riley': 'Linkwitz-Riley',
};

/** Orders a family has. */
export const ordersOf = (family: CrossoverInput['family']): readonly number[] =>
  family === 'linkwitz-riley' ? [2, 4, 6, 8] : [1, 2, 3, 4, 5, 6, 7, 8];

/** The same order, or the next one up where the family does not have it. */
export const orderIn = (family: CrossoverInput['family'], order: number): number =>
  ordersOf(family).find((one) => one >= order) ?? 8;

/** "both as they are", "mid as it is, tweeter swapped". */
export function polesWords(low: Pole, high: Pole): string {
  if (low.swapped === high.swapped) return low.swapped ? 'both swapped' : 'both as they are';
  const one = ({ name, swapped }: Pole) => `${name} ${swapped ? 'swapped' : 'as it is'}`;
  return `${one(low)}, ${one(high)}`;
}

export interface Pole {
  name: string;
  swapped: boolean;
}
