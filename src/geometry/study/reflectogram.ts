import type { CabinModel } from '../cabin/model';
import type { Side, SpeakerInput } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import { firstNotchHz } from '../paths/reflection';
import { buildWayFinder, type WayFinder } from '../paths/way-round';
import type { Arrival, EarArrival, Line, PlacedSpeaker, Reflection } from '../result';
import { obstructionAt } from '../sound/arrival-obstruction';
import { wavelength } from '../sound/obstruction';
import { type SpeakerLaw, speakerLaw } from '../sound/speaker-law';
import { middleOf, reflectionsTo, spotOf } from '../stage/arrivals';
import { SAME_POINT } from '../tolerance';
import type { Vec3 } from '../vector';
import { arrivalOf, placedOf, SIDES, type Stage, seatOf, seatResultOf, speakerOf } from './stage';

/** One sound of one speaker at one ear. */
export interface EarSound {
  speaker: string;
  ear: Side;
  kind: 'direct' | 'reflection';
  /** What threw it back; `null` for the direct sound. */
  panel: string | null;
  /** The panel of the second bounce; `null` where there is none. */
  second: string | null;
  /** What it travelled, mm. */
  path: number;
  /** After the first direct sound of its own speaker at that ear, ms: 0 for that sound itself. */
  time: number;
  /** Of the direct sound; a reflection's legs are always clear. */
  line: Line;
  /** Against that speaker's direct sound at that ear with a free line, dB, at mid-band. */
  levelDb: number | null;
  /** Where it first cancels the direct sound, Hz; `null` for the direct sound and what comes with it. */
  firstNotchHz: number | null;
  /** Why there is no level, or what the level leaves out. */
  reasons?: string[];
}

interface Room {
  caster: Caster;
  ways: WayFinder;
}
const rooms = new WeakMap<CabinModel, Room>();

function roomOf(cabin: CabinModel): Room {
  let room = rooms.get(cabin);
  if (!room) {
    const { panels, obstacles } = cabin;
    const caster = buildCaster(panels, obstacles);
    room = { caster, ways: buildWayFinder(panels, obstacles, caster) };
    rooms.set(cabin, room);
  }
  return room;
}

/**
 * What some speakers send to both ears of a seat: each one's direct sound (round what blocks it)
 * and its reflections, each speaker's and ear's together, earliest first. Directivity and
 * obstruction count at the middle of the speaker's band, 1 kHz where it has none.
 * Sources and limits: those of `reflectionsBetween`. None for a seat or speakers that are not there.
 * @param order 2 adds ways by two panes of glass
 */
export function reflectogramAt(
  stage: Stage,
  seatId: string,
  speakers: readonly string[],
  order: 1 | 2 = 1,
): EarSound[] {
  const { cabin, result } = stage;
  const answer = seatResultOf(stage, seatId);
  const seat = seatOf(stage, seatId);
  if (!answer || !seat) return [];
  const { caster, ways } = roomOf(cabin);
  const speed = result.speedOfSound;
  const room = { panels: cabin.panels, caster, speed };
  return speakers.flatMap((id) => {
    const [speaker, placed] = [speakerOf(stage, id), placedOf(stage, id)];
    const arrival = arrivalOf(answer, id);
    if (!speaker || !placed || !arrival) return [];
    const law = speakerLaw(speaker, speed);
    return SIDES.flatMap((ear): EarSound[] => {
      const receiver = seat.ears[ear];
      const at = arrival.ears[ear];
      const miss = () => missedBy(speaker, placed, receiver, seat.id, ways, speed);
      const detour = detourOf(at, miss);
      const direct = directSound(id, ear, at, detour, middleOf(speaker), speed);
      const thrown = reflectionsTo(speaker, placed, receiver, seat.id, room, order);
      const reflected = thrown.map((reflection) =>
        reflectedSound(direct, reflection, law, placed, speed),
      );
      return [direct, ...reflected].sort((a, b) => a.time - b.time);
    });
  });
}

/** As an arrival's: see there. */
function detourOf({ line, direct, path }: EarArrival, miss: () => number | null): number | null {
  if (line === 'grazing') return miss();
  return line === 'blocked' && path > direct ? path - direct : null;
}

/** Minus the detour by the edge an ear's line passes nearest; `null` where it passes none. */
function missedBy(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  ear: Vec3,
  seat: string,
  ways: WayFinder,
  speed: number,
): number | null {
  if (!speaker.bandHz) return null;
  const longest = wavelength(speaker.bandHz[0], speed);
  const spot = spotOf(speaker, placed);
  const [nearest] = ways.nearMisses(placed.position, ear, seat, spot, longest);
  return nearest ? -nearest.detour : null;
}

function directSound(
  speaker: string,
  ear: Side,
  { direct, path, line }: EarArrival,
  detour: number | null,
  middleHz: number,
  speed: number,
): EarSound {
  const loss = obstructionAt({ line, detour }, middleHz, speed);
  const why =
    direct <= SAME_POINT
      ? 'the listener is at the speaker, so there is no level to compare with'
      : loss === null
        ? 'something blocks the line and no way round is known, so its loss is not'
        : null;
  return {
    speaker,
    ear,
    kind: 'direct',
    panel: null,
    second: null,
    path,
    time: 0,
    line,
    levelDb: why || loss === null ? null : 0 - loss,
    firstNotchHz: null,
    ...(why && { reasons: [why] }),
  };
}

function reflectedSound(
  { speaker, ear, path: first }: EarSound,
  { panel, second, path, levelDb, reasons }: Reflection,
  { source, problem }: SpeakerLaw,
  { axis }: PlacedSpeaker,
  speed: number,
): EarSound {
  const extra = path - first;
  const why =
    levelDb === null && source === 'measured'
      ? [problem ?? 'the measured responses do not reach this way off the axis, or the direct one']
      : levelDb !== null && source !== 'none' && !axis
        ? ['the aim has no direction, so the directivity is left out']
        : reasons;
  return {
    speaker,
    ear,
    kind: 'reflection',
    panel,
    second: second?.panel ?? null,
    path,
    time: extra / speed,
    line: 'clear',
    levelDb,
    firstNotchHz: extra > SAME_POINT ? firstNotchHz(extra, speed) : null,
    ...(why && { reasons: why }),
  };
}

/** The reflection that comes first at the head; `null` where no panel throws any there. */
export const earliestReflection = ({ reflections }: Arrival): Reflection | null =>
  reflections.reduce<Reflection | null>(
    (first, one) => (first && first.path <= one.path ? first : one),
    null,
  );
