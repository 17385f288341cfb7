import type { Refusal, Seat } from '../cabin/model';
import type { PlanInput, Side, SpeakerInput } from '../input';
import { placeSpeaker } from '../stage/place';
import { type AimRule, readyAim } from './aim-rule';
import type { MakeFitter, SpotFitter, Standing } from './fits';
import { pathAt } from './hear-spot';
import { gridSize, type PanelGrid, panelGrid, twinPanel } from './panel-grid';
import { SPOT_AIMS, type SpotAim } from './penalty';
import { type SpotRoom, spotRoom } from './spot-room';
import type { Mover } from './stand';
import type { MapPanel, MapQuantity, MapRequest } from './types';

const USUAL_STEP = 20;
/** More spots than this are not painted. */
const MOST_SPOTS = 500_000;

const OF_PATHS = ['difference', 'pathSpread'] as const;

/** A request with everything looked up. */
export interface ReadyMap {
  room: SpotRoom;
  seats: readonly Seat[];
  movers: Record<Side, Mover>;
  own: Side;
  panels: readonly (MapPanel & { asked: boolean })[];
  /** Which quantities are worked out spot by spot. */
  needs: ReadonlySet<MapQuantity>;
  /** Whether any of them is a matter of paths. */
  needsPath: boolean;
  fits: SpotFitter | null;
  /** Paths of the fixed partner, by seat; `null`: the mirrored twin. */
  partner: { standing: Standing; paths: readonly number[]; side: Side } | null;
  /** Longest and shortest path of the other speakers of each side, by seat. */
  others: Record<Side, readonly (readonly [number, number] | null)[]>;
  weights: Record<SpotAim, number>;
}

function refuse(path: string, message: string): { ok: false; error: Refusal } {
  return { ok: false, error: { path, message } };
}

/** Refuses, with the request's field, what the plan does not have. */
export function prepareMap(
  plan: PlanInput,
  request: MapRequest,
  makeFitter: MakeFitter,
): { ok: true; ready: ReadyMap } | { ok: false; error: Refusal } {
  const made = spotRoom(plan);
  if (!made.ok) return made;
  const { room } = made;
  const option = plan.options.find(({ id }) => id === request.option);
  if (!option) return refuse('option', `there is no option "${request.option}" in this plan`);
  const speaker = option.speakers.find(({ id }) => id === request.speaker);
  if (!speaker)
    return refuse(
      'speaker',
      `there is no speaker "${request.speaker}" in the option "${option.id}"`,
    );
  const seatIds = request.seats ?? [plan.alignment?.seat ?? room.cabin.seats[0]?.id ?? ''];
  const seats: Seat[] = [];
  for (const [i, id] of seatIds.entries()) {
    const seat = room.seatById.get(id);
    if (!seat) return refuse(`seats[${i}]`, `there is no seat "${id}" in this plan`);
    seats.push(seat);
  }
  if (seats.length === 0) return refuse('seats', 'there is no seat to listen at');

  const own = speaker.side ?? 'left';
  const aim = ownAim(speaker, own, request);
  const ready = aim && readyAim(aim, room.seatById, seats);
  if (ready && 'unknownSeat' in ready)
    return refuse(`aim.${ready.field}`, `there is no seat "${ready.unknownSeat}" in this plan`);
  const samePair = (other: SpeakerInput) =>
    other.id === speaker.id || (speaker.pair !== undefined && other.pair === speaker.pair);
  // On the other side it is its twin that would stand there, in the pocket that the twin has.
  const twin = option.speakers.find((other) => other.id !== speaker.id && samePair(other));
  const mover = (side: Side): Mover => ({
    speaker: side === own || !twin ? speaker : { ...speaker, id: twin.id },
    side,
    standoff: request.standoff ?? speaker.mount?.standoff ?? 0,
    aim: ready,
  });

  const asked = request.panels ?? room.panels.filter((p) => p.mountable).map(({ id }) => id);
  const needs = new Set<MapQuantity>(request.quantities);
  const weights = Object.fromEntries(
    SPOT_AIMS.map((name) => [name, request.weights?.[name] ?? 0]),
  ) as Record<SpotAim, number>;
  if (needs.has('blend')) for (const name of SPOT_AIMS) if (weights[name] > 0) needs.add(name);
  const grids = gridsOf(
    room,
    asked,
    request.step ?? USUAL_STEP,
    needs.has('difference') && !request.partner,
  );
  if ('error' in grids) return grids;

  const standing: Standing[] = [];
  for (const other of option.speakers) {
    const placed = placeSpeaker(other, room.panelById, room.seatById);
    if (placed.ok) standing.push({ speaker: other, placed: placed.placed });
  }
  const pathsOf = (one: Standing) => seats.map((seat) => pathAt(one, seat, room));
  const fixed = standing.find((one) => one.speaker.id === request.partner);
  if (request.partner !== undefined && !fixed)
    return refuse(
      'partner',
      `there is no speaker "${request.partner}" in the option "${option.id}"`,
    );
  const spans = (side: Side) => {
    const all = standing
      .filter((one) => one.speaker.side === side && !samePair(one.speaker))
      .map(pathsOf);
    return seats.map((_, s): readonly [number, number] | null => {
      const here = all.map((paths) => paths[s] as number);
      return here.length > 0 ? [Math.min(...here), Math.max(...here)] : null;
    });
  };
  const none = seats.map(() => null);
  const spread = needs.has('pathSpread');
  return {
    ok: true,
    ready: {
      room,
      seats,
      movers: { left: mover('left'), right: mover('right') },
      own,
      panels: grids.panels,
      needs,
      needsPath: OF_PATHS.some((name) => needs.has(name)),
      fits: request.fits
        ? makeFitter(
            room.cabin,
            standing.filter((one) => !samePair(one.speaker)),
            option,
          )
        : null,
      partner: fixed
        ? {
            standing: fixed,
            paths: pathsOf(fixed),
            side: fixed.speaker.side ?? (fixed.placed.position[1] < 0 ? 'left' : 'right'),
          }
        : null,
      others: { left: spread ? spans('left') : none, right: spread ? spans('right') : none },
      weights,
    },
  };
}

/** A speaker's own direction is that of its side: told as a left one's, as a rule is. */
function ownAim(speaker: SpeakerInput, own: Side, request: MapRequest): AimRule | null {
  if (request.aim) return request.aim;
  const { aim } = speaker;
  if (aim?.kind !== 'direction' || own === 'left') return aim ?? null;
  const [x, y, z] = aim.direction;
  return { kind: 'direction' as const, direction: [x, -y, z] as const };
}

/** The grids asked for, and those of their twins where a difference needs them. */
function gridsOf(
  room: SpotRoom,
  asked: readonly string[],
  step: number,
  withTwins: boolean,
): { panels: ReadyMap['panels'] } | { ok: false; error: Refusal } {
  const grids = new Map<string, PanelGrid & { asked: boolean }>();
  for (const [i, id] of asked.entries()) {
    const panel = room.panelById.get(id);
    if (!panel) return refuse(`panels[${i}]`, `there is no panel "${id}" in this cabin`);
    grids.set(id, { ...panelGrid(panel, step), asked: true });
  }
  if (withTwins)
    for (const id of asked) {
      const twin = room.panelById.get(twinPanel(id));
      const grid = grids.get(id);
      if (!twin || !grid || twin.id === id) continue;
      // Panels given by hand may be no exact mirror images: then both take the finer grid.
      const other = grids.get(twin.id) ?? { ...panelGrid(twin, step), asked: false };
      const columns = Math.max(grid.columns, other.columns);
      const rows = Math.max(grid.rows, other.rows);
      grids.set(id, { ...grid, columns, rows });
      grids.set(twin.id, { ...other, columns, rows });
    }
  let first = 0;
  const panels = [...grids.values()].map((grid) => {
    const here = { ...grid, first };
    first += gridSize(grid);
    return here;
  });
  if (first > MOST_SPOTS)
    return refuse('step', `${first} spots are too many, at most ${MOST_SPOTS} are painted`);
  return { panels };
}
