/** What belongs to the plan as a whole: its title, its story, the air, the alignment. */
import { castDraft } from 'immer';
import type { Air, AlignmentInput } from '../../geometry';
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

/** The seat aligned for and the sample rate, Hz: those given. */
export function setAlignment(alignment: Partial<AlignmentInput>): PlanRecipe {
  return (draft) => assign(draft.alignment, castDraft(alignment));
}
