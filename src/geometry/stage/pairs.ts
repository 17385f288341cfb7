import type { SpeakerInput } from '../input';
import type { Arrival, PairDifference } from '../result';

export interface PairMembers {
  pair: string;
  left: string | null;
  right: string | null;
}

/** The pairs of an option, in the order their first speaker appears. */
export function pairsOf(speakers: readonly SpeakerInput[]): PairMembers[] {
  const pairs = new Map<string, PairMembers>();
  for (const speaker of speakers) {
    if (!speaker.pair || !speaker.side) continue;
    const pair = pairs.get(speaker.pair) ?? { pair: speaker.pair, left: null, right: null };
    pairs.set(speaker.pair, { ...pair, [speaker.side]: speaker.id });
  }
  return [...pairs.values()];
}

/** Left minus right of one pair at one seat: path in mm, time in ms, level in dB. */
export function pairDifference(
  members: PairMembers,
  arrivals: ReadonlyMap<string, Arrival>,
): PairDifference {
  const left = members.left === null ? undefined : arrivals.get(members.left);
  const right = members.right === null ? undefined : arrivals.get(members.right);
  const { pair } = members;
  if (!left || !right) {
    return {
      pair,
      difference: null,
      differenceTime: null,
      levelDifferenceDb: null,
      reasons: [`the ${left ? 'right' : 'left'} speaker of the pair "${pair}" is missing`],
    };
  }
  const level =
    left.levelDb === null || right.levelDb === null ? null : left.levelDb - right.levelDb;
  return {
    pair,
    difference: left.path - right.path,
    differenceTime: left.time - right.time,
    levelDifferenceDb: level,
    ...(level === null && { reasons: ['a speaker stands at the listener: no level'] }),
  };
}
