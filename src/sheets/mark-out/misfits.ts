/** What keeps speakers from fitting where they are planned, in the catalogue's words. */
import {
  type CabinModel,
  createFitter,
  type FitProblem,
  type OptionInput,
  type PlacedSpeaker,
  type StandingSpeaker,
} from '../../geometry';
import { standoffWords } from '../parts/standoff-words';
import type { PrintedWords } from '../words/use-words';

export interface MisfitSubject {
  cabin: CabinModel;
  option: OptionInput;
  placed: readonly PlacedSpeaker[];
}

/** Everything that keeps each speaker of an option from fitting, by its id. Keep-clear zones too. */
export function misfitsOf({ cabin, option, placed }: MisfitSubject): Map<string, FitProblem[]> {
  const standing = option.speakers.flatMap((speaker): StandingSpeaker[] => {
    const place = placed.find((one) => one.speaker === speaker.id);
    return place ? [{ speaker, placed: place }] : [];
  });
  const fitter = createFitter(cabin, standing, option);
  return new Map(
    standing.map(({ speaker, placed: place }) => [speaker.id, fitter(speaker, place)]),
  );
}

/** Of its ring rather than of the speaker itself, as the engine's sentence says. */
const isOfRing = ({ sentence }: FitProblem): boolean => sentence.startsWith('its ring ');

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
    const obstacle = cabin.obstacles.find((one) => one.id === id);
    if (obstacle) return names.obstacle(obstacle);
    return names.panel(cabin.panels.find((one) => one.id === id) ?? id);
  };
  return problems
    .filter(({ hard }) => !hard)
    .map((problem) => {
      const { kind, by } = problem;
      const told = {
        thing: nameOf(problem),
        ring: isOfRing(problem) ? 'yes' : 'no',
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
