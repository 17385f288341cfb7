import type { Compromise, CompromisePair } from '../../../geometry';
import type { LeftAlone } from './left-alone';

/** How the sentences name and count things. */
export interface SeatWording {
  /** "0.90 ms" */
  time: (ms: number) => string;
  /** "0.90 ms (310 mm)" */
  both: (ms: number) => string;
  /** "front left seat" */
  seat: (id: string) => string;
  /** "mids" */
  pair: (id: string) => string;
}

/** What one set of delays can and cannot do for a pair at all the seats that count. */
export function pairSentence(pair: CompromisePair, wording: SeatWording): string {
  const { time, both, seat } = wording;
  const name = wording.pair(pair.pair);
  const [low, high] = ends(pair);
  if (!low || !high) return '';
  if (pair.differences.length === 1) {
    return `One delay brings the ${name} together at the ${seat(low.seat)}.`;
  }
  const rest = `at best ${each(pair)} is left with ${both(pair.leftOver)} between left and right`;
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

/**
 * "With these delays no speaker arrives more than 0.49 ms early or late at the front left seat, and
 * 0.99 ms at the front right seat."
 */
export function compromiseSentence(
  { seats, largestError }: Compromise,
  wording: SeatWording,
): string {
  const { both, seat } = wording;
  const at = (id: string) => `at the ${seat(id)}`;
  if (largestError < TOGETHER) {
    const where = seats.length === 1 ? at(seats[0]?.id ?? '') : 'at every seat';
    return `With these delays all speakers arrive together ${where}.`;
  }
  const [first, ...rest] = seats.map(({ id, largestError }) => ({ id, error: both(largestError) }));
  if (!first) return '';
  const early = 'With these delays no speaker arrives more than';
  if (rest.every(({ error }) => error === first.error)) {
    const where =
      rest.length === 0 ? at(first.id) : rest.length === 1 ? 'at either seat' : 'at any of them';
    return `${early} ${first.error} early or late ${where}.`;
  }
  const others = rest.map(({ id, error }) => `${error} ${at(id)}`);
  return `${early} ${first.error} early or late ${at(first.id)}, ${list(others)}.`;
}

const list = (items: readonly string[]): string =>
  items.length < 2 ? `and ${items[0]}` : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

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
  { both, seat }: SeatWording,
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
    `${here}: at the ${seat(worst.id)} speakers arrive up to ${both(worst.largestError)} early or ` +
    `late. The best compromise would leave ${both(largestError)} at most.`
  );
}
