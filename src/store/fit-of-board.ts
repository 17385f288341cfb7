/**
 * Which speakers fit, and what the pillars hide: worked out once for each answer of the engine and
 * asked for by page and drawing alike, also while a drag runs. Not part of the store's own door, so
 * that it comes with what asks for it.
 */
import {
  type CabinModel,
  createFitter,
  type FitProblem,
  type Fitter,
  type OptionInput,
  type OptionResult,
  type PillarView,
  pillarViews,
  type StandingSpeaker,
} from '../geometry';

/** An option with the answer that belongs to it. */
export interface FitBoard {
  cabin: CabinModel;
  option: OptionInput;
  result: OptionResult;
}

interface Known {
  cabin: CabinModel;
  option: OptionInput;
  standing: readonly StandingSpeaker[];
  fitter: Fitter;
  problems: Map<string, readonly FitProblem[]>;
  views: readonly PillarView[] | null;
}

const known = new WeakMap<OptionResult, Known>();

function knownOf({ cabin, option, result }: FitBoard): Known {
  let one = known.get(result);
  // A body may change without any arrival doing so, and then the answer stays the same object.
  if (one?.cabin !== cabin || one.option !== option) {
    const standing = option.speakers.flatMap((speaker): StandingSpeaker[] => {
      const placed = result.placed.find((place) => place.speaker === speaker.id);
      return placed ? [{ speaker, placed }] : [];
    });
    const fitter = createFitter(cabin, standing, option);
    one = { cabin, option, standing, fitter, problems: new Map(), views: null };
    known.set(result, one);
  }
  return one;
}

/** What keeps one speaker from fitting where it stands; empty: nothing the model knows of. */
export function problemsOf(board: FitBoard, speakerId: string): readonly FitProblem[] {
  const { standing, fitter, problems } = knownOf(board);
  let found = problems.get(speakerId);
  if (!found) {
    const asked = standing.find(({ speaker }) => speaker.id === speakerId);
    found = asked ? fitter(asked.speaker, asked.placed) : [];
    problems.set(speakerId, found);
  }
  return found;
}

/** What the two front pillars hide, the left one first. */
export function viewsOf(board: FitBoard): readonly PillarView[] {
  const one = knownOf(board);
  one.views ??= pillarViews({
    cabin: board.cabin,
    option: board.option,
    placed: board.result.placed,
  });
  return one.views;
}
