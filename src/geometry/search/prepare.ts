import type { Refusal, Seat } from '../cabin/model';
import type { OptionInput, PlanInput, Role, SeatWeight, Side, SpeakerInput } from '../input';
import { type ReadyAim, readyAim } from '../map/aim-rule';
import { twinOf } from '../map/beside';
import { createSpotFitter, type MakeFitter, type SpotFitter, type Standing } from '../map/fits';
import { type GridSpot, gridSize, gridSpot, panelGrid, twinPanel } from '../map/panel-grid';
import { SPOT_AIMS, type SpotAim } from '../map/penalty';
import { type SpotRoom, spotRoom } from '../map/spot-room';
import { spotSide } from '../map/spot-side';
import type { Mover } from '../map/stand';
import { pairsOf } from '../stage/pairs';
import { placeSpeaker } from '../stage/place';
import type { PairRequest, SearchLimits, SearchRequest, SharedRequest } from './types';
import { type ReadyView, readyView } from './view-limit';

export const USUAL_STEP = 20;
export const USUAL_ANSWERS = 5;
export const USUAL_APART = 80;
/** More spots or combinations than this are not tried: they would not end while anyone waits. */
export const MOST_SPOTS = 200_000;
export const MOST_COMBINATIONS = 2_000_000;
/** More than this are not listed one by one. */
export const MOST_LISTED = 200_000;

/** A request with everything looked up: the same wherever it is made ready. */
export interface ReadySearch {
  room: SpotRoom;
  /** Those asked about, with weights up to 1. */
  seats: readonly Seat[];
  weights: readonly number[];
  pair: string;
  role: Role;
  mirrored: boolean;
  movers: Readonly<Record<Side, Mover>>;
  /** Mirrored: right spot k belongs to left spot k. */
  spots: Readonly<Record<Side, readonly GridSpot[]>>;
  fits: SpotFitter;
  limits: Required<Pick<SearchLimits, 'fits' | 'free'>> & { maxOffAxisDeg: number | null };
  /** `null`: the view is not limited. */
  view: ReadyView | null;
  wants: Readonly<Record<SpotAim, number>>;
  step: number;
  answers: number;
  apart: number;
  all: boolean;
  /** Whether the rule for aims is to be told with each spot. */
  tellsAim: boolean;
}

export type ReadySearchAnswer = { ok: true; ready: ReadySearch } | { ok: false; error: Refusal };

class Refused extends Error {
  constructor(
    readonly path: string,
    message: string,
  ) {
    super(message);
  }
}

/** Refuses, with the request's field, what the plan does not have. */
export function prepareSearch(
  plan: PlanInput,
  request: SearchRequest,
  makeFitter: MakeFitter = createSpotFitter,
): ReadySearchAnswer {
  const made = spotRoom(plan);
  if (!made.ok) return made;
  try {
    const shared = prepareShared(plan, request, made.room);
    const moving = [request.pair];
    const ready = preparePair(shared, request, '', moving, makeFitter, request.all ?? false);
    return { ok: true, ready };
  } catch (reason) {
    if (reason instanceof Refused)
      return { ok: false, error: { path: reason.path, message: reason.message } };
    throw reason;
  }
}

export interface Shared {
  room: SpotRoom;
  option: OptionInput;
  seats: readonly Seat[];
  weights: readonly number[];
  answers: number;
  apart: number;
}

export function prepareShared(plan: PlanInput, request: SharedRequest, room: SpotRoom): Shared {
  const option = plan.options.find(({ id }) => id === request.option);
  if (!option) throw new Refused('option', `there is no option "${request.option}" in this plan`);
  const asked = request.seats ?? usualSeats(plan, room);
  if (asked.length === 0) throw new Refused('seats', 'there is no seat to search for');
  const most = Math.max(...asked.map(({ weight }) => weight));
  return {
    room,
    option,
    seats: asked.map(({ id }, i) => {
      const seat = room.seatById.get(id);
      if (!seat) throw new Refused(`seats[${i}].id`, `there is no seat "${id}" in this plan`);
      if (asked.findIndex((other) => other.id === id) < i)
        throw new Refused(`seats[${i}].id`, `the seat "${id}" is already asked for`);
      return seat;
    }),
    weights: asked.map(({ weight }) => weight / most),
    answers: request.answers ?? USUAL_ANSWERS,
    apart: request.apart ?? USUAL_APART,
  };
}

function usualSeats({ alignment }: PlanInput, { cabin }: SpotRoom): readonly SeatWeight[] {
  if (alignment?.by === 'seats' && alignment.seats?.length) return alignment.seats;
  const id = alignment?.seat ?? cabin.seats[0]?.id;
  return id === undefined ? [] : [{ id, weight: 1 }];
}

/** @param at the request's field the pair stands in: '' or 'pairs[0].' */
export function preparePair(
  { room, option, seats, weights, answers, apart }: Shared,
  request: PairRequest,
  at: string,
  moving: readonly string[],
  makeFitter: MakeFitter,
  all: boolean,
): ReadySearch {
  const members = pairsOf(option.speakers).find(({ pair }) => pair === request.pair);
  if (!members)
    throw new Refused(
      `${at}pair`,
      `there is no pair "${request.pair}" in the option "${option.id}"`,
    );
  const member = (side: Side): SpeakerInput => {
    const found = option.speakers.find(({ id }) => id === members[side]);
    if (!found) throw new Refused(`${at}pair`, `the pair "${request.pair}" has no ${side} speaker`);
    return found;
  };
  const [left, right] = [member('left'), member('right')];
  const step = request.step ?? USUAL_STEP;
  const mirrored = request.mirrored ?? true;
  const spots = spotsOf(room, left.role, request, step, mirrored, at);
  const count = mirrored ? spots.left.length : spots.left.length * spots.right.length;
  if (count > MOST_COMBINATIONS)
    throw new Refused(
      `${at}step`,
      `${count} combinations of a left and a right spot are too many, at most ${MOST_COMBINATIONS} are tried: take a larger step or fewer panels`,
    );
  if (all && count > MOST_LISTED)
    throw new Refused(
      'all',
      `${count} spots are too many to list, at most ${MOST_LISTED} are: leave it out, or take a larger step`,
    );
  const ready = request.aim ? readyAim(request.aim, room.seatById, seats) : null;
  if (ready && 'unknownSeat' in ready)
    throw new Refused(
      `${at}aim.${ready.field}`,
      `there is no seat "${ready.unknownSeat}" in this plan`,
    );
  const aim = ready as ReadyAim | null;
  const mover = (speaker: SpeakerInput, side: Side): Mover => ({
    speaker,
    side,
    standoff: request.standoff ?? speaker.mount?.standoff ?? 0,
    aim,
  });
  const wants = Object.fromEntries(
    SPOT_AIMS.map((name) => [name, (request.want ?? USUAL_WANTS)[name] ?? 0]),
  ) as Record<SpotAim, number>;
  if (!SPOT_AIMS.some((name) => wants[name] > 0))
    throw new Refused(`${at}want`, 'must hold at least one aim with a weight above 0');
  const standing = standingOf(option, moving, room);
  return {
    room,
    seats,
    weights,
    pair: request.pair,
    role: left.role,
    mirrored,
    movers: { left: mover(left, 'left'), right: mover(right, 'right') },
    spots,
    fits: makeFitter(room.cabin, standing, option),
    view: readyView(room.cabin, standing, {
      maxPillarViewDeg: request.require?.maxPillarViewDeg ?? null,
      maxAddedPillarViewDeg: request.require?.maxAddedPillarViewDeg ?? null,
    }),
    limits: {
      fits: request.require?.fits ?? true,
      free: request.require?.free ?? false,
      maxOffAxisDeg: request.require?.maxOffAxisDeg ?? null,
    },
    wants,
    step,
    answers,
    apart,
    all,
    tellsAim: aim !== null,
  };
}

/** What is wanted where the request does not say. Choice of ours, no source. */
const USUAL_WANTS: Partial<Record<SpotAim, number>> = {
  difference: 1,
  offAxisDeg: 0.5,
  obstructionDb: 1,
  firstReflectionTime: 0.2,
};

/** The speakers that stay where they are. */
function standingOf(option: OptionInput, moving: readonly string[], room: SpotRoom): Standing[] {
  return option.speakers.flatMap((speaker): Standing[] => {
    if (speaker.pair !== undefined && moving.includes(speaker.pair)) return [];
    const answer = placeSpeaker(speaker, room.panelById, room.seatById);
    return answer.ok ? [{ speaker, placed: answer.placed }] : [];
  });
}

function spotsOf(
  room: SpotRoom,
  role: Role,
  { panels: asked }: PairRequest,
  step: number,
  mirrored: boolean,
  at: string,
): Record<Side, GridSpot[]> {
  const ids =
    asked ?? room.panels.filter((p) => p.mountable && p.roles.includes(role)).map(({ id }) => id);
  const where = (i: number) => (asked ? `${at}panels[${i}]` : `${at}panels`);
  // A panel and its twin are one entry, known by the left one's id where they have sides.
  const couples = new Map<string, string>();
  ids.forEach((id, i) => {
    const panel = room.panelById.get(id);
    if (!panel) throw new Refused(where(i), `there is no panel "${id}" in this cabin`);
    if (!panel.mountable)
      throw new Refused(where(i), `nothing can be mounted on the ${panel.name}`);
    const twin = twinPanel(id);
    const other = room.panelById.get(twin);
    if (mirrored && !other)
      throw new Refused(where(i), `there is no panel "${twin}" for the mirrored spot`);
    const isLeft = /\bleft\b/.test(id) || !other;
    couples.set(isLeft ? id : twin, isLeft ? twin : id);
  });
  const spots: Record<Side, GridSpot[]> = { left: [], right: [] };
  let count = 0;
  const list = (id: string, put: (spot: GridSpot, side: Side | null) => void) => {
    const panel = room.panelById.get(id);
    if (!panel) return;
    const grid = panelGrid(panel, step);
    count += gridSize(grid);
    if (count > MOST_SPOTS)
      throw new Refused(
        `${at}step`,
        `a grid of ${step} mm has more than ${MOST_SPOTS} spots here: take a larger step or fewer panels`,
      );
    for (let k = 0; k < gridSize(grid); k++) {
      const spot = gridSpot(grid, k);
      put(spot, spotSide(panel, spot.u, spot.v));
    }
  };
  for (const [id, twin] of couples) {
    if (mirrored)
      list(id, (spot, side) => {
        if (side !== 'left') return;
        spots.left.push(spot);
        spots.right.push(twinOf(spot));
      });
    else
      for (const each of new Set([id, twin]))
        list(each, (spot, side) => {
          if (side) spots[side].push(spot);
        });
  }
  for (const side of ['left', 'right'] as const)
    if (spots[side].length === 0)
      throw new Refused(`${at}panels`, `there is no spot for the ${side} speaker on these panels`);
  return spots;
}

export { Refused };
