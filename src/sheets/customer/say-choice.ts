import {
  compareOptions,
  type MeasuredOption,
  type MeasureKind,
  measureOf,
  type Reason,
  whyOption,
} from '../../geometry';
import { optionTitle } from '../../plan/edits';
import type { PaperFacts } from '../facts';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import { plainValue, whoName } from './plain-value';
import { unsizedIn } from './unsized';

/** What a reader without the trade's words can follow. */
const PLAIN: ReadonlySet<MeasureKind> = new Set([
  'difference',
  'offAxisDeg',
  'line',
  'obstructionDb',
  'misfits',
  'keepClear',
]);
/** More reasons than this are not remembered. */
const MOST = 2;

/**
 * The third sentence: whether all fits, and what speaks for this option, and against it, beside the
 * best of the others.
 */
export function sayChoice(
  facts: PaperFacts,
  measured: readonly MeasuredOption[],
  words: PrintedWords,
): string {
  const { plan, option } = facts;
  const other = plan.options.find(({ id }) => id !== option.id);
  return [fitSentence(facts, measured, words), other && against(facts, measured, other.id, words)]
    .filter(Boolean)
    .join(' ');
}

/** A speaker of unknown size fits nowhere for sure, and nothing was asked of it. */
function fitSentence(
  { option }: PaperFacts,
  measured: readonly MeasuredOption[],
  { t }: PrintedWords,
): string {
  const count = option.speakers.length;
  if (count === 0) return '';
  const own = measured.find((one) => one.option === option.id);
  const of = (kind: MeasureKind) => own?.values.get(measureOf(kind, null).id)?.value ?? null;
  const [misfits, zones] = [of('misfits'), of('keepClear')];
  if (misfits === null) return t('customer.choice.unknown', { count });
  const unsized = unsizedIn(option);
  return [
    misfits > 0 ? t('customer.choice.misfits', { count: misfits }) : '',
    unsized > 0 ? t('customer.choice.unsized', { count: unsized }) : '',
    misfits + unsized === 0 ? t('customer.choice.fits', { count }) : '',
    zones !== null && zones > 0 ? t('customer.choice.zones', { count: zones }) : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function against(
  { plan, option, result, seat }: PaperFacts,
  measured: readonly MeasuredOption[],
  other: string,
  words: PrintedWords,
): string {
  const { t, n } = words;
  const there = plan.options.find(({ id }) => id === other);
  if (!there || !seat) return '';
  const rows = compareOptions(measured, other, null);
  const { here } = whyOption(rows, option.id, other, seat.id);
  // What fits more is not known where one of them has speakers without sizes.
  const sized = unsizedIn(option) + unsizedIn(there) === 0;
  const said = (reasons: readonly Reason[]) => {
    const plain = reasons.filter(
      ({ measure: { kind } }) => PLAIN.has(kind) && (kind !== 'misfits' || sized),
    );
    // One of each kind first, so that a pair does not crowd others out.
    const first = plain.filter(
      ({ measure }, i) => plain.findIndex((one) => one.measure.kind === measure.kind) === i,
    );
    return n.list(
      first.slice(0, MOST).map((reason) => reasonWords(reason, result.speedOfSound, words)),
    );
  };
  const [better, worse] = [said(here.better), said(here.worse)];
  const title = optionTitle(there);
  if (!better && !worse) return t('customer.choice.nothing', { other: title });
  if (!better) return t('customer.choice.only-worse', { other: title, what: worse });
  return [
    t('customer.choice.better', { other: title, what: better }),
    worse && t('customer.choice.worse', { what: worse }),
  ]
    .filter(Boolean)
    .join(' ');
}

function reasonWords(
  { measure, value, other }: Reason,
  speed: number,
  words: PrintedWords,
): string {
  const key = `customer.why.${measure.kind}` as WordKey;
  if (measure.kind === 'misfits' || measure.kind === 'keepClear')
    return words.t(key, { here: value.value ?? 0, there: other.value ?? 0 });
  return words.t(key, {
    who: measure.who ? whoName(measure.who, words) : '',
    here: plainValue(measure.kind, value, speed, words),
    there: plainValue(measure.kind, other, speed, words),
  });
}
