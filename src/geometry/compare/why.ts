/** Why one option and not another: the measures that speak for it and against it, as plain data. */
import { penalty } from '../map/penalty';
import { compared, KINDS, type Measure, type Value } from './measure';
import type { CompareRow } from './table';

/** One measure that differs. */
export interface Reason {
  measure: Measure;
  value: Value;
  other: Value;
  /** Of this option, less that of the other; infinite where one has no reflection at all. */
  change: number;
  /** Larger than it is uncertain; `null`: not known. */
  beyond: boolean | null;
  /** How much it weighs among the reasons: 1 is a penalty of 1 on the search's scales. */
  weight: number;
}

export interface Reasons {
  /** The weightiest first; those known to lie within the uncertainty are not among them. */
  better: Reason[];
  worse: Reason[];
  /** Differ, but by no more than that is uncertain. */
  unsure: Reason[];
}

export interface Why {
  option: string;
  against: string;
  /** At the seat asked about, and of the whole. */
  here: Reasons;
  /** At each other seat. */
  elsewhere: { seat: string; reasons: Reasons }[];
  /** Nothing told differs at all, at any seat. */
  alike: boolean;
}

/** Left out: they say again what others say. */
const NOT_TOLD: ReadonlySet<Measure['kind']> = new Set([
  'imageOctaveDeg',
  'imageDeg',
  'crossoverDb',
]);

/**
 * @param rows as `compareOptions` makes them with `against` as the baseline
 * @param seat the one asked about
 */
export function whyOption(
  rows: readonly CompareRow[],
  option: string,
  against: string,
  seat: string,
): Why {
  const told = rows.filter(({ measure }) => !NOT_TOLD.has(measure.kind));
  const seats = [...new Set(rows.flatMap(({ measure }) => measure.seat ?? []))];
  const at = (belongs: (measure: Measure) => boolean): Reasons =>
    reasonsOf(
      told.filter(({ measure }) => belongs(measure)),
      option,
      against,
    );
  return {
    option,
    against,
    here: at((measure) => measure.seat === seat || measure.seat === null),
    elsewhere: seats
      .filter((one) => one !== seat)
      .map((one) => ({ seat: one, reasons: at((measure) => measure.seat === one) })),
    alike: rows.every(({ cells }) => {
      const cell = cells.find((one) => one.option === option);
      const base = cells.find((one) => one.option === against);
      return (
        !cell ||
        cell.against === 'alike' ||
        cell.against === 'baseline' ||
        (cell.value.value === null && base?.value.value === null)
      );
    }),
  };
}

function reasonsOf(rows: readonly CompareRow[], option: string, against: string): Reasons {
  const reasons: Reasons = { better: [], worse: [], unsure: [] };
  for (const { measure, cells } of rows) {
    const cell = cells.find((one) => one.option === option);
    const base = cells.find((one) => one.option === against);
    if (!cell || !base || cell.change === null) continue;
    if (cell.against !== 'better' && cell.against !== 'worse') continue;
    const reason: Reason = {
      measure,
      value: cell.value,
      other: base.value,
      change: cell.change,
      beyond: cell.beyond,
      weight: weightOf(measure, cell.value, base.value),
    };
    reasons[cell.beyond === false ? 'unsure' : cell.against].push(reason);
  }
  for (const list of [reasons.better, reasons.worse, reasons.unsure])
    list.sort((a, b) => b.weight - a.weight);
  return reasons;
}

function weightOf(measure: Measure, value: Value, other: Value): number {
  const [a, b] = [compared(measure, value), compared(measure, other)];
  if (a === null || b === null) return 0;
  if (measure.kind === 'firstReflectionTime') {
    const of = (number: number) =>
      penalty('firstReflectionTime', Number.isFinite(number) ? number : null);
    return Math.abs(of(a) - of(b));
  }
  return Math.abs(a - b) / KINDS[measure.kind].scale;
}
