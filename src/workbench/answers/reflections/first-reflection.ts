import type { Arrival, Reflection, SpeakerInput } from '../../../geometry';
import { formatFrequency, formatLevel, formatTime } from '../../../plan/units';

/** Weaker than this against the direct sound is not called strong, dB. Choice of ours, no source. */
export const STRONG_DB = -10;

/** Two digits: the notch moves with every millimetre. */
const notch = (hz: number): string => formatFrequency(Number(hz.toPrecision(2)));

/** Earliest at the head that is strong, and the strongest of all; `null` where there is none. */
export function tellingReflections(reflections: readonly Reflection[]): {
  first: Reflection | null;
  strongest: Reflection | null;
} {
  const known = reflections
    .filter(({ levelDb }) => levelDb !== null)
    .sort((a, b) => a.extra - b.extra);
  const level = ({ levelDb }: Reflection) => levelDb ?? Number.NEGATIVE_INFINITY;
  return {
    first: known.find((one) => level(one) >= STRONG_DB) ?? null,
    strongest: known.reduce<Reflection | null>(
      (best, one) => (best && level(best) >= level(one) ? best : one),
      null,
    ),
  };
}

export interface ReflectionWording {
  /** "left tweeter" */
  speaker: (speaker: SpeakerInput) => string;
  /** "windscreen" */
  panel: (id: string) => string;
}

/**
 * "First strong reflection of the left tweeter: windscreen after 0.61 ms at −2.1 dB, first notch
 * 820 Hz." At the middle of the head, first order; with the strongest, where that is another.
 */
export function firstReflectionWords(
  speaker: SpeakerInput,
  arrival: Arrival | undefined,
  wording: ReflectionWording,
): string {
  const name = `the ${wording.speaker(speaker)}`;
  const { first, strongest } = tellingReflections(arrival?.reflections ?? []);
  if (!strongest) {
    const count = arrival?.reflections.length ?? 0;
    return count > 0
      ? `How strong the reflections of ${name} are is not known.`
      : `No panel throws the sound of ${name} to this head.`;
  }
  const told = (one: Reflection) =>
    `${wording.panel(one.panel)} after ${formatTime(one.extraTime)} at ` +
    `${formatLevel(one.levelDb)}, first notch ${notch(one.firstNotchHz)}`;
  if (!first) {
    const limit = formatLevel(STRONG_DB, 0);
    return `No reflection of ${name} is above ${limit}; strongest: ${told(strongest)}.`;
  }
  const more = first === strongest ? '' : ` Strongest: ${told(strongest)}.`;
  return `First strong reflection of ${name}: ${told(first)}.${more}`;
}
