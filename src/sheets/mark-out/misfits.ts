/** What keeps speakers from fitting where they are planned, in the catalogue's words. */
import type { CabinModel, FitProblem, OptionInput } from '../../geometry';
import { standoffWords } from '../parts/standoff-words';
import { thingName } from '../parts/thing-name';
import type { PrintedWords } from '../words/use-words';

/** Where the problems are. */
export interface MisfitSubject {
  cabin: CabinModel;
  option: OptionInput;
}

/** A sentence each, without those of keep-clear zones: they are told by themselves. */
export function misfitSentences(
  words: PrintedWords,
  problems: readonly FitProblem[],
  { cabin, option }: MisfitSubject,
): string[] {
  const { t, n, names } = words;
  const nameOf = ({ kind, with: id = '' }: FitProblem): string => {
    const speaker = kind === 'speaker' && option.speakers.find((one) => one.id === id);
    if (speaker) return names.speaker(speaker, option.speakers);
    return thingName(cabin, id, words);
  };
  return problems
    .filter(({ hard }) => !hard)
    .map((problem) => {
      const { kind, by } = problem;
      const told = {
        thing: nameOf(problem),
        ring: problem.ofRing ? 'yes' : 'no',
        by:
          by === null
            ? ''
            : kind === 'airspace'
              ? `${n.number(by, by < 1 ? 2 : 1)}\u00a0l`
              : n.length(by, n.unit === 'in' ? 2 : by < 10 ? 1 : 0),
      };
      switch (kind) {
        case 'bore':
          return t('misfit.bore', told);
        case 'ring':
          return by === null
            ? t('misfit.no-ring', told)
            : t('misfit.ring', { by: standoffWords(n, by) });
        case 'speaker':
        case 'obstacle':
        case 'zone':
          return t(by === null ? 'misfit.inside' : 'misfit.into', told);
        case 'airspace':
          return t(by === null ? 'misfit.no-air' : 'misfit.airspace', told);
        default:
          return t(`misfit.${kind}`, told);
      }
    });
}
