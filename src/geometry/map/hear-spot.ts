import type { Seat } from '../cabin/model';
import type { SpeakerInput } from '../input';
import { firstReflectionExtra } from '../paths/reflection';
import type { PlacedSpeaker } from '../result';
import { middleOf, type Passage, passageTo, pathTo, spotOf } from '../stage/arrivals';
import { offAxis } from '../stage/off-axis';
import { sub } from '../vector';
import type { Standing } from './fits';
import type { SpotRoom } from './spot-room';

/** What one speaker does at one seat, no more of it than a map or a search looks at. */
export interface Heard extends Passage {
  offAxisDeg: number | null;
}

/** The same numbers as the arrival of `evaluatePlan`, by the same functions. */
export function hearSpot(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  seat: Seat,
  room: SpotRoom,
): Heard {
  const { position, axis } = placed;
  const spot = spotOf(speaker, placed);
  const middle = middleOf(speaker);
  const angles = axis ? offAxis(axis, sub(seat.head, position)) : null;
  return {
    ...passageTo(seat.head, speaker, position, seat, spot, room, middle),
    offAxisDeg: angles?.offAxisDeg ?? null,
  };
}

/** Only the path, for where no loss is asked: nothing is looked for beside a free line. */
export const pathAt = ({ speaker, placed }: Standing, seat: Seat, room: SpotRoom): number =>
  pathTo(seat.head, placed.position, seat, spotOf(speaker, placed), room);

/** Only the angle, for where nothing else is asked. */
export function angleAt({ placed: { position, axis } }: Standing, seat: Seat): number | null {
  return (axis && offAxis(axis, sub(seat.head, position))?.offAxisDeg) ?? null;
}

/** How long after the direct sound the first reflection comes, ms; `null` where none does. */
export function firstReflectionTime(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  seat: Seat,
  { panels, caster, speed }: SpotRoom,
): number | null {
  const extra = firstReflectionExtra({
    panels,
    caster,
    source: placed.position,
    receiver: seat.head,
    speed,
    listener: seat.id,
    spot: spotOf(speaker, placed),
  });
  return extra === null ? null : extra / speed;
}
