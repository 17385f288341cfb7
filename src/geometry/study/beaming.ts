import type { SpeakerInput } from '../input';
import { beamingFrequencyHz } from '../sound/directivity';
import { speakerLaw } from '../sound/speaker-law';

export type Beaming = { beamingHz: number } | { beamingHz: null; reason: string };

/** Half the power, dB. */
const HALF_POWER_DB = -10 * Math.log10(2);
const STEPS_PER_OCTAVE = 24;

/**
 * Where a speaker begins to beam, Hz: the lowest frequency at which half its power is lost at 90°.
 * From the piston of its diaphragm (see `beamingFrequencyHz`), or, where responses are measured,
 * read from those between steps of a 24th octave.
 * @param speed mm/ms
 */
export function beamingHzOf(speaker: SpeakerInput, speed: number): Beaming {
  const { law, problem, source, rangeHz } = speakerLaw(speaker, speed);
  const none = (why: string): Beaming => ({
    beamingHz: null,
    reason: `where "${speaker.id}" begins to beam is not known: ${why}`,
  });
  if (problem) return none(problem);
  if (source === 'piston' && speaker.diaphragm !== undefined)
    return { beamingHz: beamingFrequencyHz(speaker.diaphragm, speed) };
  if (!rangeHz) return none('the plan gives neither its diaphragm nor measured responses');
  const [from, to] = rangeHz;
  const start = law(90, from);
  if (start === null) return none('the measured responses do not reach 90° off the axis');
  if (start <= HALF_POWER_DB)
    return none('half its power is lost at 90° already at the lowest frequency measured');
  let [f, level] = [from, start];
  while (f < to) {
    const next = Math.min(to, f * 2 ** (1 / STEPS_PER_OCTAVE));
    const nextLevel = law(90, next) as number;
    if (nextLevel <= HALF_POWER_DB) {
      const part = (HALF_POWER_DB - level) / (nextLevel - level);
      return { beamingHz: f * (next / f) ** part };
    }
    [f, level] = [next, nextLevel];
  }
  return none('half its power is not lost at 90° up to the highest frequency measured');
}
