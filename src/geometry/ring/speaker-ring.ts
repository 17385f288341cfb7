import type { SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import type { RingAnswer, RingInput, RingPlace, RingShapeAnswer } from './types';
import { usualRing } from './usual-ring';
import { ringShape, wedgeRing } from './wedge-ring';

/** The ring a speaker stands on in full; `null`: it stands on none, or its body is not known. */
export const inputOfSpeaker = ({ ring, body }: SpeakerInput): RingInput | null =>
  ring && body ? usualRing(body, ring) : null;

/** Where its ring is; `null` at a free point, or without an aim. */
export function placeOfSpeaker(
  { mount }: SpeakerInput,
  { position, axis, normal }: PlacedSpeaker,
): RingPlace | null {
  return mount && axis && normal ? { position, axis, normal, standoff: mount.standoff ?? 0 } : null;
}

/** The ring a speaker stands on, or why there is none; `null` where none is asked for. */
export function ringOfSpeaker(speaker: SpeakerInput, placed: PlacedSpeaker): RingAnswer | null {
  const [input, place] = [inputOfSpeaker(speaker), placeOfSpeaker(speaker, placed)];
  return input && place && wedgeRing(input, place);
}

/** The same without its mesh. */
export function formOfSpeaker(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
): RingShapeAnswer | null {
  const [input, place] = [inputOfSpeaker(speaker), placeOfSpeaker(speaker, placed)];
  return input && place && ringShape(input, place);
}
