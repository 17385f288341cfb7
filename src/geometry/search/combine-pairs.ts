/**
 * The best choice of one candidate for each pair: branch and bound. Exact, unless it is cut short:
 * a branch is left only where even the best of the rest, with the spread it already has, could not
 * beat the best choice known.
 */

/** The feasible spots of one pair, best score first. */
export interface Candidates {
  scores: Float64Array;
  /** Path of the left, then of the right speaker, for each seat: 2 × seats numbers a candidate. */
  paths: Float64Array;
}

export interface Choice {
  /** Number of the candidate taken for each pair. */
  picks: number[];
  score: number;
}

/** So many choices are looked at before the search is cut short: a few seconds. */
export const MOST_LOOKS = 30_000_000;

/** Looks between two signs of life. */
const TURN = 10_000;

/**
 * @param weights of a spread of 1 mm, by seat
 * @param stand whether candidate `j` of pair `q` can stand beside `i` of pair `p`
 * @param wanted whether a choice may be taken, asked last; of one begun (-1: not taken yet) whether
 *   any way to go on may be
 * @returns yields how much has been looked through, 0 to 1
 */
export function* bestChoice(
  pairs: readonly Candidates[],
  weights: readonly number[],
  stand: (p: number, i: number, q: number, j: number) => boolean,
  wanted: (picks: readonly number[]) => boolean,
): Generator<number, { choice: Choice | null; complete: boolean }> {
  const lanes = 2 * weights.length;
  // Narrow choices first: they leave most out. The rest of the order does not change the answer.
  const order = pairs.map((_, p) => p).sort((a, b) => sizeOf(pairs, a) - sizeOf(pairs, b));
  const rest = new Float64Array(order.length + 1);
  for (let d = order.length - 1; d >= 0; d--)
    rest[d] = (rest[d + 1] as number) + (pairs[order[d] as number]?.scores[0] ?? Infinity);
  const low = order.map(() => new Float64Array(lanes));
  const high = order.map(() => new Float64Array(lanes));
  const picks: number[] = pairs.map(() => -1);
  const sums = new Float64Array(order.length);
  const next = new Int32Array(order.length);
  let best: Choice | null = null;
  let looks = 0;
  let depth = order.length === 0 ? -1 : 0;
  while (depth >= 0) {
    const p = order[depth] as number;
    const { scores, paths } = pairs[p] as Candidates;
    const i = next[depth] as number;
    const before = depth === 0 ? 0 : (sums[depth - 1] as number);
    const bound = best?.score ?? Infinity;
    // Scores rise, so what is too much here is too much for all that follow.
    const spread = depth === 0 ? 0 : spreadOf(weights, low[depth - 1], high[depth - 1]);
    if (
      i >= scores.length ||
      before + (scores[i] as number) + (rest[depth + 1] as number) + spread >= bound
    ) {
      depth -= 1;
      continue;
    }
    next[depth] = i + 1;
    looks += 1;
    if (looks % TURN === 0) yield (next[0] as number) / sizeOf(pairs, order[0] as number);
    if (looks > MOST_LOOKS) return { choice: best, complete: false };
    const [lo, hi] = [low[depth] as Float64Array, high[depth] as Float64Array];
    for (let lane = 0; lane < lanes; lane++) {
      const path = paths[lanes * i + lane] as number;
      lo[lane] = depth === 0 ? path : Math.min(path, low[depth - 1]?.[lane] as number);
      hi[lane] = depth === 0 ? path : Math.max(path, high[depth - 1]?.[lane] as number);
    }
    const sum = before + (scores[i] as number);
    const whole = sum + spreadOf(weights, lo, hi);
    if (whole + (rest[depth + 1] as number) >= bound) continue;
    if (order.slice(0, depth).some((q) => !stand(q, picks[q] as number, p, i))) continue;
    picks[p] = i;
    sums[depth] = sum;
    for (const later of order.slice(depth + 1)) picks[later] = -1;
    if (!wanted(picks)) continue;
    if (depth + 1 < order.length) {
      depth += 1;
      next[depth] = 0;
    } else best = { picks: [...picks], score: whole };
  }
  return { choice: best, complete: true };
}

const sizeOf = (pairs: readonly Candidates[], p: number): number => pairs[p]?.scores.length ?? 0;

/** The heaviest of the seats' and sides' spreads. */
export function spreadOf(
  weights: readonly number[],
  low: Float64Array | undefined,
  high: Float64Array | undefined,
): number {
  let most = 0;
  for (let s = 0; s < weights.length; s++)
    for (let lane = 2 * s; lane < 2 * s + 2; lane++) {
      const spread = (weights[s] as number) * ((high?.[lane] as number) - (low?.[lane] as number));
      if (spread > most) most = spread;
    }
  return most;
}
