/** "Why this one": sentences made from the engine's reasons, and from nothing else. */
import type { Reason, Reasons, Verdict, Why } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { formatNumber } from '../../../plan/units';
import { changeAmount } from './change-words';
import { type CompareWording, crossingName, valueWords, whoName } from './measure-words';

export interface WhyWording extends CompareWording {
  /** An option's title, quoted, by its id. */
  option: (id: string) => string;
}

/** More reasons than this are counted, not told. */
const MOST_TOLD = 3;

/** "left and right mids are 298 mm apart instead of 431 mm" */
export function reasonWords(reason: Reason, wording: CompareWording): string {
  const { measure, value, other, change } = reason;
  const [here, there] = [value, other].map((one) => valueWords(measure, one, wording));
  const instead = `${here} instead of ${there}`;
  const who = measure.who ? whoName(measure.who) : '';
  const be = measure.who?.lone ? 'is' : 'are';
  switch (measure.kind) {
    case 'difference':
      return here === there
        ? `left and right ${who} are apart by ${changeAmount(measure, change, wording)} ${change < 0 ? 'less' : 'more'}`
        : `left and right ${who} are ${here} apart instead of ${there}`;
    case 'pathSpread':
      return `paths on the ${measure.side} spread over ${instead}`;
    case 'longestDelay':
      return `the longest delay is ${instead}`;
    case 'levelDifferenceDb':
      return `left and right ${who} differ by ${here} in level instead of ${there}`;
    case 'offAxisDeg':
      return `the ${who} ${be} up to ${here} off axis instead of ${there}`;
    case 'line':
      return `the line from the ${who} is ${lineNoun(here)} instead of ${lineNoun(there)}`;
    case 'obstructionDb':
      return `the ${who} lose${measure.who?.lone ? 's' : ''} ${here} to what is in the way instead of ${there}`;
    case 'firstReflectionTime':
      if (value.none) return `no panel throws the ${who} back, where one did after ${there}`;
      if (other.none) return `a panel throws the ${who} back after ${here}, where none did`;
      return `the first reflection of the ${who} comes after ${here} instead of ${there}`;
    case 'misfits':
      return value.value === 0
        ? `all speakers fit, where ${there} ${other.value === 1 ? 'does' : 'do'} not`
        : `${speakers(value.value)} ${value.value === 1 ? 'does' : 'do'} not fit, against ${there}`;
    case 'keepClear':
      return value.value === 0
        ? `no speaker stands in a place kept clear, where ${there} ${other.value === 1 ? 'does' : 'do'}`
        : `${speakers(value.value)} ${value.value === 1 ? 'stands' : 'stand'} in places kept clear, against ${there}`;
    case 'pillarAddedDeg':
      return `pods add ${here} to what the ${measure.side} pillar hides instead of ${there}`;
    case 'crossoverDipDb':
    case 'crossoverDb':
      return `the sum of ${measure.crossing ? crossingName(measure.crossing) : ''} dips to ${instead}`;
    default:
      return `the image spreads over ${here} instead of ${there}`;
  }
}

const lineNoun = (word: string | undefined): string =>
  word === 'near miss' ? 'a near miss' : (word ?? '');

const speakers = (count: number | null): string =>
  count === 1 ? '1 speaker' : `${count} speakers`;

/** The weightiest, one of each kind first, so that a pair's left and right do not crowd others out. */
export function weightiest(reasons: readonly Reason[], most = MOST_TOLD): Reason[] {
  const first = reasons.filter(
    ({ measure }, i) => reasons.findIndex((one) => one.measure.kind === measure.kind) === i,
  );
  const rest = reasons.filter((reason) => !first.includes(reason));
  return [...first, ...rest].slice(0, most);
}

function told(reasons: readonly Reason[], tried: boolean, wording: CompareWording): string {
  const words = weightiest(reasons).map((reason) => {
    const unknown = tried && reason.beyond === null ? ' (how sure is not known)' : '';
    return `${reasonWords(reason, wording)}${unknown}`;
  });
  const above = reasons.length > words.length ? ', above all' : '';
  return `${above}: ${words.join('; ')}`;
}

const things = (count: number): string => (count === 1 ? '1 thing' : `${count} things`);

export interface WhyVerdict {
  own: Verdict;
  other: Verdict;
  /** The scores differ by more than is uncertain; `null`: not known. */
  sure: boolean | null;
}

/**
 * Three to five sentences: what speaks for an option and what against it at one seat, what is within
 * the uncertainty, what happens at the other seats, and the verdict by weights.
 * @param tried whether the uncertainty is known already
 */
export function whySentences(
  { option, against, here, elsewhere, alike }: Why,
  seat: string,
  verdict: WhyVerdict | null,
  tried: boolean,
  wording: WhyWording,
): string[] {
  const [own, other] = [wording.option(option), wording.option(against)];
  const at = `At the ${seatName(seat)}`;
  if (alike) return [`Nothing that is told here differs between ${own} and ${other}, at any seat.`];
  const { better, worse } = here;
  const sentences =
    better.length + worse.length === 0
      ? [`${at} nothing speaks clearly for ${own} or for ${other}.`]
      : [
          better.length > 0
            ? `${at} ${own} is better than ${other} in ${things(better.length)}${told(better, tried, wording)}.`
            : `${at} nothing speaks clearly for ${own} rather than ${other}.`,
          worse.length > 0
            ? `It is worse in ${things(worse.length)}${told(worse, tried, wording)}.`
            : 'It is worse in nothing that is told here.',
        ];
  const sure = sureSentence(here, tried);
  if (sure) sentences.push(sure);
  const others = elsewhereSentence(elsewhere, tried);
  if (others) sentences.push(others);
  if (verdict) sentences.push(...verdictSentence(verdict, wording));
  return sentences;
}

function sureSentence({ better, worse, unsure }: Reasons, tried: boolean): string | null {
  if (!tried) return 'How sure these differences are is not worked out yet.';
  const clear = [...better, ...worse];
  const known = clear.length > 0 && clear.every(({ beyond }) => beyond === true);
  const all = clear.length === 1 ? 'This is' : 'All of these are';
  const sure = `${all} larger than what tape, seat and temperature leave uncertain`;
  const rest = unsure.length === 1 ? 'one more is not' : `${unsure.length} more are not`;
  if (unsure.length === 0) return known ? `${sure}.` : null;
  if (known) return `${sure}; ${rest}.`;
  const few = unsure.length === 1 ? 'One difference is' : `${unsure.length} differences are`;
  return `${few} within what a tape can tell.`;
}

/** Of what is known to be clear, once that is known. */
export const clearly = (reasons: readonly Reason[], tried: boolean): Reason[] =>
  reasons.filter(({ beyond }) => !tried || beyond === true);

/** "At the front right seat it is better in 2 things and worse in 3; …" */
function elsewhereSentence(elsewhere: Why['elsewhere'], tried: boolean): string | null {
  const parts = elsewhere.flatMap(({ seat, reasons }) => {
    const [better, worse] = [reasons.better, reasons.worse].map(
      (list) => clearly(list, tried).length,
    ) as [number, number];
    if (better + worse === 0) return [];
    const words =
      better === 0
        ? `worse in ${things(worse)}`
        : worse === 0
          ? `better in ${things(better)}`
          : `better in ${better} and worse in ${worse}`;
    return [`${words} at the ${seatName(seat)}`];
  });
  if (parts.length > 0) return `Elsewhere it is ${parts.join(', ')}.`;
  return elsewhere.length > 0 ? 'At the other seats nothing changes clearly.' : null;
}

/** "By your weights it comes first of the two, 15.92 against 16.80, where less is better; …" */
function verdictSentence({ own, other, sure }: WhyVerdict, wording: WhyWording): string[] {
  const left = unweighedWords([own, other], wording);
  if (own.score === null || other.score === null)
    return left ? ['There is no verdict by your weights: no pair is in all options.'] : [];
  const [here, there] = [own.score, other.score].map((score) => formatNumber(score, 2));
  const verdict =
    here === there || sure === false
      ? `By your weights the two cannot be told apart (${here} and ${there})`
      : `By your weights it comes ${own.score < other.score ? 'first' : 'second'} of the two, ${here} against ${there}, where less is better`;
  const unfit = [own, other].flatMap((one) => {
    const name = wording.option(one.option);
    return [
      ...(one.keepClear > 0
        ? [
            `${speakers(one.keepClear)} of ${name} ${one.keepClear === 1 ? 'stands' : 'stand'} in places kept clear`,
          ]
        : []),
      ...(one.misfits > 0
        ? [`${speakers(one.misfits)} of ${name} ${one.misfits === 1 ? 'does' : 'do'} not fit`]
        : []),
    ];
  });
  const verdicts = [`${verdict}${unfit.length > 0 ? `; but ${unfit.join(', and ')}` : ''}.`];
  if (left)
    verdicts.push(
      `Weighed are only the pairs that every option has, so not ${left}, nor the spread.`,
    );
  return verdicts;
}

/** "the mids of “A”"; empty where all pairs of both are weighed. */
const unweighedWords = (verdicts: readonly Verdict[], wording: WhyWording): string =>
  verdicts
    .filter(({ unweighed }) => unweighed.length > 0)
    .map(
      ({ option, unweighed }) =>
        `the ${inWords(unweighed.map(whoName))} of ${wording.option(option)}`,
    )
    .join(', nor ');

const inWords = (names: readonly string[]): string =>
  names.length < 2
    ? names.join()
    : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
