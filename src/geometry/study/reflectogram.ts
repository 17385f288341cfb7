import type { CabinModel } from '../cabin/model';
import type { Side } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import { firstNotchHz } from '../paths/reflection';
import type { Arrival, EarArrival, Line, Reflection } from '../result';
import { obstructionAt } from '../sound/arrival-obstruction';
import { middleOf, reflectionsTo } from '../stage/arrivals';
import { SAME_POINT } from '../tolerance';
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
  /** Why there is no level. */
  reasons?: string[];
}

const casters = new WeakMap<CabinModel, Caster>();

function casterOf(cabin: CabinModel): Caster {
  let caster = casters.get(cabin);
  if (!caster) {
    caster = buildCaster(cabin.panels, cabin.obstacles);
    casters.set(cabin, caster);
  }
  return caster;
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
  const speed = result.speedOfSound;
  const room = { panels: cabin.panels, caster: casterOf(cabin), speed };
  return speakers.flatMap((id) => {
    const [speaker, placed] = [speakerOf(stage, id), placedOf(stage, id)];
    const arrival = arrivalOf(answer, id);
    if (!speaker || !placed || !arrival) return [];
    return SIDES.flatMap((ear): EarSound[] => {
      const direct = directSound(id, ear, arrival.ears[ear], middleOf(speaker), speed);
      const thrown = reflectionsTo(speaker, placed, seat.ears[ear], seat.id, room, order);
      const reflected = thrown.map((reflection) => reflectedSound(direct, reflection, speed));
      return [direct, ...reflected].sort((a, b) => a.time - b.time);
    });
  });
}

function directSound(
  speaker: string,
  ear: Side,
  { direct, path, line }: EarArrival,
  middleHz: number,
  speed: number,
): EarSound {
  const detour = path > direct ? path - direct : null;
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
  speed: number,
): EarSound {
  const extra = path - first;
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
    ...(reasons && { reasons }),
  };
}

/** The reflection that comes first at the head; `null` where no panel throws any there. */
export const earliestReflection = ({ reflections }: Arrival): Reflection | null =>
  reflections.reduce<Reflection | null>(
    (first, one) => (first && first.path <= one.path ? first : one),
    null,
  );
