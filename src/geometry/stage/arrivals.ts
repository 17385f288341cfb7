import type { Seat } from '../cabin/model';
import type { SpeakerInput } from '../input';
import type { Caster, SpotStart } from '../paths/cast';
import type { Arrival, EarArrival, PlacedSpeaker } from '../result';
import { spreadingDb } from '../sound/level';
import { distance, sub, type Vec3 } from '../vector';
import { offAxis } from './off-axis';

/**
 * What one speaker does at one seat, in straight-line detail: `path` is the straight line even
 * where something blocks it, and `line` says so.
 * @param speed mm/ms
 */
export function arrivalAt(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  seat: Seat,
  caster: Caster,
  speed: number,
): Arrival {
  const { position, axis } = placed;
  const spot: SpotStart | null =
    speaker.mount && placed.normal
      ? {
          panel: speaker.mount.panel,
          standoff: speaker.mount.standoff ?? 0,
          normal: placed.normal,
        }
      : null;

  const { direct, path, time, line, blockedBy } = lineTo(
    seat.head,
    position,
    seat,
    spot,
    caster,
    speed,
  );
  const angles = axis ? offAxis(axis, sub(seat.head, position)) : null;
  const levelDb = spreadingDb(path);
  const reasons: string[] = [];
  if (!axis) reasons.push('the aim has no direction, so there is no angle');
  else if (!angles) reasons.push('the listener is at the speaker, so there is no angle');
  if (levelDb === null) reasons.push('the listener is at the speaker, so there is no level');

  return {
    speaker: speaker.id,
    direct,
    path,
    time,
    offAxisDeg: angles?.offAxisDeg ?? null,
    offAxisHorizontalDeg: angles?.offAxisHorizontalDeg ?? null,
    offAxisVerticalDeg: angles?.offAxisVerticalDeg ?? null,
    line,
    blockedBy,
    levelDb,
    ears: {
      left: lineTo(seat.ears.left, position, seat, spot, caster, speed),
      right: lineTo(seat.ears.right, position, seat, spot, caster, speed),
    },
    ...(reasons.length > 0 && { reasons }),
  };
}

/** The straight line from a speaker to one point of a listener. */
function lineTo(
  point: Vec3,
  position: Vec3,
  seat: Seat,
  spot: SpotStart | null,
  caster: Caster,
  speed: number,
): EarArrival {
  const direct = distance(position, point);
  const blockedBy = caster.crossings(position, point, seat.id, spot);
  return {
    direct,
    path: direct,
    time: direct / speed,
    line: blockedBy.length > 0 ? 'blocked' : 'clear',
    blockedBy,
  };
}
