import {
  type CrossoverFamily,
  crossingProblem,
  crossingsOf,
  type OptionInput,
  type SpeakerInput,
} from '../geometry';

/** One end of what a channel plays. */
export interface ChannelFilter {
  family: CrossoverFamily;
  /** 6.02 dB per octave each. */
  order: number;
  frequencyHz: number;
  /** True where the plan lists none and this one was proposed from the bands. */
  proposed: boolean;
}

export interface ChannelFilters {
  /** Towards the pair below it; `null`: none is known. */
  highPass: ChannelFilter | null;
  /** Towards the pair above it. */
  lowPass: ChannelFilter | null;
}

export const FAMILY_WORDS: Readonly<Record<CrossoverFamily, string>> = {
  butterworth: 'Butterworth',
  'linkwitz-riley': 'Linkwitz-Riley',
};

/**
 * The filters of each channel by the option's hand-overs, listed or proposed; those that cannot be
 * are left out. Of several at one end the one that counts is nearest the middle of the band.
 */
export function filtersOf(option: OptionInput): (speaker: SpeakerInput) => ChannelFilters {
  const crossings = crossingsOf(option).filter(({ crossover }) => !crossingProblem(crossover));
  const filters = crossings.map(({ crossover, proposed }) => {
    const { below, above, family, order, frequencyHz } = crossover;
    return { below, above, filter: { family, order, frequencyHz, proposed } };
  });
  return ({ pair }) => {
    if (pair === undefined) return { highPass: null, lowPass: null };
    // Crossings stand by rising frequency.
    const high = filters.filter(({ above }) => above === pair).at(-1);
    const low = filters.find(({ below }) => below === pair);
    return { highPass: high?.filter ?? null, lowPass: low?.filter ?? null };
  };
}

/** "Linkwitz-Riley order 4 at 2500 Hz"; "none". */
export function filterWords(filter: ChannelFilter | null): string {
  if (!filter) return 'none';
  const { family, order, frequencyHz } = filter;
  return `${FAMILY_WORDS[family]} order ${order} at ${Number(frequencyHz.toFixed(1))} Hz`;
}
