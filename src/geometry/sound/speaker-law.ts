import type { SpeakerInput } from '../input';
import { type DirectivityLaw, directivityLaw } from './direct-level';
import { measuredDirectivity } from './measured-directivity';

/** How one speaker's level falls off its axis, and where that is known from. */
export interface SpeakerLaw {
  law: DirectivityLaw;
  /** Why the measured responses cannot be used: then the law knows no level. */
  problem: string | null;
  source: 'measured' | 'piston' | 'none';
  /** Frequencies the law covers, Hz; `null`: all. */
  rangeHz: readonly [number, number] | null;
}

const kept = new WeakMap<SpeakerInput, Map<number, SpeakerLaw>>();
/** Speeds kept for one speaker: a drag of the temperature must not fill the memory. */
const MOST_SPEEDS = 8;

/**
 * The law of one speaker: measured responses where there are some, else the piston of its
 * diaphragm, else alike all round. Responses that are refused, or do not cover the speaker's band,
 * give no level at all rather than a piston's in their stead. An empty list counts as none.
 * Kept by the speaker's identity and the speed, since it is asked for on every frame of a drag.
 * @param speed mm/ms
 */
export function speakerLaw(speaker: SpeakerInput, speed: number): SpeakerLaw {
  let bySpeed = kept.get(speaker);
  if (!bySpeed) {
    bySpeed = new Map();
    kept.set(speaker, bySpeed);
  }
  const known = bySpeed.get(speed);
  if (known) return known;
  if (bySpeed.size >= MOST_SPEEDS) bySpeed.clear();
  const law = lawOf(speaker, speed);
  bySpeed.set(speed, law);
  return law;
}

function lawOf({ responses, bandHz, diaphragm }: SpeakerInput, speed: number): SpeakerLaw {
  if (responses && responses.length > 0) {
    const answer = measuredDirectivity(responses, bandHz);
    if (!answer.ok)
      return {
        law: () => null,
        problem: `the measured responses cannot be used: ${answer.message}`,
        source: 'measured',
        rangeHz: null,
      };
    const law = directivityLaw({ measured: answer.directivity }, speed);
    return { law, problem: null, source: 'measured', rangeHz: answer.directivity.rangeHz };
  }
  if (diaphragm !== undefined && diaphragm > 0)
    return {
      law: directivityLaw({ diaphragm }, speed),
      problem: null,
      source: 'piston',
      rangeHz: null,
    };
  return { law: directivityLaw({}, speed), problem: null, source: 'none', rangeHz: null };
}
