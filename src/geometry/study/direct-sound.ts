import type { SpeakerInput } from '../input';
import type { Arrival, SeatResult } from '../result';
import { obstructionAt } from '../sound/arrival-obstruction';
import { type SpeakerLaw, speakerLaw } from '../sound/speaker-law';
import { clamp } from '../vector';
import { arrivalOf, type Stage, speakerOf } from './stage';

/** One speaker's direct sound at one seat's head. */
export interface DirectAt {
  speaker: SpeakerInput;
  arrival: Arrival;
  law: SpeakerLaw;
  /** 0 where the speaker is alike all round, so that no axis is needed; `null` without an angle. */
  offAxisDeg: number | null;
  /** mm/ms */
  speed: number;
}

/** `null` where the option or its answer has no such speaker. */
export function directAt(stage: Stage, seat: SeatResult, speakerId: string): DirectAt | null {
  const speaker = speakerOf(stage, speakerId);
  const arrival = arrivalOf(seat, speakerId);
  if (!speaker || !arrival) return null;
  const speed = stage.result.speedOfSound;
  const law = speakerLaw(speaker, speed);
  const offAxisDeg = arrival.offAxisDeg ?? (law.source === 'none' ? 0 : null);
  return { speaker, arrival, law, offAxisDeg, speed };
}

/** Loss round, or close past, what is in the way, dB ≥ 0; `null` where it is not known. */
export const obstructionDbOf = ({ arrival, speed }: DirectAt, frequencyHz: number): number | null =>
  obstructionAt(arrival, frequencyHz, speed);

/**
 * Directivity less obstruction towards the seat, dB, against a free line along the axis. Beyond the
 * frequencies measured the nearest measured level stands in: where a crossover or the edge of an
 * octave lies there, the speaker hardly plays.
 * @returns `null` where there is none: see {@link whyNoLevel}
 */
export function towardsSeatDb(direct: DirectAt, frequencyHz: number): number | null {
  const { law, offAxisDeg } = direct;
  if (offAxisDeg === null) return null;
  const covered = law.rangeHz ? clamp(frequencyHz, ...law.rangeHz) : frequencyHz;
  const directivityDb = law.law(offAxisDeg, covered);
  const obstructionDb = obstructionDbOf(direct, frequencyHz);
  return directivityDb === null || obstructionDb === null ? null : directivityDb - obstructionDb;
}

/** Why there is no level towards the seat, whatever the frequency; `null` where there is one. */
export function whyNoLevel(direct: DirectAt): string | null {
  const { speaker, arrival, law, offAxisDeg } = direct;
  const of = `speaker "${speaker.id}"`;
  if (arrival.levelDb === null)
    return `${of}: the listener is at the speaker, so there is no level`;
  if (law.problem) return `${of}: ${law.problem}`;
  if (offAxisDeg === null)
    return `${of}: there is no angle to the listener, so there is no loss off the axis`;
  if (obstructionDbOf(direct, 1000) === null)
    return `${of}: something blocks the line and no way round is known, so its loss is not`;
  if (towardsSeatDb(direct, law.rangeHz?.[0] ?? 1000) === null)
    return `${of}: the measured responses do not reach ${offAxisDeg.toFixed(0)}° off the axis`;
  return null;
}
