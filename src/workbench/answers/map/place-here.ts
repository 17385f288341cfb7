import type { GridSpot, Side, SpeakerInput } from '../../../geometry';
import { isTied, mountSpeaker } from '../../../plan/edits';
import { speakerName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { planStore } from '../../../store';

/** Who would stand at a spot of that side: the speaker tried, or its twin on the other side. */
export function whoStands(
  option: Pick<PlanOption, 'speakers'>,
  speaker: SpeakerInput,
  side: Side | null,
): SpeakerInput {
  if (!speaker.pair || !side || speaker.side === side) return speaker;
  const { id, pair } = speaker;
  return option.speakers.find((s) => s.pair === pair && s.id !== id && s.side === side) ?? speaker;
}

/** True where its twin goes along as its mirror image. */
export function goesAlong(option: PlanOption, speaker: SpeakerInput): boolean {
  const { id, pair } = speaker;
  return isTied(option, pair) && option.speakers.some((s) => s.pair === pair && s.id !== id);
}

/** Puts it there: one step to undo; a tied twin goes along. */
export function placeHere(
  option: PlanOption,
  speaker: SpeakerInput,
  { panel, u, v }: GridSpot,
  panelName: string,
): void {
  const name = speakerName(speaker, option.speakers);
  planStore.edit(
    `move ${name} to the ${panelName}`,
    mountSpeaker(option.id, speaker.id, { panel, u, v }),
  );
}
