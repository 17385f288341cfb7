/** All that the ring sheet says of each ring, worked out once. */
import {
  backLift,
  type CabinModel,
  depthBehind,
  inputOfSpeaker,
  type KeepClearZone,
  type OptionInput,
  type Panel,
  type PlacedSpeaker,
  placeOfSpeaker,
  type RingInput,
  type RingPlace,
  type RingShapeAnswer,
  ringShape,
  type SpeakerInput,
  zonesAtSpot,
} from '../../geometry';

export interface SpeakerOnRing {
  speaker: SpeakerInput;
  panel: Panel;
  input: RingInput;
  place: RingPlace;
  answer: RingShapeAnswer;
  /** The panel leaves the ring's flat back by up to this, mm. */
  lift: number;
  /** Of the speaker's body, behind its panel, mm; 0: no hole is cut for it. */
  behind: number;
  zones: readonly KeepClearZone[];
}

/** Every speaker of the option that stands on a ring, in its order. */
export function speakersOnRings(
  cabin: CabinModel,
  { speakers }: Pick<OptionInput, 'speakers'>,
  placed: readonly PlacedSpeaker[],
): SpeakerOnRing[] {
  return speakers.flatMap((speaker): SpeakerOnRing[] => {
    const at = placed.find((one) => one.speaker === speaker.id);
    const panel = cabin.panels.find(({ id }) => id === speaker.mount?.panel);
    const input = inputOfSpeaker(speaker);
    const place = at && placeOfSpeaker(speaker, at);
    const behind = at && panel ? depthBehind(speaker, at, panel) : null;
    if (!at || !panel || !input || !place || behind === null) return [];
    const answer = ringShape(input, place);
    return [
      {
        speaker,
        panel,
        input,
        place,
        answer,
        lift: answer.ok ? backLift(panel, speaker, input, answer.ring) : 0,
        behind,
        zones: zonesAtSpot(cabin.keepClear, at, speaker.body, speaker),
      },
    ];
  });
}
