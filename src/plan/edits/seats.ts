/** Who listens, and how they sit. */
import { castDraft } from 'immer';
import type { SeatInput } from '../../geometry';
import { mendReferences } from './mend-references';
import { assign, type PlanRecipe, plain } from './recipe';
import { cabinNow } from './surroundings';

export type SeatFields = {
  [K in keyof Omit<SeatInput, 'id'>]?: SeatInput[K] | null;
};

/**
 * Changes how one seat stands; `null` takes a field away. While the plan lists no seats it means
 * all of the cabin's, so `allSeatIds` (the ids the engine answered) are listed first.
 */
export function changeSeat(
  seatId: string,
  fields: SeatFields,
  allSeatIds: readonly string[],
): PlanRecipe {
  return (draft) => {
    if (!draft.seats || draft.seats.length === 0) draft.seats = allSeatIds.map((id) => ({ id }));
    const seat = draft.seats.find(({ id }) => id === seatId);
    if (seat) assign(seat, castDraft(fields));
  };
}

/**
 * Which seats listen, in this order. Seats that stay keep how they stand. `allSeatIds`, when
 * given and equal to `ids`, leaves an unadjusted list empty, which means the same.
 */
export function setSeats(ids: readonly string[], allSeatIds: readonly string[] = []): PlanRecipe {
  return (draft) => {
    const before = cabinNow(draft);
    const known = new Map((draft.seats ?? []).map((seat) => [seat.id, plain(seat) as SeatInput]));
    const seats = [...new Set(ids)].map((id): SeatInput => known.get(id) ?? { id });
    const asDerived =
      seats.every((seat) => Object.keys(seat).length === 1) &&
      seats.length === allSeatIds.length &&
      seats.every((seat, i) => seat.id === allSeatIds[i]);
    const next = asDerived ? [] : seats;
    if (JSON.stringify(next) === JSON.stringify(draft.seats ?? [])) return;
    draft.seats = castDraft(next);
    mendReferences(draft, before);
  };
}
