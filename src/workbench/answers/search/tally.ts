/** Why the spots that are not allowed are not: counted by what rules them out. */
import type { SearchAnswer } from '../../../geometry';

/** What can rule a spot out, in the order told. */
export type Reason = 'keepClear' | 'fit' | 'free' | 'angle' | 'view';

export interface Tally {
  tried: number;
  feasible: number;
  /** Spots each reason rules out, alone or with others. */
  by: Readonly<Record<Reason, number>>;
  /** Spots that would be allowed if this one reason were given up. */
  alone: Readonly<Record<Reason, number>>;
  /** The smallest angle among the spots that only the angle rules out; `null`: there is none. */
  leastAngleDeg: number | null;
  /** The commonest sentences of each kind, without their numbers. */
  commonest: readonly { sentence: string; count: number }[];
}

export const REASONS: readonly Reason[] = ['keepClear', 'fit', 'free', 'angle', 'view'];

/** The engine's sentences by what they say. */
export function reasonOf(sentence: string): Reason {
  if (/kept clear/.test(sentence)) return 'keepClear';
  if (/off axis at|no angle towards/.test(sentence)) return 'angle';
  if (/\bstands? between it and\b/.test(sentence)) return 'free';
  if (/\bhides?\b|\bview\b/.test(sentence)) return 'view';
  return 'fit';
}

const zeros = (): Record<Reason, number> => ({
  keepClear: 0,
  fit: 0,
  free: 0,
  angle: 0,
  view: 0,
});

const MOST_SENTENCES = 5;

/** @param all every spot tried, as a request with `"all": true` answers */
export function tallyOf({ tried, feasible, all = [] }: SearchAnswer): Tally {
  const by = zeros();
  const alone = zeros();
  let leastAngleDeg: number | null = null;
  const sentences = new Map<string, number>();
  for (const spot of all) {
    if (spot.feasible) continue;
    const reasons = new Set(spot.why.map(reasonOf));
    for (const reason of reasons) by[reason] += 1;
    const [only, ...more] = reasons;
    if (only && more.length === 0) {
      alone[only] += 1;
      const angle = spot.measures.offAxisDeg;
      if (only === 'angle' && angle !== null)
        leastAngleDeg = leastAngleDeg === null ? angle : Math.min(leastAngleDeg, angle);
    }
    for (const sentence of new Set(spot.why.map(withoutNumbers)))
      sentences.set(sentence, (sentences.get(sentence) ?? 0) + 1);
  }
  const commonest = [...sentences]
    .map(([sentence, count]) => ({ sentence, count }))
    .sort((a, b) => b.count - a.count || a.sentence.localeCompare(b.sentence))
    .slice(0, MOST_SENTENCES);
  return { tried, feasible, by, alone, leastAngleDeg, commonest };
}

/** "left: reaches 12 mm along its axis into the windscreen" → "reaches into the windscreen". */
const withoutNumbers = (sentence: string): string =>
  sentence
    .replace(/^(left|right): /, '')
    .replace(/ ?[\d.]+ (mm( along its axis)?|litres)\b/g, '')
    .replace(/\b(left|right) /g, '')
    .replace(/: not here$/, '')
    .trim();
