import type { CabinModel, SpeakerInput } from '../../geometry';
import { speakerName } from '../../plan/names';
import {
  formatFrequency,
  formatLength,
  formatLevel,
  formatTime,
  type LengthUnit,
  signedLength,
} from '../../plan/units';
import { thingName, withArticle } from '../parts/names';
import type { Wording } from './way-words';

/** How the sentences name and count things, in the user's unit. */
export function wordingFor(
  cabin: CabinModel,
  speakers: readonly SpeakerInput[],
  unit: LengthUnit,
): Wording {
  return {
    length: (mm) => formatLength(mm, unit),
    more: (mm) => signedLength(mm, unit, unit === 'mm' && Math.abs(mm) < 0.95 ? 1 : undefined),
    time: (ms) => formatTime(ms),
    level: (db) => formatLevel(db, 0),
    frequency: formatFrequency,
    speaker: (speaker) => speakerName(speaker, speakers),
    thing: (id) => withArticle(thingName(cabin, id)),
  };
}
