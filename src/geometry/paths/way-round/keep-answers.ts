/** Answers about lines, kept: a drag asks again about every line that did not move. */
import type { Vec3 } from '../../vector';
import type { SpotStart } from '../cast';

/** A line, from a speaker to a listener's point, and one number more. */
export type Ask<T> = (
  from: Vec3,
  to: Vec3,
  listener: string | null,
  spot: SpotStart | null,
  more: number,
) => T;

interface Kept<T> {
  from: Vec3;
  to: Vec3;
  listener: string | null;
  spot: SpotStart | null;
  more: number;
  answer: T;
}

/** Lines of one option: 40 speakers at 5 seats and their ears are 600. */
const KEPT = 1024;

const isSamePoint = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

function isSameSpot(a: SpotStart | null, b: SpotStart | null): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  return a.panel === b.panel && a.standoff === b.standoff && isSamePoint(a.normal, b.normal);
}

/**
 * `ask`, but for the latest {@link KEPT} lines at least the answer is remembered. Lines are told
 * apart by their numbers: writing them out as text took longer than most questions.
 */
export function keepAnswers<T>(ask: Ask<T>): Ask<T> {
  let recent = new Map<number, Kept<T>>();
  let older = recent;
  return (from, to, listener, spot, more) => {
    // Two lines hardly ever share a mark; where they do, the later takes the place of the earlier.
    const mark =
      from[0] +
      1.37 * from[1] +
      2.11 * from[2] +
      3.71 * to[0] +
      5.03 * to[1] +
      7.93 * to[2] +
      11.3 * more;
    const known = recent.get(mark) ?? older.get(mark);
    if (
      known &&
      known.more === more &&
      known.listener === listener &&
      isSamePoint(known.from, from) &&
      isSamePoint(known.to, to) &&
      isSameSpot(known.spot, spot)
    ) {
      // What is still asked for outlives what is not.
      if (older !== recent && !recent.has(mark)) recent.set(mark, known);
      return known.answer;
    }
    const answer = ask(from, to, listener, spot, more);
    if (recent.size >= KEPT) {
      older = recent;
      recent = new Map();
    }
    recent.set(mark, { from, to, listener, spot, more, answer });
    return answer;
  };
}
