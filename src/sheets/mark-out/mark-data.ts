/** All that a mark-out sheet says of each speaker, worked out once. */
import { type Caution, cautionsFor } from '../../exchange/cautions';
import {
  type CabinModel,
  formOfSpeaker,
  type KeepClearZone,
  type MarkOut,
  type MarkTemplate,
  markOut,
  markTemplate,
  type OptionInput,
  type Panel,
  type PlacedSpeaker,
  type RingShapeAnswer,
  type SpeakerInput,
  zonesAtSpot,
} from '../../geometry';

export interface SpeakerMarks {
  speaker: SpeakerInput;
  placed: PlacedSpeaker;
  panel: Panel | null;
  mark: MarkOut;
  /** `null` without a panel, a body or an aim out of the panel. */
  template: MarkTemplate | null;
  /** The ring it stands on, or why there is none; `null` where it stands on none. */
  ring: RingShapeAnswer | null;
  /** Keep-clear zones it reaches into, its ring included. */
  zones: readonly KeepClearZone[];
  /** Those of its panel, without those that go for every spot. */
  cautions: readonly Caution[];
}

/** Every speaker that stands somewhere, in the option's order. */
export function speakerMarks(
  cabin: CabinModel,
  { speakers }: Pick<OptionInput, 'speakers'>,
  placed: readonly PlacedSpeaker[],
): SpeakerMarks[] {
  const marks = markOut(cabin, speakers, placed);
  return marks.flatMap((mark): SpeakerMarks[] => {
    const speaker = speakers.find(({ id }) => id === mark.speaker);
    const place = placed.find((one) => one.speaker === mark.speaker);
    if (!speaker || !place) return [];
    const panel = cabin.panels.find(({ id }) => id === mark.panel) ?? null;
    return [
      {
        speaker,
        placed: place,
        panel,
        mark,
        template: markTemplate(panel, speaker, place, mark.tapes),
        ring: formOfSpeaker(speaker, place),
        zones: zonesAtSpot(cabin.keepClear, place, speaker.body, speaker),
        cautions: cautionsFor(mark.panel).filter(({ panels }) => panels.length > 0),
      },
    ];
  });
}
