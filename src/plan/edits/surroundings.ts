/** What an edit may have to know of the cabin the plan stands for. */
import { current, type Draft, isDraft } from 'immer';
import {
  buildCabin,
  type CabinModel,
  type PlacedSpeaker,
  placeSpeaker,
  type SpeakerInput,
} from '../../geometry';
import type { Plan } from '../types';
import { plain } from './recipe';

type Cabin = Pick<Plan, 'cabin' | 'seats' | 'obstacles' | 'keepClear'>;

let last: { of: Cabin; cabin: CabinModel | null } | null = null;

/**
 * The cabin of the plan as the draft stands now. Where the engine refuses its dimensions, the body
 * style's own: which panels and seats there are does not hang on them. Null where even that is
 * refused. Rebuilt only when cabin, seats or obstacles have changed since the last question, so a
 * drag may ask each time.
 */
export function cabinNow(draft: Draft<Plan>): CabinModel | null {
  const plan = (isDraft(draft) ? current(draft) : draft) as Plan;
  const cabin = cabinOf(plan);
  if (cabin || !plan.cabin.dimensions) return cabin;
  return cabinOf({ ...plan, cabin: { ...plan.cabin, dimensions: undefined } });
}

export function cabinOf(plan: Cabin): CabinModel | null {
  const { cabin, seats, obstacles, keepClear } = plan;
  const known =
    last?.of.cabin === cabin &&
    last.of.seats === seats &&
    last.of.obstacles === obstacles &&
    last.of.keepClear === keepClear;
  if (last && known) return last.cabin;
  const answer = buildCabin(plan);
  last = {
    of: { cabin, seats, obstacles, keepClear },
    cabin: answer.ok ? answer.cabin : null,
  };
  return last.cabin;
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
