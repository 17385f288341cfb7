import type { Arrival, Delay } from '../result';
import type { PairMembers } from './pairs';

/**
 * Delays that let all arrivals reach one head together: the longest path gets 0, every other
 * speaker the time it is early. Rounded to whole samples of `sampleRateHz`; the residual is what
 * the rounding leaves, never more than half a sample.
 * Gains bring the nearer speaker of a pair down to the level of the farther one.
 */
export function delaysFor(
  arrivals: readonly Arrival[],
  pairs: readonly PairMembers[],
  sampleRateHz: number,
): Delay[] {
  const latest = arrivals.reduce((most, arrival) => Math.max(most, arrival.time), 0);
  const gains = pairGains(arrivals, pairs);
  const samplesPerMs = sampleRateHz / 1000;
  return arrivals.map((arrival) => {
    const delay = latest - arrival.time;
    const samples = delay * samplesPerMs;
    const roundedDelay = Math.round(samples) / samplesPerMs;
    return {
      speaker: arrival.speaker,
      delay,
      samples,
      roundedDelay,
      residual: roundedDelay - delay,
      gainDb: gains.get(arrival.speaker) ?? 0,
    };
  });
}

function pairGains(
  arrivals: readonly Arrival[],
  pairs: readonly PairMembers[],
): ReadonlyMap<string, number> {
  const level = new Map(arrivals.map((arrival) => [arrival.speaker, arrival.levelDb]));
  const gains = new Map<string, number>();
  for (const { left, right } of pairs) {
    if (left === null || right === null) continue;
    const l = level.get(left) ?? null;
    const r = level.get(right) ?? null;
    if (l === null || r === null) continue;
    gains.set(left, Math.min(0, r - l));
    gains.set(right, Math.min(0, l - r));
  }
  return gains;
}
