import { crossingProblem, crossingsOf, type OptionInput, polaritiesOf } from '../../../geometry';
import { pairName } from '../../../plan/names';
import { formatFrequency } from '../../../plan/units';

export interface UsualPolarity {
  inverted: boolean;
  /** Which crossovers decide it, in words; `null` where the speaker's pair is in none. */
  because: string | null;
}

/** How a speaker's poles would be if the plan did not say, and what decides that. */
export function usualPolarity(option: OptionInput, speakerId: string): UsualPolarity {
  const speakers = option.speakers.map((speaker) => {
    const { inverted: _, ...unsaid } = speaker;
    return speaker.id === speakerId ? unsaid : speaker;
  });
  const pair = speakers.find(({ id }) => id === speakerId)?.pair;
  const below = crossingsOf(option)
    .map(({ crossover }) => crossover)
    .filter((crossover) => crossover.above === pair && !crossingProblem(crossover));
  const words = below.map(
    ({ below: lower, family, order, frequencyHz }) =>
      `${family === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley'} order ${order} above the ` +
      `${pairName(lower, speakers)} at ${formatFrequency(Math.round(frequencyHz))}`,
  );
  return {
    inverted: polaritiesOf({ ...option, speakers }).get(speakerId) ?? false,
    because: words.length > 0 ? words.join(', ') : null,
  };
}
