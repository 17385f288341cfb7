/** What each of several proposals is best at, and what it is worse at. */
import { penalty } from '../../../geometry';
import type { LengthUnit } from '../../../plan/units';
import { costOf, type Measure, type Proposal } from './found';
import { BEST_WORDS, behindWords } from './measure-words';

/** Nearer than this two values are as good as each other: the last digit shown. */
const ALIKE: Readonly<Record<Measure, number>> = {
  difference: 1,
  offAxisDeg: 1,
  obstructionDb: 0.1,
  firstReflectionTime: 0.01,
  pathSpread: 1,
};

export interface Character {
  best: Measure[];
  /** The measure it is most behind in, and the key of the one that is best there. */
  worst: { measure: Measure; than: Proposal } | null;
}

const isAhead = (measure: Measure, a: Proposal, b: Proposal): boolean => {
  const [x, y] = [costOf(measure, a.measures[measure]), costOf(measure, b.measures[measure])];
  return x === Number.NEGATIVE_INFINITY || y === Number.POSITIVE_INFINITY
    ? x < y
    : y - x >= ALIKE[measure];
};

/** A gap as a penalty, so that degrees and millimetres can be held against each other. */
const penaltyOf = (measure: Measure, value: number | null | undefined): number =>
  measure === 'pathSpread' ? penalty('difference', value ?? 0) : penalty(measure, value ?? null);

/** Best: better by a digit shown than every other. Worst: by the engine's own scale of penalties. */
export function characterOf(
  one: Proposal,
  among: readonly Proposal[],
  measures: readonly Measure[],
): Character {
  const others = among.filter((other) => other !== one);
  const best =
    others.length === 0
      ? []
      : measures.filter((measure) => others.every((other) => isAhead(measure, one, other)));
  let worst: Character['worst'] = null;
  let most = 0;
  for (const measure of measures)
    for (const than of others) {
      if (!isAhead(measure, than, one)) continue;
      const gap =
        penaltyOf(measure, one.measures[measure]) - penaltyOf(measure, than.measures[measure]);
      if (gap <= most) continue;
      most = gap;
      worst = { measure, than };
    }
  return { best, worst };
}

/** "Best: the least difference. Worse: 12° further off the axis than 3." */
export function characterSentence(
  one: Proposal,
  among: readonly Proposal[],
  measures: readonly Measure[],
  unit: LengthUnit,
): string {
  const { best, worst } = characterOf(one, among, measures);
  const better = best.length > 0 ? `Of these: ${best.map((m) => BEST_WORDS[m]).join(', ')}.` : '';
  const behind =
    worst &&
    behindWords(
      worst.measure,
      one.measures[worst.measure],
      worst.than.measures[worst.measure],
      worst.than.key,
      unit,
    );
  const worse = behind ? `Worse: ${behind}.` : '';
  return [better, worse].filter(Boolean).join(' ') || 'Much like the others.';
}
