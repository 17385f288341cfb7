import type { Panel, Seat } from '../cabin/model';
import type { SpeakerInput } from '../input';
import type { Caster, SpotStart } from '../paths/cast';
import { type ReflectionQuery, reflectionsBetween } from '../paths/reflection';
import type { WayFinder } from '../paths/way-round';
import type { Arrival, Band, EarArrival, PlacedSpeaker, Reflection } from '../result';
import { obstructionAt } from '../sound/arrival-obstruction';
import { middleOfBand, octaveCentres } from '../sound/bands';
import { spreadingDb } from '../sound/level';
import { FADED_FRESNEL, wavelength } from '../sound/obstruction';
import { type SpeakerLaw, speakerLaw } from '../sound/speaker-law';
import { degrees, distance, dot, sub, type Vec3 } from '../vector';
import { offAxis } from './off-axis';

/** What all arrivals of a plan share. */
export interface Room {
  panels: readonly Panel[];
  caster: Caster;
  ways: WayFinder;
  /** mm/ms */
  speed: number;
}

/** What one speaker does at one seat. */
export function arrivalAt(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  seat: Seat,
  room: Room,
): Arrival {
  const { position, axis } = placed;
  const spot = spotOf(speaker, placed);
  const law = speakerLaw(speaker, room.speed);
  const reasons: string[] = [];
  const head = lineTo(seat.head, speaker, position, seat, spot, room);
  if (head.why) reasons.push(head.why);
  const angles = axis ? offAxis(axis, sub(seat.head, position)) : null;
  const levelDb = spreadingDb(head.ear.path);
  if (!axis) reasons.push('the aim has no direction, so there is no angle');
  else if (!angles) reasons.push('the listener is at the speaker, so there is no angle');
  if (levelDb === null) reasons.push('the listener is at the speaker, so there is no level');
  if (law.problem) reasons.push(law.problem);

  const arrival: Arrival = {
    speaker: speaker.id,
    ...head.ear,
    way: head.way,
    round: head.round,
    detour: head.detour,
    offAxisDeg: angles?.offAxisDeg ?? null,
    offAxisHorizontalDeg: angles?.offAxisHorizontalDeg ?? null,
    offAxisVerticalDeg: angles?.offAxisVerticalDeg ?? null,
    levelDb,
    ears: {
      left: lineTo(seat.ears.left, speaker, position, seat, spot, room, true).ear,
      right: lineTo(seat.ears.right, speaker, position, seat, spot, room, true).ear,
    },
    bands: bandsOf(speaker, angles?.offAxisDeg ?? null, law, head, room.speed),
    reflections: reflectionsTo(speaker, placed, seat.head, seat.id, room),
  };
  if (reasons.length > 0) arrival.reasons = reasons;
  return arrival;
}

/** Where a mounted speaker's lines begin. */
export function spotOf(speaker: SpeakerInput, { normal }: PlacedSpeaker): SpotStart | null {
  if (!speaker.mount || !normal) return null;
  return { panel: speaker.mount.panel, standoff: speaker.mount.standoff ?? 0, normal };
}

export interface LineTo {
  ear: EarArrival;
  way: Vec3[];
  round: string[];
  detour: number | null;
  /** Why there is no way round. */
  why?: string;
}

/**
 * The line from a speaker to one point of a listener, and the way round what blocks it. An ear's is
 * told the nearest of what it grazes alone.
 */
export function lineTo(
  point: Vec3,
  { bandHz }: SpeakerInput,
  position: Vec3,
  seat: Seat,
  spot: SpotStart | null,
  { caster, ways, speed }: Room,
  isEar = false,
): LineTo {
  const direct = distance(position, point);
  const blockedBy = caster.crossings(position, point, seat.id, spot);
  if (blockedBy.length > 0) {
    const found = ways.wayRound(position, point, seat.id, spot, blockedBy);
    const path = found ? found.length : direct;
    const line: LineTo = {
      ear: { direct, path, time: path / speed, line: 'blocked', blockedBy, grazedBy: [] },
      way: found ? found.path : [position, point],
      round: found ? found.round : [],
      detour: found ? path - direct : null,
    };
    if (!found) line.why = ways.whyNone(position, point, seat.id, spot);
    return line;
  }
  let detour: number | null = null;
  let grazedBy: string[] = [];
  // Without a band there is no wavelength to be near by.
  if (bandHz) {
    const longest = wavelength(bandHz[0], speed);
    if (isEar) {
      const nearest = ways.nearestMiss(position, point, seat.id, spot, longest);
      if (nearest) {
        detour = -nearest.detour;
        grazedBy = [nearest.id];
      }
    } else {
      const misses = ways.nearMisses(position, point, seat.id, spot, longest);
      if (misses[0]) detour = -misses[0].detour;
      grazedBy = misses.map(({ id }) => id);
    }
  }
  const line = detour === null ? 'clear' : 'grazing';
  return {
    ear: { direct, path: direct, time: direct / speed, line, blockedBy: [], grazedBy },
    way: [position, point],
    round: [],
    detour,
  };
}

/** What a map or a search looks at of a line. */
export interface Passage {
  /** What the sound travels. */
  path: number;
  /** `null` where blocked without a known way round. */
  obstructionDb: number | null;
  blockedBy: readonly string[];
}

/** How far sound travels, and round what; `known` is false where no way round is. */
function travelTo(
  point: Vec3,
  position: Vec3,
  seat: Seat,
  spot: SpotStart | null,
  caster: Caster,
  ways: WayFinder,
) {
  const direct = distance(position, point);
  const blockedBy = caster.crossings(position, point, seat.id, spot);
  if (blockedBy.length === 0) return { direct, path: direct, known: true, blockedBy };
  const found = ways.wayRound(position, point, seat.id, spot, blockedBy);
  return { direct, path: found?.length ?? direct, known: found !== null, blockedBy };
}

/** The path that {@link lineTo} gives, mm, without the rest of it. */
export const pathTo = (
  point: Vec3,
  position: Vec3,
  seat: Seat,
  spot: SpotStart | null,
  { caster, ways }: Pick<Room, 'caster' | 'ways'>,
): number => travelTo(point, position, seat, spot, caster, ways).path;

/** The path and loss that {@link lineTo} gives, at one frequency, without the rest of it. */
export function passageTo(
  point: Vec3,
  { bandHz }: SpeakerInput,
  position: Vec3,
  seat: Seat,
  spot: SpotStart | null,
  { caster, ways, speed }: Room,
  frequencyHz: number,
): Passage {
  const { direct, path, known, blockedBy } = travelTo(point, position, seat, spot, caster, ways);
  if (blockedBy.length > 0) {
    const detour = known ? path - direct : null;
    const obstructionDb = obstructionAt({ line: 'blocked', detour }, frequencyHz, speed);
    return { path, obstructionDb, blockedBy };
  }
  if (!bandHz) return { path: direct, obstructionDb: 0, blockedBy };
  const [longest, middle] = [wavelength(bandHz[0], speed), wavelength(frequencyHz, speed)];
  const below = (FADED_FRESNEL * middle) / 2;
  const least = ways.leastDetour(position, point, seat.id, spot, longest, below);
  if (least === null) return { path: direct, obstructionDb: 0, blockedBy };
  const obstructionDb = obstructionAt({ line: 'grazing', detour: -least }, frequencyHz, speed);
  return { path: direct, obstructionDb, blockedBy };
}

function bandsOf(
  { bandHz }: SpeakerInput,
  offAxisDeg: number | null,
  { law }: SpeakerLaw,
  { ear: { line }, detour }: LineTo,
  speed: number,
): Band[] {
  if (!bandHz) return [];
  return octaveCentres(bandHz).map((frequencyHz) => {
    const directivityDb = offAxisDeg === null ? null : law(offAxisDeg, frequencyHz);
    const obstructionDb = obstructionAt({ line, detour }, frequencyHz, speed);
    const reason =
      offAxisDeg === null
        ? 'there is no angle, so there is no loss off the axis'
        : directivityDb === null
          ? 'the measured responses do not cover this angle and frequency'
          : obstructionDb === null
            ? 'no way round is known, so its loss is not'
            : null;
    const band: Band = { frequencyHz, directivityDb, obstructionDb };
    if (reason) band.reason = reason;
    return band;
  });
}

/** Level counted at this frequency where a speaker has no band, Hz. Choice of ours, no source. */
const USUAL_MIDDLE_HZ = 1000;

/** Where a speaker's directivity is told by one number: the middle of its band, Hz. */
export const middleOf = ({ bandHz }: SpeakerInput): number =>
  bandHz ? middleOfBand(bandHz) : USUAL_MIDDLE_HZ;

/**
 * What the panels send from a speaker to a point of a listener; the directivity that counts is that
 * at the middle of the speaker's band.
 */
export function reflectionsTo(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  receiver: Vec3,
  listener: string | null,
  { panels, caster, speed }: Omit<Room, 'ways'>,
  order: 1 | 2 = 1,
): Reflection[] {
  const { position, axis } = placed;
  const { law, source } = speakerLaw(speaker, speed);
  const middle = middleOf(speaker);
  const query: ReflectionQuery = {
    panels,
    caster,
    source: position,
    receiver,
    speed,
    listener,
    spot: spotOf(speaker, placed),
    order,
  };
  if (axis && source !== 'none')
    query.directivityDb = (way) => {
      const angle = degrees(Math.acos(Math.min(1, Math.max(-1, dot(way, axis)))));
      return law(angle, middle) ?? Number.NaN;
    };
  return reflectionsBetween(query);
}
