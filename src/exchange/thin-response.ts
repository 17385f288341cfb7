import type { OffAxisResponse } from '../geometry';

/**
 * Points kept of one response at most. A 48th of an octave over ten octaves takes 480; beyond
 * several thousand a plan grows slow to save. Choice of ours, no source.
 */
export const MOST_POINTS = 4000;
/** How far off a level may come, dB, tried in turn; measuring itself is seldom better than 0.5. */
const TOLERANCES_DB = [0.02, 0.05, 0.1, 0.2] as const;

export interface Thinned {
  response: OffAxisResponse;
  /** The most any measured level is off by now, dB; 0 where all points were kept. */
  withinDb: number;
}

/**
 * A response with the points left out that lie on a straight line between the others, in level over
 * the logarithm of frequency, as the engine draws it. Left alone where it has no more than
 * {@link MOST_POINTS}. First and last points stay, so it covers what it covered.
 * @returns `null` where it cannot be thinned so far without losing more than 0.2 dB anywhere
 */
export function thinResponse(response: OffAxisResponse): Thinned | null {
  if (response.frequencyHz.length <= MOST_POINTS) return { response, withinDb: 0 };
  for (const withinDb of TOLERANCES_DB) {
    const kept = pointsWithin(response, withinDb);
    if (kept.length > MOST_POINTS) continue;
    const pick = (values: readonly number[]) => kept.map((i) => values[i] as number);
    const { frequencyHz, levelDb } = response;
    const thinned = { ...response, frequencyHz: pick(frequencyHz), levelDb: pick(levelDb) };
    return { response: thinned, withinDb };
  }
  return null;
}

/**
 * Greedy, one pass: from the last point kept, the slopes that pass every point since within the
 * tolerance form a cone; the farthest point inside it is kept next (sleeve fitting, as in Zhao and
 * Saalfeld, "Linear-time sleeve-fitting polyline simplification algorithms", 1997).
 */
function pointsWithin({ frequencyHz, levelDb }: OffAxisResponse, tolerance: number): number[] {
  const x = frequencyHz.map(Math.log);
  const kept = [0];
  let from = 0;
  let [low, high] = [-Infinity, Infinity];
  for (let i = 1; i < x.length; i++) {
    const run = (x[i] as number) - (x[from] as number);
    const rise = (levelDb[i] as number) - (levelDb[from] as number);
    if (rise / run < low || rise / run > high) {
      from = i - 1;
      kept.push(from);
      const next = (x[i] as number) - (x[from] as number);
      const step = (levelDb[i] as number) - (levelDb[from] as number);
      [low, high] = [(step - tolerance) / next, (step + tolerance) / next];
      continue;
    }
    low = Math.max(low, (rise - tolerance) / run);
    high = Math.min(high, (rise + tolerance) / run);
  }
  kept.push(x.length - 1);
  return kept;
}
