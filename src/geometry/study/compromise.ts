/** One set of delays for several seats: the best compromise, and what it leaves at each of them. */
import { solve } from 'yalps';
import type { SeatWeight } from '../input';
import type { OptionResult, SeatResult } from '../result';
import type { PairMembers } from '../stage/pairs';
import { type CompromisePair, pairGains, pairOver, spread } from './compromise-pairs';

export type { CompromisePair };

/** Weights farther apart than this are refused: the lightest seat would no longer count at all. */
export const WEIGHT_RATIO = 1000;

export interface CompromiseChannel {
  speaker: string;
  /** Added to the channel, ms; the smallest of all is 0. */
  delay: number;
  /** The same in samples at the rate, not rounded. */
  samples: number;
  /** The nearest whole sample, as a time. */
  roundedDelay: number;
  /** roundedDelay − delay. */
  residual: number;
  /** ≤ 0. */
  gainDb: number;
}

export interface CompromiseSeat {
  id: string;
  weight: number;
  /** Of any speaker here, ms, ≥ 0; two speakers may be twice this apart. */
  largestError: number;
  /** The same once the delays are rounded to whole samples. */
  roundedLargestError: number;
  /** Arrival after the delay less the seat's own common time, ms: positive is late. */
  errors: { speaker: string; error: number }[];
}

export interface Compromise {
  /** In the order of the option's speakers. */
  channels: CompromiseChannel[];
  /** Of any speaker at any seat, ms. */
  largestError: number;
  /** What was minimised: the largest of error · weight / heaviest weight, ms. */
  weightedError: number;
  /** In the order listed. */
  seats: CompromiseSeat[];
  /** Those with a left and a right speaker. */
  pairs: CompromisePair[];
}

/**
 * The delays of all speakers that keep the largest weighted arrival error over the listed seats as
 * small as any delays can. The error of a speaker at a seat is its arrival less the seat's own
 * common time, which is free: only being together counts, not when. Twice the weight allows half
 * the error. Exact, as a linear program.
 *
 * The largest error seldom decides all delays. What it leaves open is spent on the next largest
 * error, then on the one after, to the end; so the answer is the only one, in whatever order
 * speakers and seats are listed. (The sum of the errors would not do: with two seats every delay
 * between what the one and the other asks for has the same sum.)
 *
 * Gains are by pair: the mean of the level differences the seats have, by weight, taken off the
 * louder side. That is a choice of ours; no published rule is known to us.
 *
 * @param pairs as `pairsOf` tells them
 * @param weights seats and how much each counts, above 0
 * @returns the compromise, or the problem in one sentence
 */
export function compromiseOver(
  result: OptionResult,
  pairs: readonly PairMembers[],
  weights: readonly SeatWeight[],
  sampleRateHz: number,
): Compromise | { problem: string } {
  const listed = seatsOf(result, weights, sampleRateHz);
  if ('problem' in listed) return listed;
  const { seats, speakers } = listed;
  const heaviest = Math.max(...weights.map(({ weight }) => weight));
  const relative = weights.map(({ weight }) => weight / heaviest);
  const times = seats.map((seat) => seat.arrivals.map(({ time }) => time));

  const { delays, common } = levelOut(times, relative);
  const gains = pairGains(seats, pairs, relative);
  const samplesPerMs = sampleRateHz / 1000;
  const channels = speakers.map((speaker, i): CompromiseChannel => {
    const delay = delays[i] as number;
    const samples = delay * samplesPerMs;
    const roundedDelay = Math.round(samples) / samplesPerMs;
    const gainDb = gains.get(speaker) ?? 0;
    return { speaker, delay, samples, roundedDelay, residual: roundedDelay - delay, gainDb };
  });

  const told = seats.map(({ id }, s): CompromiseSeat => {
    const at = times[s] as number[];
    const errors = channels.map(({ speaker, delay }, i) => ({
      speaker,
      error: (at[i] as number) + delay - (common[s] as number),
    }));
    const rounded = channels.map(({ roundedDelay }, i) => (at[i] as number) + roundedDelay);
    return {
      id,
      weight: (weights[s] as SeatWeight).weight,
      largestError: Math.max(...errors.map(({ error }) => Math.abs(error))),
      roundedLargestError: spread(rounded) / 2,
      errors,
    };
  });
  return {
    channels,
    largestError: Math.max(...told.map(({ largestError }) => largestError)),
    weightedError: Math.max(
      ...told.map(({ largestError }, s) => largestError * (relative[s] as number)),
    ),
    seats: told,
    pairs: pairs.flatMap((pair) => pairOver(pair, seats, relative, channels)),
  };
}

/** The seats listed and the speakers there, or why there is no compromise over them. */
function seatsOf(
  result: OptionResult,
  weights: readonly SeatWeight[],
  sampleRateHz: number,
): { seats: SeatResult[]; speakers: string[] } | { problem: string } {
  const problem = (text: string) => ({ problem: text });
  if (!(sampleRateHz > 0 && Number.isFinite(sampleRateHz)))
    return problem(`the sample rate must be above 0 Hz, got ${sampleRateHz}`);
  if (weights.length === 0) return problem('no seat is listed to find a compromise over');
  const seats: SeatResult[] = [];
  for (const { id, weight } of weights) {
    const seat = result.seats.find((one) => one.id === id);
    if (!seat) return problem(`there is no seat "${id}" in this plan`);
    if (seats.includes(seat)) return problem(`the seat "${id}" is listed twice`);
    if (!(weight > 0 && Number.isFinite(weight)))
      return problem(`the weight of the seat "${id}" must be above 0, got ${weight}`);
    seats.push(seat);
  }
  const all = weights.map(({ weight }) => weight);
  if (Math.max(...all) > WEIGHT_RATIO * Math.min(...all))
    return problem(`the heaviest seat counts more than ${WEIGHT_RATIO} times the lightest`);
  const speakers = seats[0]?.arrivals.map(({ speaker }) => speaker) ?? [];
  if (speakers.length === 0) return problem('the option has no speakers yet');
  for (const { id, arrivals } of seats) {
    const lost = arrivals.find(({ time }) => !Number.isFinite(time));
    if (lost) return problem(`the speaker "${lost.speaker}" has no arrival at the seat "${id}"`);
  }
  return { seats, speakers };
}

/** Two errors nearer than this count as equal, ms: ten times what the solver rounds to. */
const EQUAL = 1e-7;

/**
 * Delays, and each seat's common time, that make the largest error small, then the next largest,
 * and so on.
 *
 * Each error ties one speaker to one seat, both ways: the program is one of differences, and its
 * least largest error E is decided by a closed chain of speakers and seats every one of whose
 * errors is E, early and late in turn. (A chain's errors add up to the same whatever the delays.)
 * Along it all delays and common times are settled against each other, so it becomes one rigid
 * group, and the next program moves groups.
 * @param times by seat and speaker, ms
 * @param weights by seat, the largest 1
 */
function levelOut(times: readonly (readonly number[])[], weights: readonly number[]) {
  const speakerCount = times[0]?.length ?? 0;
  // Speakers first, then seats. A seat starts at its mean, which keeps the numbers small.
  const shifts = [
    ...Array.from({ length: speakerCount }, () => 0),
    ...times.map((at) => at.reduce((sum, t) => sum + t, 0) / speakerCount),
  ];
  let group = shifts.map((_, node) => node);
  for (;;) {
    const ties = times.flatMap((at, s) =>
      at.flatMap((time, speaker): Tie[] => {
        const seat = speakerCount + s;
        const [from, to] = [group[seat] as number, group[speaker] as number];
        if (from === to) return [];
        const error = time + (shifts[speaker] as number) - (shifts[seat] as number);
        return [{ from, to, weight: weights[s] as number, error }];
      }),
    );
    if (ties.length === 0) break;
    const moves = minimizeLargest(ties, Math.max(...group) + 1);
    for (const [node, g] of group.entries())
      shifts[node] = (shifts[node] as number) + (moves[g] ?? 0);
    const settled = ties.map(
      (tie) => tie.weight * (tie.error + (moves[tie.to] ?? 0) - (moves[tie.from] ?? 0)),
    );
    group = joinChains(group, ties, settled);
  }
  const earliest = Math.min(...shifts.slice(0, speakerCount));
  const shifted = shifts.map((shift) => shift - earliest);
  return { delays: shifted.slice(0, speakerCount), common: shifted.slice(speakerCount) };
}

/** The error of a speaker (its group: `to`) at a seat (its group: `from`). */
interface Tie {
  from: number;
  to: number;
  weight: number;
  error: number;
}

/**
 * How far to move each group, ≥ 0, for the least largest |weight · error|. Told as how much can be
 * taken off today's largest, so that standing still is a solution to start from; and all moving
 * together changes nothing, so moves need no sign.
 */
function minimizeLargest(ties: readonly Tie[], groups: number): number[] {
  const today = Math.max(...ties.map(({ weight, error }) => weight * Math.abs(error)));
  const taken: [number, number][] = [];
  const coefficients = Array.from({ length: groups }, (): [number, number][] => []);
  const limits: [number, { max: number }][] = [];
  for (const { from, to, weight, error } of ties) {
    for (const sign of [1, -1]) {
      const row = limits.length;
      limits.push([row, { max: today - sign * weight * error }]);
      coefficients[to]?.push([row, sign * weight]);
      coefficients[from]?.push([row, -sign * weight]);
      taken.push([row, 1]);
    }
  }
  const goal = -1;
  taken.push([goal, 1]);
  const answer = solve<number, number>({
    direction: 'maximize',
    objective: goal,
    constraints: limits,
    variables: [...coefficients.entries(), [groups, taken]],
  });
  if (answer.status !== 'optimal')
    throw new Error(
      `compromiseOver: expected a solution of the linear program, got ${answer.status}`,
    );
  const moves = Array.from({ length: groups }, () => 0);
  for (const [g, move] of answer.variables) if (g < groups) moves[g] = move;
  return moves;
}

/** Makes one group of all that hang together, both ways, by errors as large as the largest. */
function joinChains(group: readonly number[], ties: readonly Tie[], errors: readonly number[]) {
  const count = Math.max(...group) + 1;
  const largest = Math.max(...errors.map(Math.abs));
  // The solver rounds, so a chain may miss the mark a little; it is there in any case.
  for (let within = EQUAL; ; within *= 10) {
    const reach = Array.from({ length: count }, (_, a) =>
      Array.from({ length: count }, (_, b) => a === b),
    );
    for (const [k, { from, to }] of ties.entries()) {
      const error = errors[k] as number;
      if (error >= largest - within) (reach[from] as boolean[])[to] = true;
      if (-error >= largest - within) (reach[to] as boolean[])[from] = true;
    }
    for (const through of reach.keys()) {
      for (const row of reach) {
        if (!row[through]) continue;
        for (const [b, can] of (reach[through] as boolean[]).entries()) if (can) row[b] = true;
      }
    }
    const first = reach.map((row, a) => reach.findIndex((other, b) => row[b] && other[a]));
    const names = [...new Set(first)];
    if (names.length < count) return group.map((g) => names.indexOf(first[g] as number));
  }
}
