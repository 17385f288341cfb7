import type { PocketPairStudy, PocketStudy } from '../../../geometry';
import { formatFrequency, formatNumber } from '../../../plan/units';

/** Nearer than this two volumes are the same: less than a tape can tell, litres. */
export const SAME_LITRES = 0.05;

export const litresWords = (litres: number): string =>
  `${formatNumber(litres, litres < 1 ? 2 : 1)} litres`;

const hz = (frequencyHz: number): string => formatFrequency(Math.round(frequencyHz));

/** What unequal pockets do to left and right, in a few sentences; none where it cannot be told. */
export function pairWords({ compared }: PocketPairStudy): string[] {
  if (!compared) return [];
  const { left, right, worst } = compared;
  const apart = Math.abs(left.litres - right.litres);
  if (apart < SAME_LITRES)
    return [`Both hold ${litresWords(left.litres)}: what is left apart is not heard.`];
  const [small, large, side, other] =
    left.litres < right.litres
      ? ([left, right, 'left', 'right'] as const)
      : ([right, left, 'right', 'left'] as const);
  const higher = Math.round(small.resonanceHz) - Math.round(large.resonanceHz);
  const words = [
    `The ${side} pocket is ${litresWords(apart)} smaller (${formatNumber(small.litres, 1)} against ` +
      `${formatNumber(large.litres, 1)}): its resonance is ${hz(higher)} higher ` +
      `(${Math.round(small.resonanceHz)} against ${hz(large.resonanceHz)}) and its Qtc ` +
      `${formatNumber(small.q, 2)} against ${formatNumber(large.q, 2)}.`,
  ];
  if (worst) {
    const db = side === 'left' ? worst.differenceDb : -worst.differenceDb;
    const text = formatNumber(Math.abs(db), 1);
    words.push(
      Number(text) === 0
        ? `Where they play the two differ by less than 0.1 dB.`
        : `At ${hz(worst.frequencyHz)} it plays ${text} dB ${db < 0 ? 'less' : 'more'} than the ` +
            `${other} one; elsewhere in their band they are nearer.`,
    );
  }
  return words;
}

/** "For Qtc 0.707 it would want 5.2 litres.": of pockets with the same speaker, said once. */
export function flatWords(studies: readonly PocketStudy[]): string | null {
  const [first] = studies;
  if (!first || first.flatLitres === null) return null;
  if (!studies.every(({ flatLitres }) => flatLitres === first.flatLitres)) return null;
  const who = studies.length > 1 ? 'each' : 'it';
  return `For Qtc 0.707, the flattest response, ${who} would want ${litresWords(first.flatLitres)} net.`;
}
