import type { Refusal } from '../../geometry';
import { quoted } from '../quoted';
import { sameEnd } from '../same-end';
import type { PlanOption } from '../types';

/**
 * Measured arrivals and readings name speakers of their option, and no place twice. Seats and
 * reference points the cabin does not have are no mistake: body styles change, and what was measured
 * stays.
 */
export function checkMeasured(
  { speakers, measured = [], readings = [] }: PlanOption,
  path: string,
): Refusal[] {
  const known = new Set(speakers.map(({ id }) => id));
  const refusals: Refusal[] = [];
  const missing = (speaker: string, where: string): void => {
    if (!known.has(speaker))
      refusals.push({
        path: where,
        message: `there is no speaker ${quoted(speaker)} in this option`,
      });
  };
  const taken = new Map<string, string>();
  for (const [m, { speaker, seat, at }] of measured.entries()) {
    const here = `${path}.measured[${m}]`;
    missing(speaker, `${here}.speaker`);
    const key = JSON.stringify([speaker, seat, at]);
    const earlier = taken.get(key);
    if (earlier)
      refusals.push({
        path: here,
        message: `the speaker ${quoted(speaker)} is already measured at this place, ${earlier}`,
      });
    taken.set(key, earlier ?? here);
  }
  for (const [r, { from, to }] of readings.entries()) {
    const here = `${path}.readings[${r}]`;
    if (from.kind === 'speaker') missing(from.speaker, `${here}.from.speaker`);
    if (to.kind === 'speaker') missing(to.speaker, `${here}.to.speaker`);
    if (sameEnd(from, to))
      refusals.push({ path: `${here}.to`, message: 'must be another point than where it starts' });
  }
  return refusals;
}
