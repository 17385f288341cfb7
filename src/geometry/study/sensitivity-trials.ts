/**
 * The trials behind a sensitivity: paths with something a little off, worked out anew. Only what a
 * path needs of the whole answer (no ears, reflections or levels, no other seat), which is some ten
 * times less; a test holds them to the evaluator's.
 */
import { buildCabin } from '../cabin/build-cabin';
import type { CabinModel, Panel, Seat } from '../cabin/model';
import type { SpeakerInput } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import { buildWayFinder, type WayFinder } from '../paths/way-round';
import { spotOf } from '../stage/arrivals';
import { placeSpeaker } from '../stage/place';
import { distance } from '../vector';
import { slideSeat } from './slide-seat';
import { arrivalOf, noSeat, type Stage, seatResultOf } from './stage';
import { type Along, stepAlong } from './step-along';

/** What is tried, both ways: a careless hole, a notch or so of a seat rail, a mild and a warm day. */
export const SENSITIVITY_STEP = { mm: 10, temperatureC: 10 } as const;

export type Sign = 1 | -1;

/** A path at the seat, mm, or why there is none. */
export type Length = { path: number } | { why: string };
export type Lengths = (speaker: string) => Length;

/** The cabin as it is or with a seat moved, ready to be asked for paths to one seat. */
export interface Trial {
  panels: ReadonlyMap<string, Panel>;
  seats: ReadonlyMap<string, Seat>;
  seat: Seat;
  caster: Caster;
  ways: WayFinder;
}

export function trialIn(cabin: CabinModel, seat: Seat): Trial {
  const caster = buildCaster(cabin.panels, cabin.obstacles);
  return {
    panels: new Map(cabin.panels.map((panel) => [panel.id, panel])),
    seats: new Map(cabin.seats.map((one) => [one.id, one])),
    seat,
    caster,
    ways: buildWayFinder(cabin.panels, cabin.obstacles, caster),
  };
}

const noWay = (speaker: string): string => `no way round what blocks "${speaker}" is known`;

/** The paths of the answer as it stands. */
export function lengthsNow(stage: Stage, seatId: string): Lengths {
  const seat = seatResultOf(stage, seatId);
  return (speaker) => {
    const arrival = seat && arrivalOf(seat, speaker);
    if (!arrival) return { why: `"${speaker}" has no arrival here` };
    const { line, way, path, reasons } = arrival;
    // The straight length of a blocked line is no path, and its changes mean nothing.
    if (line === 'blocked' && way.length <= 2) return { why: reasons?.[0] ?? noWay(speaker) };
    return { path };
  };
}

/** The paths of these speakers to the trial's seat. */
export function lengthsOf(speakers: readonly SpeakerInput[], trial: Trial): Lengths {
  const found = new Map(speakers.map((speaker) => [speaker.id, lengthOf(speaker, trial)]));
  return (speaker) => found.get(speaker) ?? { why: `"${speaker}" was not tried` };
}

function lengthOf({ aim: _, ...speaker }: SpeakerInput, trial: Trial): Length {
  const { panels, seats, seat, caster, ways } = trial;
  const placement = placeSpeaker(speaker, panels, seats);
  if (!placement.ok) return { why: placement.error.message };
  const { position } = placement.placed;
  const spot = spotOf(speaker, placement.placed);
  if (caster.crossings(position, seat.head, seat.id, spot).length === 0) {
    return { path: distance(position, seat.head) };
  }
  const round = ways.wayRound(position, seat.head, seat.id, spot);
  return round ? { path: round.length } : { why: noWay(speaker.id) };
}

/** The paths with every mounted speaker moved along its panel. */
export function shifted(
  speakers: readonly SpeakerInput[],
  trial: Trial,
  along: Along,
  sign: Sign,
): Lengths {
  const stuck = new Map<string, string>();
  const moved = speakers.flatMap((speaker): SpeakerInput[] => {
    const { id, mount } = speaker;
    const panel = mount && trial.panels.get(mount.panel);
    const place = panel && stepAlong(panel.patch, mount, along, sign * SENSITIVITY_STEP.mm);
    if (place) return [{ ...speaker, mount: { ...mount, ...place } }];
    const end = `${along} = ${sign > 0 ? 1 : 0}`;
    stuck.set(
      id,
      panel
        ? `"${id}" is within ${SENSITIVITY_STEP.mm} mm of the edge ${end}`
        : `"${id}" stands free, on no panel`,
    );
    return [];
  });
  const lengths = lengthsOf(moved, trial);
  return (speaker) => {
    const why = stuck.get(speaker);
    return why === undefined ? lengths(speaker) : { why };
  };
}

/** The paths with the seat slid rearward, or forward; a head placed by hand goes along X. */
export function slid(
  speakers: readonly SpeakerInput[],
  { plan, cabin }: Stage,
  seat: Seat,
  sign: Sign,
): Lengths {
  const none = (why: string) => () => ({ why });
  const moved = slideSeat(plan, cabin, seat, sign * SENSITIVITY_STEP.mm);
  if ('why' in moved) return none(moved.why);
  const answer = buildCabin({ ...plan, seats: moved.seats });
  if (!answer.ok) return none(answer.error.message);
  const there = answer.cabin.seats.find(({ id }) => id === seat.id);
  return there ? lengthsOf(speakers, trialIn(answer.cabin, there)) : none(noSeat(seat.id));
}
