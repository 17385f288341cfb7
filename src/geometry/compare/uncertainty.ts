/** How sure a difference between two options is. */
import { COVERAGE } from './causes';
import type { Values } from './measure';
import type { MeasuredOption } from './measure-option';
import type { Trials } from './trials';

/** Of a difference between two options; `why`: not known. */
export type Uncertainty = { standard: number } | { why: string };

/** Reads one number from an option's measures; `null` where there is none. */
export type Read = (values: Values) => number | null;

/**
 * The combined standard uncertainty of read(a) − read(b): the root of the sum of the squares of what
 * each cause does to that difference. What touches both options alike (a seat, the temperature, a
 * spot both share) is off in both at once; causes are independent of one another.
 * Source: JCGM 100:2008 (GUM), 5.1.2, with each part worked out anew with its cause one standard
 * uncertainty off (5.1.3, note 2). There the mean of both ways is taken, here the way that does
 * more, so that a measure at a kink (a difference near nothing, the worse of two) is not told surer
 * than it is.
 */
export function uncertaintyBetween(
  a: MeasuredOption,
  b: MeasuredOption,
  trials: Trials,
  read: Read,
): Uncertainty {
  const difference = (x: Values, y: Values): number | null => {
    const [p, q] = [read(x), read(y)];
    // Nothing on both sides: no difference.
    return p === null || q === null ? null : p === q ? 0 : p - q;
  };
  const here = difference(a.values, b.values);
  if (here === null) return { why: 'one of the two is not known' };
  const [ofA, ofB] = [trials.options.get(a.option), trials.options.get(b.option)];
  if (!ofA || !ofB) return { why: 'it was not tried' };
  const squares: number[] = [];
  for (const cause of new Set([...ofA.keys(), ...ofB.keys()])) {
    let most: number | null = null;
    for (const sign of [1, -1] as const) {
      const there = difference(
        off(ofA.get(cause)?.[sign], a.values, ofA.has(cause)),
        off(ofB.get(cause)?.[sign], b.values, ofB.has(cause)),
      );
      if (!possible(ofA, cause, sign) || !possible(ofB, cause, sign)) continue;
      if (there === null) return { why: 'it is no longer known when something is a little off' };
      const change = there === here ? 0 : there - here;
      if (!Number.isFinite(change))
        return { why: 'it comes or goes when something is a little off' };
      most = Math.max(most ?? 0, Math.abs(change));
    }
    if (most === null && !isShared(cause))
      return { why: 'a spot could not be tried a little off, either way' };
    squares.push((most ?? 0) ** 2);
  }
  // From small to large, so that it is the same to the last digit whichever comes first.
  squares.sort((p, q) => p - q);
  return { standard: Math.sqrt(squares.reduce((sum, one) => sum + one, 0)) };
}

type Tried = NonNullable<ReturnType<Trials['options']['get']>>;

const off = (tried: Values | null | undefined, values: Values, touched: boolean): Values =>
  touched && tried ? tried : values;

const possible = (tried: Tried, cause: string, sign: 1 | -1): boolean =>
  !tried.has(cause) || tried.get(cause)?.[sign] !== null;

/** A seat that does not slide is not off. */
const isShared = (cause: string): boolean => cause.startsWith('seat ') || cause === 'temperature';

/** Whether a difference is larger than it is uncertain; `null` where that is not known. */
export function isBeyond(change: number, uncertainty: Uncertainty): boolean | null {
  if ('why' in uncertainty) return null;
  return Math.abs(change) > COVERAGE * uncertainty.standard;
}
