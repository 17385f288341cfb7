/** The car itself: body style, drive side, dimensions. */
import { castDraft, type Draft } from 'immer';
import type { PanelMeasure, Side } from '../../geometry';
import { mirrorSeatId } from '../mirror';
import type { Plan } from '../types';
import { mendReferences } from './mend-references';
import { assign, type PlanRecipe, plain } from './recipe';
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

/**
 * What was measured behind a panel: sets the fields given, a `null` among them goes back to what is
 * usual there; `null` for all forgets the panel's measures. One panel at a time: the pockets on the
 * two sides of a car are rarely alike.
 */
export function setPanelMeasure(
  panelId: string,
  fields: { [K in keyof PanelMeasure]?: PanelMeasure[K] | null } | null,
): PlanRecipe {
  return (draft: Draft<Plan>) => {
    const before = draft.cabin.measured ? plain(draft.cabin.measured) : {};
    const own: PanelMeasure = Object.hasOwn(before, panelId) ? { ...before[panelId] } : {};
    if (fields) assign(own, fields);
    const kept = fields !== null && Object.keys(own).length > 0;
    // A panel measured already keeps its place in the list.
    const ids = new Set([...Object.keys(before), panelId]);
    const after = [...ids]
      .filter((id) => id !== panelId || kept)
      .map((id) => [id, id === panelId ? own : before[id]]);
    assign(draft.cabin, { measured: after.length > 0 ? Object.fromEntries(after) : null });
  };
}
