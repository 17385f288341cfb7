/** A pocket as the plan has it, with the speakers that stand in it: its airspace, or why none. */
import type { CabinModel } from '../cabin/model';
import type { OptionInput, SealedPocket, SpeakerInput } from '../input';
import { depthOf } from './body';
import { type PocketAnswer, type PocketInput, pocketOf } from './pocket';

/** What is looked at: the option's speakers and the cabin's panels. */
export interface PocketSubject {
  cabin: Pick<CabinModel, 'panels'>;
  option: Pick<OptionInput, 'speakers'>;
}

/** The speakers of the option that are in the pocket, in the pocket's order. */
export const speakersIn = (
  { speakers }: Pick<OptionInput, 'speakers'>,
  pocket: SealedPocket,
): SpeakerInput[] =>
  pocket.speakers.flatMap((id) => speakers.find((speaker) => speaker.id === id) ?? []);

/** The same pocket as the engine's volume wants it; a speaker without a body takes no room. */
export const pocketInput = (
  option: PocketSubject['option'],
  pocket: SealedPocket,
): PocketInput => ({
  outline: pocket.outline,
  depth: pocket.depth,
  lies: pocket.lies ?? 'behind',
  wall: pocket.wall ?? 0,
  speakers: speakersIn(option, pocket).flatMap((speaker) =>
    speaker.body
      ? [
          {
            body: { ...speaker.body, depth: depthOf(speaker) },
            standoff: speaker.mount?.standoff ?? 0,
          },
        ]
      : [],
  ),
});

/**
 * The airspace of a pocket of the plan.
 * @returns the pocket, or one sentence saying why there is none: also where the cabin has no such
 * panel
 */
export function planPocket({ cabin, option }: PocketSubject, pocket: SealedPocket): PocketAnswer {
  const panel = cabin.panels.find(({ id }) => id === pocket.panel);
  if (!panel)
    return {
      ok: false,
      message: `there is no panel ${JSON.stringify(pocket.panel)} in this cabin`,
    };
  return pocketOf(panel, pocketInput(option, pocket));
}
