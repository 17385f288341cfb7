/** The trade-off front of several pairs together. */
import { SPOT_AIMS } from '../map/penalty';
import { spreadOf } from './combine-pairs';
import { tradeOffFrontInSteps } from './front';
import type { StagePair } from './stage-pairs';

/** More combinations than this are not held against each other: seconds. */
export const MOST_COMBINED = 150_000;

/** More of the front than this are not told one by one. */
export const MOST_TOLD = 200;

/** Where they are more, first these penalties apart, then farther. */
const FIRST_WITHIN = 0.02;
const LOOSER = 1.5;

/** Where every combination is too many, spots are first thinned to this spacing, then wider, mm. */
const FIRST_SPACING = 10;
const WIDER = 1.2;

/** Combinations looked at between two signs of life. */
const TURN = 4096;

export interface StageFront {
  /** Numbers of candidates, one a pair; in the order of the combinations. */
  picks: number[][];
  combinations: number;
  spacing: number;
  within: number;
}

/**
 * The front over the sums of the pairs' penalties, aim by aim, and that of the path spread. The
 * spread is no sum over the pairs, so a pair's spot that another beats may still be in a
 * combination that none beats: no spot can be left out for certain, and all combinations of
 * thousands of spots are out of reach. So where they are more than {@link MOST_COMBINED} the spots
 * of each pair are thinned: best first, none nearer than `spacing` to one already kept. The front is
 * exactly that of the combinations of what is kept, with `known` ones added; of a large one some
 * are told, see {@link matching}.
 * @param fits whether the candidates can be taken together; -1: not taken yet
 * @param known combinations looked at in any case
 */
export function* stageFrontInSteps(
  pairs: readonly StagePair[],
  weights: readonly number[],
  fits: (picks: readonly number[]) => boolean,
  known: readonly (readonly number[])[],
  most = MOST_COMBINED,
): Generator<number, StageFront> {
  const { kept, spacing } = keptOf(pairs, most);
  const product = kept.reduce((all, { length }) => all * length, 1);
  const aims = SPOT_AIMS.flatMap((aim, a) =>
    pairs.some(({ ready }) => ready.wants[aim] > 0) ? [a] : [],
  );
  const columns = aims.length + 1;
  const picks: number[][] = [];
  const costs: number[] = [];
  const seen = new Set<string>();
  const put = (choice: readonly number[]) => {
    picks.push([...choice]);
    for (const a of aims)
      costs.push(
        choice.reduce(
          (sum, i, p) =>
            sum + ((pairs[p] as StagePair).penalties[SPOT_AIMS.length * i + a] as number),
          0,
        ),
      );
    costs.push(spreadPenalty(pairs, choice, weights));
  };
  for (const choice of known) {
    const key = choice.join();
    if (seen.has(key)) continue;
    seen.add(key);
    put(choice);
  }
  let looks = 0;
  const choice = pairs.map(() => -1);
  function* go(depth: number): Generator<number, void> {
    for (const i of kept[depth] ?? []) {
      choice[depth] = i;
      choice.fill(-1, depth + 1);
      if (looks++ % TURN === 0) yield picks.length / product;
      if (!fits(choice)) continue;
      if (depth + 1 < pairs.length) yield* go(depth + 1);
      else if (!seen.has(choice.join())) put(choice);
    }
  }
  yield* go(0);
  const score = (row: number) => {
    let sum = 0;
    for (let c = 0; c < columns; c++) sum += costs[columns * row + c] as number;
    return sum;
  };
  const rows = (yield* tradeOffFrontInSteps(Float64Array.from(costs), columns))
    .map((row) => ({ row, score: score(row) }))
    .sort((a, b) => a.score - b.score || a.row - b.row)
    .map(({ row }) => row);
  const told = matching(rows, costs, columns, MOST_TOLD);
  return {
    picks: told.rows.map((row) => picks[row] as number[]),
    combinations: picks.length,
    spacing,
    within: told.within,
  };
}

/** Weighted penalty of the path spread of a choice. */
export function spreadPenalty(
  pairs: readonly StagePair[],
  choice: readonly number[],
  weights: readonly number[],
): number {
  const lanes = 2 * weights.length;
  const low = new Float64Array(lanes).fill(Infinity);
  const high = new Float64Array(lanes).fill(-Infinity);
  choice.forEach((i, p) => {
    const { paths } = (pairs[p] as StagePair).candidates;
    for (let lane = 0; lane < lanes; lane++) {
      const path = paths[lanes * i + lane] as number;
      low[lane] = Math.min(low[lane] as number, path);
      high[lane] = Math.max(high[lane] as number, path);
    }
  });
  return spreadOf(weights, low, high);
}

/** The finest thinning whose combinations are not too many. */
function keptOf(pairs: readonly StagePair[], most: number): { kept: number[][]; spacing: number } {
  const sizes = pairs.map(({ candidates }) => candidates.scores.length);
  if (sizes.reduce((product, size) => product * size, 1) <= most)
    return { kept: sizes.map((size) => Array.from({ length: size }, (_, i) => i)), spacing: 0 };
  for (let spacing = FIRST_SPACING; ; spacing = Math.ceil(spacing * WIDER)) {
    const kept: number[][] = [];
    let product = 1;
    for (const pair of pairs) {
      const here = thinned(pair, spacing, most / product);
      kept.push(here);
      product *= here.length;
      if (product > most) break;
    }
    if (product <= most) return { kept, spacing };
  }
}

/** Best first, none nearer than `spacing` to one kept; gives up at more than `most`. */
function thinned({ candidates, positions }: StagePair, spacing: number, most: number): number[] {
  const kept: number[] = [];
  const isNear = (i: number, j: number, side: number) => {
    let square = 0;
    for (let k = side; k < side + 3; k++)
      square += ((positions[6 * i + k] as number) - (positions[6 * j + k] as number)) ** 2;
    return square < spacing * spacing;
  };
  for (let i = 0; i < candidates.scores.length && kept.length <= most; i++)
    if (!kept.some((j) => isNear(i, j, 0) && isNear(i, j, 3))) kept.push(i);
  return kept;
}

/**
 * Some of a front, so chosen that every row of it is matched by one of them: one at most `within`
 * worse in each column. Best first, the smallest `within` of 0, 0.02, 0.03 … at which they are not
 * more than `most`.
 * @param rows of the front, best first
 */
export function matching(
  rows: readonly number[],
  costs: ArrayLike<number>,
  columns: number,
  most: number,
): { rows: number[]; within: number } {
  if (rows.length <= most) return { rows: [...rows], within: 0 };
  for (let within = FIRST_WITHIN; ; within *= LOOSER) {
    const kept: number[] = [];
    const matches = (one: number, row: number) => {
      for (let c = 0; c < columns; c++)
        if ((costs[columns * one + c] as number) > (costs[columns * row + c] as number) + within)
          return false;
      return true;
    };
    for (const row of rows) {
      if (kept.some((one) => matches(one, row))) continue;
      kept.push(row);
      if (kept.length > most) break;
    }
    if (kept.length <= most) return { rows: kept, within: Math.ceil(within * 1000) / 1000 };
  }
}
