/** What the selection and the pointer bring to the fore. */
import type { Arrival, SeatResult, SpeakerInput } from '../geometry';
import { type Selection, sessionStore } from '../store';

export type Hovered = { kind: 'speaker' | 'obstacle' | 'seat'; id: string } | null;
type Kind = NonNullable<Selection>['kind'];

/** The id of the chosen thing where it is of this kind. */
export const chosenId = (kind: Kind, selection: Selection): string | null =>
  selection?.kind === kind ? selection.id : null;

/** Chosen or pointed at. */
export function isLookedAt(kind: Kind, id: string, hovered: Hovered): boolean {
  const { selection } = sessionStore.getState();
  return (
    (selection?.kind === kind && selection.id === id) ||
    (hovered?.kind === kind && hovered.id === id)
  );
}

export interface InTheWay {
  /** What stands on the lines of the speakers looked at. */
  blocking: ReadonlySet<string>;
  /** What those lines pass too near, and nothing of the former. */
  grazed: ReadonlySet<string>;
}

/** At 60 Hz a near miss is half a metre wide and takes in most of a cabin: the nearest say it. */
const MOST_GRAZED = 3;

/** What the lines of the chosen speaker and of the one pointed at meet, at the seat in view. */
export function inTheWayOf(arrivals: readonly Arrival[], hovered: Hovered): InTheWay {
  const mine = arrivals.filter(({ speaker }) => isLookedAt('speaker', speaker, hovered));
  const blocking = new Set(mine.flatMap(({ blockedBy }) => blockedBy));
  const grazed = mine.flatMap(({ grazedBy }) => grazedBy.slice(0, MOST_GRAZED));
  return { blocking, grazed: new Set(grazed.filter((id) => !blocking.has(id))) };
}

/**
 * Whose reflections are drawn: those of the chosen speaker; with none chosen, of the one pointed
 * at; with neither, of the option's first pair, so that there is something to see.
 */
export function reflectingArrivals(
  seat: SeatResult | null,
  among: readonly SpeakerInput[],
  hovered: Hovered,
): Arrival[] {
  const arrivals = seat?.arrivals ?? [];
  const { selection } = sessionStore.getState();
  const chosen = selection?.kind === 'speaker' ? selection.id : null;
  const over = hovered?.kind === 'speaker' ? hovered.id : null;
  for (const id of [chosen, over]) {
    const one = arrivals.find(({ speaker }) => speaker === id);
    if (one) return [one];
  }
  const pair = among.find((speaker) => speaker.pair !== undefined)?.pair;
  const members = new Set(
    among.filter((speaker) => speaker.pair === pair && pair !== undefined).map(({ id }) => id),
  );
  return arrivals.filter(({ speaker }) => members.has(speaker));
}

/** Every panel that throws some of these back. */
export const panelsOf = (arrivals: readonly Arrival[]): ReadonlySet<string> =>
  new Set(
    arrivals.flatMap(({ reflections }) =>
      reflections.flatMap(({ panel, second }) => (second ? [panel, second.panel] : [panel])),
    ),
  );
