import type { FitProblem, SpeakerInput } from '../../geometry';
import { speakerName } from '../../plan/names';
import type { LengthUnit } from '../../plan/units';
import { asSentence, problemWords, type Verdict, verdictOf, worstFirst } from './fit-words';

/** What does not fit in a pair, or of a speaker without a twin. */
export interface GroupFit {
  verdict: Extract<Verdict, 'not' | 'zone'>;
  /** "left", "left and right"; empty where the speaker has no side to tell. */
  who: string;
  /** "does not fit", "do not fit", "in a keep-clear zone". */
  what: string;
  /** Those it is said of; one at least. */
  meant: readonly SpeakerInput[];
  /** The worst of it: "4 mm too deep for the left A-pillar". */
  worst: string;
}

/** `null` where nothing is wrong with any of them. */
export function groupFit(
  members: readonly SpeakerInput[],
  problemsOf: (id: string) => readonly FitProblem[],
  unit: LengthUnit,
  among: readonly SpeakerInput[],
): GroupFit | null {
  const wrong = members
    .map((speaker) => ({ speaker, problems: problemsOf(speaker.id) }))
    .filter(({ problems }) => problems.length > 0);
  const [first] = wrong;
  if (!first) return null;
  const inZone = ({ speaker, problems }: (typeof wrong)[number]) =>
    verdictOf(speaker, problems) === 'zone';
  const told = wrong.find(inZone) ?? first;
  const zone = inZone(told);
  // Those in a zone by themselves: a cross for the other one is in its own details.
  const meant = zone ? wrong.filter(inZone) : wrong;
  const sides = meant.flatMap(({ speaker }) => speaker.side ?? []);
  const [worst] = worstFirst(told.problems) as [FitProblem];
  return {
    verdict: zone ? 'zone' : 'not',
    who: sides.join(' and '),
    what: zone ? 'in a keep-clear zone' : meant.length > 1 ? 'do not fit' : 'does not fit',
    meant: meant.map(({ speaker }) => speaker),
    worst: problemWords(worst, unit, among),
  };
}

/** "Left mid does not fit: 4 mm too deep for the left A-pillar." */
export function groupSentence(
  { verdict, who, what, worst, meant }: GroupFit,
  among: readonly SpeakerInput[],
): string {
  const name = speakerName(meant[0] as SpeakerInput, among).replace(/^(left|right) /, '');
  const verb = verdict !== 'zone' ? '' : meant.length > 1 ? 'are ' : 'is ';
  return asSentence(`${who ? `${who} ` : ''}${name} ${verb}${what}: ${worst}`);
}
