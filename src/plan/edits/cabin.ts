/** The car itself: body style, drive side, dimensions. */
import { castDraft, type Draft } from 'immer';
import type { Side } from '../../geometry';
import { mirrorSeatId } from '../mirror';
import type { Plan } from '../types';
import { mendReferences } from './mend-references';
import { type PlanRecipe, plain } from './recipe';
import { cabinNow } from './surroundings';

/**
 * Another body style. Measured dimensions stay: they are the car's. What the new cabin does not
 * have is mended: a speaker on a missing panel stays where it was as a free point, a seat it has
 * no place for goes, an aim at such a seat stays as a direction.
 */
export function setTemplate(template: string): PlanRecipe {
  return (draft) => {
    if (draft.cabin.template === template) return;
    const before = cabinNow(draft);
    draft.cabin.template = template;
    mendReferences(draft, before);
  };
}

/**
 * Moves the wheel to the other side. What hangs on who drives goes along: adjusted seats, the seats
 * aligned for and aims at seats change sides. Spots stay: they are places in the car.
 */
export function setWheelSide(wheelSide: Side): PlanRecipe {
  return (draft) => {
    if (draft.cabin.wheelSide === wheelSide) return;
    draft.cabin.wheelSide = wheelSide;
    // Seats placed by hand are places in the car as well; with any of those nothing changes sides.
    if (draft.seats?.some((seat) => seat.head)) return;
    for (const seat of draft.seats ?? []) seat.id = mirrorSeatId(seat.id);
    if (draft.alignment.seat !== undefined) {
      draft.alignment.seat = mirrorSeatId(draft.alignment.seat);
    }
    for (const seat of draft.alignment.seats ?? []) seat.id = mirrorSeatId(seat.id);
    for (const { speakers } of draft.options) {
      for (const { aim } of speakers) {
        if (aim?.kind === 'seat') aim.seat = mirrorSeatId(aim.seat);
      }
    }
  };
}

/** Sets a measured dimension, mm or degrees; `null` goes back to the body style's own. */
export function setDimension(id: string, value: number | null): PlanRecipe {
  return (draft) => setDimensions({ [id]: value })(draft);
}

/** Several dimensions as one change. */
export function setDimensions(values: Readonly<Record<string, number | null>>): PlanRecipe {
  return (draft: Draft<Plan>) => {
    const before = draft.cabin.dimensions ? plain(draft.cabin.dimensions) : {};
    const after: Record<string, number> = { ...before };
    for (const [id, value] of Object.entries(values)) {
      if (value === null) delete after[id];
      else after[id] = value;
    }
    if (JSON.stringify(before) === JSON.stringify(after)) return;
    if (Object.keys(after).length === 0) delete draft.cabin.dimensions;
    else draft.cabin.dimensions = castDraft(after);
  };
}
