/** From what is chosen on the sheet to what the engine is asked. */
import type { MapQuantity, MapRequest, SpeakerInput, SpotAim, Stage } from '../../../geometry';
import { isTied } from '../../../plan/edits';
import type { Group } from '../groups';

export type Weights = Readonly<Record<SpotAim, number>>;

export interface MapChoice {
  quantity: MapQuantity;
  /** `null`: the seat in view, whichever that is. */
  seats: readonly string[] | null;
  /** A speaker that stays where it is; `null`: the mirrored twin. */
  partner: string | null;
  /** mm */
  step: number;
  weights: Weights;
  fits: boolean;
}

/** mm: usual is the engine's own. Choices of ours, no source. */
export const STEPS = { fine: 10, usual: 20, coarse: 40 } as const;

export const FIRST_CHOICE: MapChoice = {
  quantity: 'difference',
  seats: null,
  partner: null,
  step: STEPS.usual,
  // As the worked example of the search request weighs them.
  weights: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
  fits: true,
};

/**
 * The speaker of a pair that is tried everywhere: where they are tied both give the same map; where
 * not, the one selected.
 */
export function triedSpeaker(
  option: Parameters<typeof isTied>[0],
  { members }: Group,
  selected: string | null,
): SpeakerInput {
  const chosen = members.find(({ id }) => id === selected);
  const tied = members.length === 2 && isTied(option, members[0].pair);
  return tied ? members[0] : (chosen ?? members[0]);
}

/** What of the choice the option and the cabin still have. */
export function mapRequest(
  { option, cabin }: Pick<Stage, 'option' | 'cabin'>,
  speaker: SpeakerInput,
  choice: MapChoice,
  seatInView: string,
): MapRequest {
  const known = new Set(cabin.seats.map(({ id }) => id));
  const chosen = choice.seats?.filter((id) => known.has(id)) ?? [];
  const { partner, weights } = choice;
  const stands = partner !== speaker.id && option.speakers.some(({ id }) => id === partner);
  return {
    option: option.id,
    speaker: speaker.id,
    quantities: [choice.quantity],
    seats: chosen.length > 0 ? chosen : [seatInView],
    step: choice.step,
    fits: choice.fits,
    weights,
    ...(partner !== null && stands && { partner }),
  };
}

/**
 * Equal for two stages and requests whose maps are the same: where the speaker itself stands, and
 * its twin, does not matter to what is found when it is tried everywhere. Texts and delays do not
 * either.
 */
export function mapKey({ plan, option }: Pick<Stage, 'plan' | 'option'>, request: MapRequest) {
  const tried = option.speakers.find(({ id }) => id === request.speaker);
  const speakers = option.speakers.map((speaker) => {
    const moves =
      speaker.id === request.speaker ||
      (tried?.pair !== undefined && speaker.pair === tried.pair && speaker.id !== request.partner);
    if (!moves) return speaker;
    const { mount, position: _, ...kept } = speaker;
    return { ...kept, standoff: mount?.standoff ?? 0 };
  });
  const { cabin, seats, obstacles, keepClear, air } = plan;
  return JSON.stringify([cabin, seats, obstacles, keepClear, air, speakers, request]);
}
