import type { SpeakerInput } from '../../geometry';
import { pairName, seatName, speakerName } from '../../plan/names';
import { sentence } from './check-number';

/**
 * A reason the engine gives, as a sentence for the page: ids in quotes become the names the page
 * has for them.
 */
export function plainReason(reason: string, speakers: readonly SpeakerInput[]): string {
  const named = reason
    .replace(/seat "([^"]+)"/g, (_, id: string) => seatName(id))
    .replace(/(?:speaker )?"([^"]+)"/g, (whole, id: string) => {
      const speaker = speakers.find((one) => one.id === id);
      if (speaker) return speakerName(speaker, speakers);
      return speakers.some(({ pair }) => pair === id) ? pairName(id, speakers) : whole;
    })
    .replace(/\bthe the\b/g, 'the');
  return sentence(named);
}

/** Several of them, each once. */
export const plainReasons = (
  reasons: readonly string[] | undefined,
  speakers: readonly SpeakerInput[],
): string[] => [...new Set((reasons ?? []).map((reason) => plainReason(reason, speakers)))];
