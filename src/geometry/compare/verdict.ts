/** One number for each option, by what the user says counts: the search's own scales. */
import type { SeatWeight } from '../input';
import { DIFFERENCE_SCALE, penalty, SPOT_AIMS, type SpotAim } from '../map/penalty';
import { compared, type MeasureKind, measureOf, type Values, type Who } from './measure';
import type { MeasuredOption } from './measure-option';
import type { Trials } from './trials';
import { isBeyond, type Uncertainty, uncertaintyBetween } from './uncertainty';

/** What can count: the aims of the search for one pair, and that of the whole stage. */
export type VerdictAim = SpotAim | 'pathSpread';

export const VERDICT_AIMS: readonly VerdictAim[] = [...SPOT_AIMS, 'pathSpread'];

/** Weights ≥ 0; one left out, or 0, does not count. */
export type VerdictWeights = Partial<Record<VerdictAim, number>>;

export interface Verdict {
  option: string;
  /** 0 would be perfect; smaller is better. `null`: no pair to go by. */
  score: number | null;
  /** Pairs of its own that are not weighed: some other option lacks them, or half of them. */
  unweighed: readonly Who[];
  /** Speakers that do not fit, and that reach into a place kept clear. */
  misfits: number;
  keepClear: number;
  /** The smallest score among those that fit, as far as uncertainty goes. */
  best: boolean;
}

/** Found again by the same names as `measureOf` makes. */
const KIND_OF: Readonly<Record<SpotAim, MeasureKind>> = {
  difference: 'difference',
  offAxisDeg: 'offAxisDeg',
  obstructionDb: 'obstructionDb',
  firstReflectionTime: 'firstReflectionTime',
};

/** The pairs of an option, whole or not. */
function pairsOf({ measures }: MeasuredOption, seats: readonly SeatWeight[]): Who[] {
  return measures.flatMap(({ kind, seat, who }) =>
    kind === 'difference' && seat === seats[0]?.id && who ? [who] : [],
  );
}

const isSame = (a: Who, b: Who): boolean => a.role === b.role && a.nth === b.nth;

/** What options are weighed by. */
export interface Weighed {
  pairs: readonly Who[];
  /** No option has any other: then the spread of their paths is weighed too. */
  alike: boolean;
}

/**
 * The pairs that all of these options have, with both sides. One that lacks a pair would else come
 * out ahead by having less to be weighed.
 */
export function weighedBy(
  measured: readonly MeasuredOption[],
  seats: readonly SeatWeight[],
): Weighed {
  const isWhole = (one: MeasuredOption, who: Who): boolean =>
    seats.every(({ id }) => {
      const value = one.values.get(measureOf('difference', id, { who }).id)?.value;
      return typeof value === 'number';
    });
  const [first] = measured;
  const all = first ? pairsOf(first, seats) : [];
  const pairs = all.filter((who) => measured.every((one) => isWhole(one, who)));
  return { pairs, alike: measured.every((one) => pairsOf(one, seats).length === pairs.length) };
}

/**
 * The score of an option: over its pairs, the sum over the aims of weight × penalty, the penalty of
 * each being the largest over the seats of seat weight × penalty there; and the largest path spread
 * of a side in the same way, unless pairs of its own are not weighed. Made as the score of a search
 * over all its pairs, so that words agree.
 * @param weighed of all that are compared
 */
export function scoreOf(
  option: MeasuredOption,
  values: Values,
  weights: VerdictWeights,
  seats: readonly SeatWeight[],
  { pairs, alike }: Weighed = weighedBy([option], seats),
): number | null {
  const heaviest = Math.max(...seats.map(({ weight }) => weight));
  if (pairs.length === 0) return null;
  let score = 0;
  for (const who of pairs)
    for (const aim of SPOT_AIMS) {
      const weight = weights[aim] ?? 0;
      if (!(weight > 0)) continue;
      const there = seats.map((seat) => {
        const value = values.get(measureOf(KIND_OF[aim], seat.id, { who }).id);
        return (seat.weight / heaviest) * penalty(aim, value?.none ? null : (value?.value ?? null));
      });
      score += weight * Math.max(...there);
    }
  const spreading = weights.pathSpread ?? 0;
  // Of other speakers the paths spread otherwise.
  if (spreading > 0 && alike) {
    const spreads = seats.flatMap((seat) =>
      (['left', 'right'] as const).map((side) => {
        const measure = measureOf('pathSpread', seat.id, { side });
        const spread = compared(measure, values.get(measure.id)) ?? 0;
        return ((seat.weight / heaviest) * spread) / DIFFERENCE_SCALE;
      }),
    );
    score += spreading * Math.max(...spreads);
  }
  return score;
}

/** How sure the difference of two scores is. */
export function scoreUncertainty(
  a: MeasuredOption,
  b: MeasuredOption,
  trials: Trials,
  weights: VerdictWeights,
  seats: readonly SeatWeight[],
  weighed: Weighed = weighedBy([a, b], seats),
): Uncertainty {
  // Both are read with their own pairs; the values tell whose they are.
  const ofA = new Set<Values>([a.values]);
  for (const both of trials.options.get(a.option)?.values() ?? [])
    for (const values of [both[1], both[-1]]) if (values) ofA.add(values);
  return uncertaintyBetween(a, b, trials, (values) =>
    scoreOf(ofA.has(values) ? a : b, values, weights, seats, weighed),
  );
}

/**
 * The verdict by weights. Only options whose speakers all fit, none of them in a place kept clear,
 * can be best, as in a search; where none fits there is no best.
 * @param trials `null`: scores that differ at all are told apart
 */
export function verdictsOf(
  measured: readonly MeasuredOption[],
  weights: VerdictWeights,
  seats: readonly SeatWeight[],
  trials: Trials | null,
): Verdict[] {
  const count = (one: MeasuredOption, kind: 'misfits' | 'keepClear') =>
    one.values.get(measureOf(kind, null).id)?.value ?? 0;
  const weighed = weighedBy(measured, seats);
  const all = measured.map((one) => ({
    one,
    verdict: {
      option: one.option,
      score: seats.length === 0 ? null : scoreOf(one, one.values, weights, seats, weighed),
      unweighed: pairsOf(one, seats).filter((who) => !weighed.pairs.some((w) => isSame(w, who))),
      misfits: count(one, 'misfits'),
      keepClear: count(one, 'keepClear'),
    },
  }));
  const fitting = all.filter(
    ({ verdict: { score, misfits, keepClear } }) =>
      score !== null && misfits === 0 && keepClear === 0,
  );
  const first = fitting.reduce<(typeof fitting)[number] | null>(
    (most, one) =>
      most && (most.verdict.score as number) <= (one.verdict.score as number) ? most : one,
    null,
  );
  return all.map(({ one, verdict }) => {
    if (!first || !fitting.some((other) => other.one === one)) return { ...verdict, best: false };
    const more = (verdict.score as number) - (first.verdict.score as number);
    const sure =
      more === 0
        ? false
        : !trials ||
          isBeyond(more, scoreUncertainty(one, first.one, trials, weights, seats, weighed));
    return { ...verdict, best: sure === false };
  });
}
