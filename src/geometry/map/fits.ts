/** Where the map and the search ask whether a speaker fits: the one file that knows whom. */
import type { CabinModel } from '../cabin/model';
import { createFitter, type FitProblem, type StandingSpeaker } from '../fit';
import type { OptionInput, SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';

export type Standing = StandingSpeaker;

/** Why a speaker cannot stand at a spot; a hard one no search may pass over. */
export type Misfit = Pick<FitProblem, 'sentence' | 'hard'>;

/** Made ready once, cheap for each spot. */
export interface SpotFitter {
  /** @param beside speakers that move along; empty answer: it fits, as far as is known */
  (speaker: SpeakerInput, placed: PlacedSpeaker, beside?: readonly Standing[]): Misfit[];
  /** Stops at the first thing that keeps it from it. */
  fits(speaker: SpeakerInput, placed: PlacedSpeaker, beside?: readonly Standing[]): boolean;
  /** Whether its own body reaches into a keep-clear zone: the hard misfits alone. */
  isKeptClear(speaker: SpeakerInput, placed: PlacedSpeaker): boolean;
}

/**
 * @param standing the speakers that stay where they are
 * @param option with the pockets drawn in it: on a pocket's panel its speakers have its airspace
 */
export type MakeFitter = (
  cabin: CabinModel,
  standing: readonly Standing[],
  option: Pick<OptionInput, 'speakers' | 'pockets'>,
) => SpotFitter;

export const createSpotFitter: MakeFitter = createFitter;
