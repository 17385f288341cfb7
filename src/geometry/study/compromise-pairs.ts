/** What one set of delays for several seats does to each pair. */
import type { SeatResult } from '../result';
import type { PairMembers } from '../stage/pairs';

/** Differences nearer to zero than this have no sign, ms: a quarter of a sample at 48 kHz. */
export const NO_DIFFERENCE = 0.005;

export interface CompromisePair {
  pair: string;
  /** Left less right, ms: without any delay, and what the compromise leaves of it. */
  differences: { seat: string; differenceTime: number; remaining: number }[];
  /** True when the left one is early at one seat and late at another: no delay serves both. */
  opposite: boolean;
  /** Half the spread of the differences: what any delay leaves at one seat at least, ms. */
  leftOver: number;
  /** What the delay best for this pair alone leaves at most, when seats count by their weights. */
  weightedLeftOver: number;
}

export const spread = (values: readonly number[]): number =>
  Math.max(...values) - Math.min(...values);

/** What one pair has at each seat before and after the delays; none for half a pair. */
export function pairOver(
  { pair, left, right }: PairMembers,
  seats: readonly SeatResult[],
  weights: readonly number[],
  channels: readonly { speaker: string; delay: number }[],
): CompromisePair[] {
  if (left === null || right === null) return [];
  const delay = (speaker: string) => channels.find((c) => c.speaker === speaker)?.delay ?? 0;
  const between = delay(left) - delay(right);
  const differences = seats.flatMap(({ id: seat, arrivals }) => {
    const l = arrivals.find(({ speaker }) => speaker === left);
    const r = arrivals.find(({ speaker }) => speaker === right);
    if (!l || !r) return [];
    const differenceTime = l.time - r.time;
    return [{ seat, differenceTime, remaining: differenceTime + between }];
  });
  if (differences.length < seats.length) return [];
  const all = differences.map(({ differenceTime }) => differenceTime);
  return [
    {
      pair,
      differences,
      opposite: Math.max(...all) > NO_DIFFERENCE && Math.min(...all) < -NO_DIFFERENCE,
      leftOver: spread(all) / 2,
      weightedLeftOver: weightedLeftOver(all, weights),
    },
  ];
}

/**
 * Of one delay for one pair: the two seats that pull hardest, |a − b| / (1/wa + 1/wb), decide it,
 * and each other seat gets what that delay leaves.
 */
function weightedLeftOver(differences: readonly number[], weights: readonly number[]): number {
  let pull = -1;
  let delay = 0;
  for (const [a, atA] of differences.entries()) {
    for (const [b, atB] of differences.entries()) {
      const [wa, wb] = [weights[a] as number, weights[b] as number];
      const here = (atA - atB) / (1 / wa + 1 / wb);
      if (here <= pull) continue;
      pull = here;
      delay = -(wa * atA + wb * atB) / (wa + wb);
    }
  }
  return Math.max(...differences.map((difference) => Math.abs(difference + delay)));
}

/**
 * The gain of each speaker, ≤ 0 dB: the mean of the level differences its pair has at the seats, by
 * weight, off the louder side. A seat without a level does not count. A choice of ours.
 */
export function pairGains(
  seats: readonly SeatResult[],
  pairs: readonly PairMembers[],
  weights: readonly number[],
): ReadonlyMap<string, number> {
  const gains = new Map<string, number>();
  for (const { pair, left, right } of pairs) {
    if (left === null || right === null) continue;
    let [sum, all] = [0, 0];
    for (const [s, seat] of seats.entries()) {
      const level = seat.pairs.find((one) => one.pair === pair)?.levelDifferenceDb ?? null;
      if (level === null) continue;
      sum += (weights[s] as number) * level;
      all += weights[s] as number;
    }
    if (all === 0) continue;
    gains.set(left, Math.min(0, -sum / all));
    gains.set(right, Math.min(0, sum / all));
  }
  return gains;
}
