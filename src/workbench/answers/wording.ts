import type { CabinModel, SpeakerInput } from '../../geometry';
import { speakerName } from '../../plan/names';
import { formatLength, formatTime, type LengthUnit } from '../../plan/units';
import { thingName, withArticle } from '../parts/names';
import type { Wording } from './pair-words';

/** How the sentences name and count things, in the user's unit. */
export function wordingFor(
  cabin: CabinModel,
  speakers: readonly SpeakerInput[],
  unit: LengthUnit,
): Wording {
  return {
    length: (mm) => formatLength(mm, unit),
    time: (ms) => formatTime(ms),
    speaker: (speaker) => speakerName(speaker, speakers),
    thing: (id) => withArticle(thingName(cabin, id)),
  };
}
