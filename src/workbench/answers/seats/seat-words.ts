import type { Compromise, CompromisePair } from '../../../geometry';
import type { LeftAlone } from './left-alone';

/** How the sentences name and count things. */
export interface SeatWording {
  /** "0.90 ms" or "0.90 ms (310 mm)". */
  time: (ms: number) => string;
  /** "front left seat" */
  seat: (id: string) => string;
  /** "mids" */
  pair: (id: string) => string;
}

/** What one set of delays can and cannot do for a pair at all the seats that count. */
export function pairSentence(pair: CompromisePair, wording: SeatWording): string {
  const { time, seat } = wording;
  const name = wording.pair(pair.pair);
  const [low, high] = ends(pair);
  if (!low || !high) return '';
  if (pair.differences.length === 1) {
    return `One delay brings the ${name} together at the ${seat(low.seat)}.`;
  }
  const rest = `at best ${each(pair)} is left with ${time(pair.leftOver)} between left and right`;
  if (pair.opposite) {
    return (
      `No delay can save the ${name}: left is nearer at the ${seat(low.seat)} by ` +
      `${time(-low.differenceTime)} and right is nearer at the ${seat(high.seat)} by ` +
      `${time(high.differenceTime)}; ${rest}.`
    );
  }
  if (pair.leftOver < TOGETHER) return `One delay brings the ${name} together at every seat.`;
  const side = low.differenceTime + high.differenceTime < 0 ? 'left' : 'right';
  const amounts = [low, high].map(({ differenceTime }) => Math.abs(differenceTime));
  return (
    `One delay serves the ${name} in part: ${side} is nearer by ${time(Math.min(...amounts))} to ` +
    `${time(Math.max(...amounts))}; ${rest}.`
  );
}

/** Half of the last digit shown, ms. */
const TOGETHER = 0.005;

const each = ({ differences }: CompromisePair): string =>
  differences.length > 2 ? 'the worst seat' : 'each seat';

/** Where the difference is smallest (left nearest) and largest. */
function ends({ differences }: CompromisePair) {
  const sorted = [...differences].sort((a, b) => a.differenceTime - b.differenceTime);
  return [sorted[0], sorted[sorted.length - 1]] as const;
}

/** "Over the front left seat and the front right seat …": what the best compromise comes to. */
export function compromiseSentence(
  { seats, largestError }: Compromise,
  wording: SeatWording,
): string {
  const { time, seat } = wording;
  const [first] = seats;
  if (!first) return '';
  const where = seats.length === 1 ? `at the ${seat(first.id)}` : `at any of ${seats.length} seats`;
  if (largestError < TOGETHER) return `With these delays all speakers arrive together ${where}.`;
  return `With these delays no speaker arrives more than ${time(largestError)} early or late ${where}.`;
}

/** The speaker that strays farthest at a seat; `null` where none does. */
export function worstOf({ errors }: Compromise['seats'][number]) {
  const worst = errors.reduce<(typeof errors)[number] | null>(
    (most, one) => (most && Math.abs(most.error) >= Math.abs(one.error) ? most : one),
    null,
  );
  return worst && Math.abs(worst.error) >= TOGETHER ? worst : null;
}

/** What delays for one seat leave at the others, against what the best compromise would. */
export function aloneSentence(
  { seat: own, left }: LeftAlone,
  { seats, largestError }: Compromise,
  { time, seat }: SeatWording,
): string {
  const counts = new Set(seats.map(({ id }) => id));
  const worst = left
    .filter(({ id }) => id !== own && counts.has(id))
    .reduce<LeftAlone['left'][number] | null>(
      (most, one) => (most && most.largestError >= one.largestError ? most : one),
      null,
    );
  const here = `The delays are for the ${seat(own)} alone`;
  if (!worst) return `${here}.`;
  return (
    `${here}: at the ${seat(worst.id)} speakers arrive up to ${time(worst.largestError)} early or ` +
    `late. The best compromise would leave ${time(largestError)} at most.`
  );
}
