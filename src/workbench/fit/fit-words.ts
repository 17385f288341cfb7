/** Whether a speaker fits, in words: what is wrong worst first, and what nobody told the model. */
import { type FitProblem, type Panel, type SpeakerInput, stepUp } from '../../geometry';
import { speakerName } from '../../plan/names';
import { formatLength, formatNumber, type LengthUnit, MM_PER_INCH } from '../../plan/units';
import { withArticle } from '../parts/names';

/** `unknown`: nothing is wrong, but its body was not entered. */
export type Verdict = 'fits' | 'unknown' | 'not' | 'zone';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  unknown: 'not known',
  not: 'does not fit',
  zone: 'keep clear',
};

/** A keep-clear zone says more than anything else that is wrong. */
export function verdictOf(speaker: SpeakerInput, problems: readonly FitProblem[]): Verdict {
  if (problems.some(({ hard }) => hard)) return 'zone';
  if (problems.length > 0) return 'not';
  return speaker.body ? 'fits' : 'unknown';
}

/** Keep-clear first, then what has no number since it is wholly wrong, then by how much. */
export function worstFirst(problems: readonly FitProblem[]): FitProblem[] {
  // Litres beside millimetres: airspace is told after what cannot be mounted at all.
  const rank = ({ kind, by, hard }: FitProblem) =>
    hard ? 0 : kind === 'airspace' ? 3 : by === null ? 1 : 2;
  return [...problems].sort((a, b) => rank(a) - rank(b) || (b.by ?? 0) - (a.by ?? 0));
}

/** The engine's sentence in the user's unit; what stands in quotes is a name and stays. */
export function inUnit(sentence: string, unit: LengthUnit): string {
  if (unit === 'mm') return sentence;
  // What is wanted has to be enough when it is typed in.
  const isWanted = sentence.includes('is wanted');
  const told = (mm: number): string =>
    formatLength(isWanted ? stepUp(mm / MM_PER_INCH, 100) * MM_PER_INCH : mm, unit);
  return sentence.replace(/"[^"]*"|(\d+(?:\.\d+)?) mm/g, (whole, mm?: string) =>
    mm === undefined ? whole : told(Number(mm)),
  );
}

/** The engine's sentence as the page says it: in the user's unit, speakers by the page's names. */
export function problemWords(
  { kind, sentence, with: id }: FitProblem,
  unit: LengthUnit,
  among: readonly SpeakerInput[],
): string {
  const other = kind === 'speaker' ? among.find((one) => one.id === id) : undefined;
  const named = other
    ? sentence.replace(/ (into|inside) the .*$/, ` $1 the ${speakerName(other, among)}`)
    : sentence;
  return inUnit(named, unit);
}

/** First letter large, a full stop at its end. */
export const asSentence = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** The sentences of one speaker, worst first. */
export const fitSentences = (
  problems: readonly FitProblem[],
  unit: LengthUnit,
  among: readonly SpeakerInput[],
): string[] =>
  worstFirst(problems).map((problem) => asSentence(problemWords(problem, unit, among)));

/** What the answer rests on that nobody entered or measured. */
export function fitUnknowns(
  speaker: SpeakerInput,
  panel: Panel | null,
  unit: LengthUnit,
  inPocket = false,
): string[] {
  const { body, mount } = speaker;
  const told: string[] = [];
  if (!body)
    told.push('No body is entered: only the middle of its front was looked at, as a point.');
  if (!mount) told.push('It stands at a free point: what holds it there was not looked at.');
  if (!panel || !body) return told;
  const name = withArticle(panel.name);
  const { depthBehind, airspaceBehind, usual } = panel;
  if (depthBehind === null) told.push(`How deep it is behind ${name} is not known.`);
  else if (usual?.depthBehind === undefined)
    told.push(
      `The ${formatLength(depthBehind, unit)} behind ${name} are the usual depth, not measured.`,
    );
  // A pocket has been drawn, and its own sheet tells its litres.
  if (inPocket) return told;
  if (body.airspaceLitres === undefined)
    told.push('How much airspace it wants behind it is not entered.');
  else if (airspaceBehind === null) told.push(`The airspace behind ${name} is not known.`);
  return told;
}

/** "0.3 litres", "25 litres". */
export const litreWords = (litres: number): string =>
  `${formatNumber(litres, 2).replace(/\.?0+$/, '')} ${litres === 1 ? 'litre' : 'litres'}`;
