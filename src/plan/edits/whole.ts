/** What belongs to the plan as a whole: its title, its story, the air, the alignment. */
import { castDraft } from 'immer';
import type { Air, AlignmentInput, SeatWeight } from '../../geometry';
import { alignOver } from './mend-references';
import { assign, type PlanRecipe } from './recipe';

export function setTitle(title: string): PlanRecipe {
  return (draft) => {
    draft.title = title;
  };
}

/** The user's own sentences; an empty text takes them away. */
export function setStory(story: string): PlanRecipe {
  return (draft) => assign(draft, { story: story === '' ? null : story });
}

/** Temperature, °C, humidity, %, pressure, kPa: those given. */
export function setAir(air: Partial<Air>): PlanRecipe {
  return (draft) => assign(draft.air, air);
}

/** The seat or seats aligned for and the sample rate, Hz: those given; `undefined` takes one away. */
export function setAlignment(alignment: Partial<AlignmentInput>): PlanRecipe {
  return (draft) => assign(draft.alignment, castDraft(alignment));
}

/**
 * Which seats a compromise is over and how much each counts, in this order. A seat without weight
 * does not count; with none left the alignment is for one seat again.
 */
export function setSeatWeights(seats: readonly SeatWeight[]): PlanRecipe {
  return (draft) => {
    const counting = new Map(seats.map((seat) => [seat.id, seat]));
    alignOver(
      draft,
      [...counting.values()].filter(({ weight }) => weight > 0),
    );
  };
}
