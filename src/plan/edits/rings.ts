/** The wedge ring a speaker stands on. */
import { castDraft } from 'immer';
import type { SpeakerRing } from '../../geometry';
import { assign, findSpeaker, type PlanRecipe, plain, tiedTwin } from './recipe';

export type RingFields = { [K in keyof SpeakerRing]?: SpeakerRing[K] | null };

/**
 * Puts a speaker and its tied twin on a ring, or changes theirs; `null` for a field makes it follow
 * from the body again. `null` for all takes the ring away.
 */
export function setRing(
  optionId: string,
  speakerId: string,
  fields: RingFields | null,
): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const twin = tiedTwin(found.option, found.speaker);
    for (const one of twin ? [found.speaker, twin] : [found.speaker]) {
      if (!fields) {
        assign(one, { ring: null });
        continue;
      }
      const ring = { ...(plain(one.ring ?? {}) as SpeakerRing) };
      assign(ring, fields);
      assign(one, { ring: castDraft(ring) });
    }
  };
}
