/** Options side by side: what each has of every measure, which is best, and what differs. */
import { compared, isAlike, KINDS, type Measure, type Value } from './measure';
import type { MeasuredOption } from './measure-option';
import type { Trials } from './trials';
import { isBeyond, type Uncertainty, uncertaintyBetween } from './uncertainty';

export interface CompareCell {
  option: string;
  value: Value;
  /** Nothing in this option is as good or better, as far as rounding and uncertainty go. */
  best: boolean;
  /** Against the baseline, compared as `compared` has it; `null`: not known, or the baseline's own. */
  change: number | null;
  against: 'baseline' | 'better' | 'worse' | 'alike' | 'other' | 'unknown';
  /** Of that change; `null` where nothing was tried yet, or there is no change. */
  uncertainty: Uncertainty | null;
  /** The change is larger than it is uncertain; `null`: not known. */
  beyond: boolean | null;
}

export interface CompareRow {
  measure: Measure;
  cells: CompareCell[];
  /** No option differs from another in what is told. */
  alike: boolean;
}

/** In an option without that pair or hand-over. */
const NOT_HERE: Value = { value: null, reason: 'this option does not have it' };

/** Which of two is better; 0 where that is a matter of taste. */
function betterSign({ kind }: Measure, change: number): number {
  const { better } = KINDS[kind];
  return better === 'none' ? 0 : better === 'less' ? -Math.sign(change) : Math.sign(change);
}

/** p − q, where two that are both infinite do not differ. */
const minus = (p: number, q: number): number => (p === q ? 0 : p - q);

/** How sure the difference of one measure between two options is. */
export function uncertaintyOf(
  measure: Measure,
  a: MeasuredOption,
  b: MeasuredOption,
  trials: Trials,
): Uncertainty {
  if (KINDS[measure.kind].slow && measure.seat !== trials.seat)
    return { why: 'this is tried at the seat in view alone' };
  return uncertaintyBetween(a, b, trials, (values) => compared(measure, values.get(measure.id)));
}

/**
 * Every measure that any of the options has, in the order they come. Where two differ by no more
 * than the last digit told, or by no more than the difference is uncertain, both are as good.
 * @param baseline id of one of the options
 * @param trials `null`: uncertainty is not known yet
 */
export function compareOptions(
  measured: readonly MeasuredOption[],
  baseline: string,
  trials: Trials | null,
): CompareRow[] {
  const measures = new Map(
    measured.flatMap((one) => one.measures.map((measure) => [measure.id, measure] as const)),
  );
  const base = measured.find(({ option }) => option === baseline);
  return [...measures.values()].map((measure) => rowOf(measure, measured, base, trials));
}

function rowOf(
  measure: Measure,
  measured: readonly MeasuredOption[],
  base: MeasuredOption | undefined,
  trials: Trials | null,
): CompareRow {
  const has = (one: MeasuredOption): Value => one.values.get(measure.id) ?? NOT_HERE;
  const numbers = measured.map((one) => compared(measure, has(one)));
  const best = bestOf(measure, measured, numbers, trials);
  const cells = measured.map((one, i): CompareCell => {
    const cell = { option: one.option, value: has(one), best: best.has(i) };
    const none = { ...cell, change: null, uncertainty: null, beyond: null };
    if (one === base) return { ...none, against: 'baseline' };
    const [here, there] = [numbers[i], base ? compared(measure, has(base)) : null];
    if (typeof here !== 'number' || typeof there !== 'number' || !base)
      return { ...none, against: 'unknown' };
    const change = minus(here, there);
    const uncertainty = trials && change !== 0 ? uncertaintyOf(measure, one, base, trials) : null;
    const sign = betterSign(measure, change);
    return {
      ...cell,
      change,
      against: isAlike(measure, here, there)
        ? 'alike'
        : sign === 0
          ? 'other'
          : sign > 0
            ? 'better'
            : 'worse',
      uncertainty,
      beyond: change === 0 ? false : uncertainty && isBeyond(change, uncertainty),
    };
  });
  const [first] = numbers;
  const alike = numbers.every((number) =>
    typeof number === 'number' && typeof first === 'number'
      ? isAlike(measure, number, first) && sameSign(measure, measured, has)
      : number === first,
  );
  return { measure, cells, alike };
}

/** A row that would show "left" beside "right" is not alike, small as both may be. */
function sameSign(
  measure: Measure,
  measured: readonly MeasuredOption[],
  has: (one: MeasuredOption) => Value,
): boolean {
  if (!KINDS[measure.kind].signed) return true;
  const { resolution } = KINDS[measure.kind];
  const signs = measured.flatMap((one) => {
    const { value } = has(one);
    return value === null || Math.abs(value) < resolution / 2 ? [] : [Math.sign(value)];
  });
  return new Set(signs).size < 2;
}

/** The best, and those as good; none where all are as good, or where it is a matter of taste. */
function bestOf(
  measure: Measure,
  measured: readonly MeasuredOption[],
  numbers: readonly (number | null)[],
  trials: Trials | null,
): ReadonlySet<number> {
  const { better } = KINDS[measure.kind];
  const known = numbers.flatMap((number, i) => (number === null ? [] : [{ number, i }]));
  if (better === 'none' || known.length < 2) return new Set();
  const first = known.reduce((most, one) =>
    betterSign(measure, minus(one.number, most.number)) > 0 ? one : most,
  );
  const asGood = known.filter(({ number, i }) => {
    if (isAlike(measure, number, first.number)) return true;
    if (!trials) return false;
    const [a, b] = [measured[i], measured[first.i]] as [MeasuredOption, MeasuredOption];
    return isBeyond(minus(number, first.number), uncertaintyOf(measure, a, b, trials)) === false;
  });
  return new Set(asGood.length === known.length ? [] : asGood.map(({ i }) => i));
}
