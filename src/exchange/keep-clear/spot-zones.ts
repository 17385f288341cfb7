import {
  type CabinModel,
  type KeepClearZone,
  type OptionResult,
  type SpeakerInput,
  zonesAtSpot,
} from '../../geometry';
import { words } from '../../plan/names';

/** A speaker with the keep-clear zones it reaches into. */
export interface SpotZones {
  speaker: SpeakerInput;
  zones: KeepClearZone[];
}

/** Every speaker of an option, in its order, with the zones it reaches into (often none). */
export function zonesOfOption(
  cabin: CabinModel,
  option: { speakers: readonly SpeakerInput[] },
  result: OptionResult,
): SpotZones[] {
  return option.speakers.map((speaker) => {
    const placed = result.placed.find((place) => place.speaker === speaker.id);
    return {
      speaker,
      zones: placed ? zonesAtSpot(cabin.keepClear, placed, speaker.body, speaker) : [],
    };
  });
}

/** A zone the plan gave has only its id for a name. */
export const zoneName = (zone: Pick<KeepClearZone, 'id' | 'name'>): string =>
  zone.name === zone.id ? words(zone.id) : zone.name;
