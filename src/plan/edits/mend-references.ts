/** Keeps a plan whole when something others refer to goes. */
import { castDraft, type Draft } from 'immer';
import type { Aim, CabinInput, CabinModel, SeatWeight, SpeakerInput } from '../../geometry';
import type { Plan, PlanOption, ReadingEnd } from '../types';
import { assign, plain, positiveZeros } from './recipe';
import { cabinNow, cabinOf, placedIn } from './surroundings';

/**
 * After a change of the cabin or its seats: seats the cabin has no place for go, then speakers on
 * missing panels stand free where they stood in `before`, aims at missing seats become directions,
 * an alignment for a missing seat is for the first one, and one over several goes without it.
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
  const listed = draft.alignment.seats;
  const left = listed?.filter(({ id }) => seats.has(id));
  if (left && left.length !== listed?.length) alignOver(draft, left);
}

/** The seats to find a compromise over; with none of them the alignment is for one seat again. */
export function alignOver({ alignment }: Draft<Plan>, seats: readonly SeatWeight[]): void {
  if (seats.length === 0) assign(alignment, { by: null, seats: null });
  else assign(alignment, { seats: castDraft(seats.map((seat) => plain(seat))) });
}

/** After speakers left or changed pairs: forgets what was said of pairs that are no more. */
export function mendPairs(option: Draft<PlanOption>): void {
  const pairs = new Set(option.speakers.map(({ pair }) => pair));
  const untied = option.untied?.filter((pair) => pairs.has(pair));
  if (untied && untied.length !== option.untied?.length) {
    assign(option, { untied: untied.length > 0 ? untied : null });
  }
  const crossovers = option.crossovers?.filter(
    ({ below, above }) => pairs.has(below) && pairs.has(above),
  );
  if (!crossovers || crossovers.length === option.crossovers?.length) return;
  if (crossovers.length > 0) option.crossovers = crossovers;
  else delete option.crossovers;
}

/** After speakers left: they are in no pocket any more. The pockets stay, drawn as they are. */
export function mendPockets(option: Draft<PlanOption>): void {
  const ids = new Set(option.speakers.map(({ id }) => id));
  for (const pocket of option.pockets ?? []) {
    const left = pocket.speakers.filter((id) => ids.has(id));
    if (left.length !== pocket.speakers.length) pocket.speakers = left;
  }
}

/** After speakers left: what was measured of them says nothing any more. */
export function mendMeasured(option: Draft<PlanOption>): void {
  const ids = new Set(option.speakers.map(({ id }) => id));
  const known = (end: ReadingEnd): boolean => end.kind !== 'speaker' || ids.has(end.speaker);
  const measured = option.measured?.filter(({ speaker }) => ids.has(speaker));
  if (measured?.length === 0) delete option.measured;
  else if (measured && measured.length !== option.measured?.length) option.measured = measured;
  const readings = option.readings?.filter(({ from, to }) => known(from) && known(to));
  if (readings?.length === 0) delete option.readings;
  else if (readings && readings.length !== option.readings?.length) option.readings = readings;
}

/** What was said of the pair `from` is said of `to` from now on; its speakers are left alone. */
export function renamePair(option: Draft<PlanOption>, from: string, to: string): void {
  const name = (pair: string): string => (pair === from ? to : pair);
  if (option.untied) option.untied = option.untied.map(name);
  for (const crossover of option.crossovers ?? []) {
    crossover.below = name(crossover.below);
    crossover.above = name(crossover.above);
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
