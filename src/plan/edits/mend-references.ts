/** Keeps a plan whole when something others refer to goes. */
import { castDraft, type Draft } from 'immer';
import type { Aim, CabinInput, CabinModel, SpeakerInput } from '../../geometry';
import type { Plan } from '../types';
import { assign, plain, positiveZeros } from './recipe';
import { cabinNow, cabinOf, placedIn } from './surroundings';

/**
 * After a change of the cabin or its seats: seats the cabin has no place for go, then speakers on
 * missing panels stand free where they stood in `before`, aims at missing seats become directions,
 * and an alignment for a missing seat is for the first one.
 */
export function mendReferences(draft: Draft<Plan>, before: CabinModel | null): void {
  let cabin = cabinNow(draft);
  if (!cabin && draft.seats && draft.seats.length > 0) {
    // Perhaps it is the list of seats that does not fit: ask for the cabin's own.
    const bare = { ...(plain(draft.cabin) as CabinInput), dimensions: undefined };
    const own = cabinOf({ cabin: bare, seats: [] });
    const ids = new Set(own?.seats.map(({ id }) => id));
    draft.seats = draft.seats.filter((seat) => seat.head !== undefined || ids.has(seat.id));
    cabin = cabinNow(draft);
  }
  if (!cabin) return;
  const panels = new Set(cabin.panels.map(({ id }) => id));
  const seats = new Set(cabin.seats.map(({ id }) => id));
  for (const option of draft.options) {
    for (const speaker of option.speakers) mendSpeaker(speaker, panels, seats, before);
  }
  const aligned = draft.alignment.seat;
  if (aligned !== undefined && !seats.has(aligned)) {
    const [first] = cabin.seats;
    if (first) draft.alignment.seat = first.id;
    else delete draft.alignment.seat;
  }
}

function mendSpeaker(
  speaker: Draft<SpeakerInput>,
  panels: ReadonlySet<string>,
  seats: ReadonlySet<string>,
  before: CabinModel | null,
): void {
  const offPanel = speaker.mount !== undefined && !panels.has(speaker.mount.panel);
  const offSeat = speaker.aim?.kind === 'seat' && !seats.has(speaker.aim.seat);
  if (!offPanel && !offSeat) return;
  const placed = placedIn(before, speaker);
  if (!placed) return;
  const alongNormal = speaker.aim === undefined || speaker.aim.kind === 'normal';
  if (offSeat || (offPanel && alongNormal)) {
    const aim: Aim | undefined = placed.axis
      ? { kind: 'direction', direction: positiveZeros(placed.axis) }
      : undefined;
    assign(speaker, { aim: aim && castDraft(aim) });
  }
  if (offPanel) assign(speaker, { position: castDraft(placed.position), mount: null });
}
