import type { PocketStudy, SealedPocket, SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';

/** "left pocket", "pocket of the subwoofer", "pocket 2": how one is called in a sentence. */
export function pocketName(
  pocket: SealedPocket,
  study: Pick<PocketStudy, 'side'>,
  among: readonly SealedPocket[],
  speakers: readonly SpeakerInput[],
): string {
  if (study.side) return `${study.side} pocket`;
  const [first] = pocket.speakers;
  const speaker = speakers.find(({ id }) => id === first);
  if (speaker) return `pocket of the ${speakerName(speaker, speakers)}`;
  return among.length > 1 ? `pocket ${among.indexOf(pocket) + 1}` : 'pocket';
}
