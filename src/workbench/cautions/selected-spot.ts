import {
  type EvaluateAnswer,
  type KeepClearZone,
  type OptionResult,
  zonesAtSpot,
} from '../../geometry';
import type { Plan } from '../../plan/types';

/** What the cautions have to know of a speaker's spot. */
export interface Spot {
  /** Null for a free point. */
  panel: string | null;
  panelName: string | null;
  /** Keep-clear zones the speaker reaches into. */
  zones: KeepClearZone[];
}

/** The spot of one speaker of an option; `null` where there is no such speaker or no cabin. */
export function spotOf(
  plan: Plan,
  answer: EvaluateAnswer,
  result: OptionResult | null,
  speakerId: string,
): Spot | null {
  if (!answer.ok || !result) return null;
  const speaker = plan.options
    .find((option) => option.id === result.id)
    ?.speakers.find(({ id }) => id === speakerId);
  const placed = result.placed.find((place) => place.speaker === speakerId);
  if (!speaker || !placed) return null;
  const panel = speaker.mount?.panel ?? null;
  return {
    panel,
    panelName: answer.cabin.panels.find(({ id }) => id === panel)?.name ?? null,
    zones: zonesAtSpot(answer.cabin.keepClear, placed, speaker.body, speaker),
  };
}
