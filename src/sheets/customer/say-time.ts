import type { PairDifference } from '../../geometry';
import type { PaperFacts } from '../facts';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/**
 * From here on the sound of two equal sources seems to come from the earlier one alone, and below it
 * moves towards it step by step: Blauert, Spatial Hearing (1997), summing localization, 0.63 to 1 ms.
 * The two smaller steps are choices of ours.
 */
const MEANINGS: readonly (readonly [number, WordKey])[] = [
  [0.03, 'customer.time.tiny'],
  [0.2, 'customer.time.small'],
  [0.63, 'customer.time.middle'],
  [Number.POSITIVE_INFINITY, 'customer.time.large'],
];

/** Below this both sides arrive together, ms: half of the last digit printed. */
const TOGETHER = 0.005;
/** How long a blink of an eye takes, ms: 100 to 150 is common, from memory. */
const BLINK = 125;

/** The pair whose sides are farthest apart in time. */
export const widestPair = (pairs: readonly PairDifference[]): PairDifference | null =>
  pairs.reduce<PairDifference | null>(
    (most, one) =>
      one.differenceTime !== null &&
      (!most || Math.abs(one.differenceTime) > Math.abs(most.differenceTime ?? 0))
        ? one
        : most,
    null,
  );

/** The first of the three sentences: how much earlier one side is heard, and what that does. */
export function sayTime({ seat, option }: PaperFacts, { t, n, names }: PrintedWords): string {
  const pair = seat && widestPair(seat.pairs);
  if (!pair || pair.difference === null || pair.differenceTime === null)
    return t('customer.time.none');
  const apart = Math.abs(pair.differenceTime);
  if (apart < TOGETHER)
    return t('customer.time.together', { who: names.pair(pair.pair, option.speakers) });
  const side = pair.difference < 0 ? 'left' : 'right';
  const near = option.speakers.find((one) => one.pair === pair.pair && one.side === side);
  const [, key] = MEANINGS.find(([below]) => apart < below) ?? [0, 'customer.time.large' as const];
  const delay = Math.max(0, ...seat.delays.map((one) => one.delay));
  return t('customer.time.apart', {
    near: near ? names.speaker(near, option.speakers) : '',
    length: n.length(Math.abs(pair.difference)),
    time: n.time(apart),
    meaning: `${t('customer.time.blink', { times: n.number(oneDigit(BLINK / apart)) })} ${t(key)}`,
    delayed: t('customer.time.delayed', { delay: n.time(delay) }),
  });
}

/** 84.5 → 80: no more than a comparison with an eyelid can bear. */
function oneDigit(value: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(value, 1)));
  return Math.round(value / power) * power;
}
