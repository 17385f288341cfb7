/** What an edit may have to know of the cabin the plan stands for. */
import { current, type Draft, isDraft } from 'immer';
import {
  type CabinModel,
  createEvaluator,
  mix,
  type PanelInput,
  type PlacedSpeaker,
  placeSpeaker,
  type SpeakerInput,
  type Vec3,
} from '../../geometry';
import type { Plan } from '../types';
import { plain } from './recipe';

const evaluate = createEvaluator();

/**
 * The cabin of the plan as the draft stands now; null where the engine refuses it. Rebuilt only
 * when cabin, seats or obstacles have changed since the last question, so a drag may ask each time.
 */
export function cabinNow(draft: Draft<Plan>): CabinModel | null {
  return cabinOf((isDraft(draft) ? current(draft) : draft) as Plan);
}

export function cabinOf(plan: Plan): CabinModel | null {
  const { sampleRateHz } = plan.alignment;
  const answer = evaluate({ ...plan, options: [], alignment: { sampleRateHz } });
  return answer.ok ? answer.cabin : null;
}

/** Where the speaker stands in that cabin and which way it looks; null where it cannot be told. */
export function placedIn(
  cabin: CabinModel | null,
  speaker: Draft<SpeakerInput> | SpeakerInput,
): PlacedSpeaker | null {
  if (!cabin) return null;
  const answer = placeSpeaker(
    plain(speaker) as SpeakerInput,
    new Map(cabin.panels.map((panel) => [panel.id, panel])),
    new Map(cabin.seats.map((seat) => [seat.id, seat])),
  );
  return answer.ok ? answer.placed : null;
}

/** The point at u, v of a panel given by its corners, mm. */
export function pointOnGiven({ corners }: PanelInput, u: number, v: number): Vec3 {
  return mix(mix(corners[0], corners[1], u), mix(corners[3], corners[2], u), v);
}
