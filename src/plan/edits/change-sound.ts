/** What a speaker or a pair sounds like: crossovers, responses, polarity. */
import { castDraft } from 'immer';
import type { CrossoverInput, DriveUnit, OffAxisResponse } from '../../geometry';
import { assign, findOption, findSpeaker, type PlanRecipe, plain, tiedTwin } from './recipe';

export type CrossoverFields = Omit<CrossoverInput, 'below' | 'above'>;

/**
 * How one pair hands over to another: family, order, frequency in Hz. `null` takes it out of the
 * plan, which then has the one proposed from the bands again. Two pairs have one crossover: the
 * same two the other way round are replaced.
 */
export function setCrossover(
  optionId: string,
  below: string,
  above: string,
  fields: CrossoverFields | null,
): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    const has = (pair: string) => option?.speakers.some((speaker) => speaker.pair === pair);
    if (!option || below === above || !has(below) || !has(above)) return;
    const crossovers = [...(plain(option.crossovers ?? []) as CrossoverInput[])];
    const at = crossovers.findIndex(
      (one) =>
        (one.below === below && one.above === above) ||
        (one.below === above && one.above === below),
    );
    if (!fields) {
      if (at >= 0) crossovers.splice(at, 1);
    } else {
      const { family, order, frequencyHz } = fields;
      // What a file says beyond that is kept.
      const next = { ...crossovers[at], below, above, family, order, frequencyHz };
      crossovers.splice(at < 0 ? crossovers.length : at, 1, next);
    }
    assign(option, { crossovers: crossovers.length > 0 ? castDraft(crossovers) : null });
  };
}

/** Measured off-axis responses of a speaker and its tied twin; `null`: a piston again. */
export function setResponses(
  optionId: string,
  speakerId: string,
  responses: readonly OffAxisResponse[] | null,
): PlanRecipe {
  const given = responses && responses.length > 0 ? responses : null;
  return forBoth(optionId, speakerId, { responses: given });
}

/**
 * Whether the poles of a speaker and its tied twin are swapped; `null`: as is usual for their
 * crossovers.
 */
export function setPolarity(
  optionId: string,
  speakerId: string,
  inverted: boolean | null,
): PlanRecipe {
  return forBoth(optionId, speakerId, { inverted });
}

/** fs, Qts and Vas of a speaker and its tied twin; `null` takes them away. */
export function setSmallSignal(
  optionId: string,
  speakerId: string,
  smallSignal: DriveUnit | null,
): PlanRecipe {
  return forBoth(optionId, speakerId, { smallSignal });
}

function forBoth(
  optionId: string,
  speakerId: string,
  fields: {
    responses?: readonly OffAxisResponse[] | null;
    inverted?: boolean | null;
    smallSignal?: DriveUnit | null;
  },
): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const twin = tiedTwin(found.option, found.speaker);
    for (const one of twin ? [found.speaker, twin] : [found.speaker])
      assign(one, castDraft(fields));
  };
}
