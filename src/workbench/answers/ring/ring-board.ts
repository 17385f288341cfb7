import {
  clamp,
  inputOfSpeaker,
  type Panel,
  type PlacedSpeaker,
  placeOfSpeaker,
  placeSpeaker,
  type RingAnswer,
  type RingInput,
  type RingPlace,
  ringStandoff,
  type SpeakerInput,
  type Stage,
  wedgeRing,
} from '../../../geometry';

/** A speaker on its ring as it stands. */
export interface StandingRing {
  speaker: SpeakerInput;
  placed: PlacedSpeaker;
  panel: Panel;
  input: RingInput;
  place: RingPlace;
  answer: RingAnswer;
}

/** `null` without a ring, a body, a panel or an aim. */
export function ringAt({ cabin, result }: Stage, speaker: SpeakerInput): StandingRing | null {
  const placed = result.placed.find((one) => one.speaker === speaker.id);
  const panel = cabin.panels.find(({ id }) => id === speaker.mount?.panel);
  const input = inputOfSpeaker(speaker);
  const place = placed ? placeOfSpeaker(speaker, placed) : null;
  if (!placed || !panel || !input || !place) return null;
  return { speaker, placed, panel, input, place, answer: wedgeRing(input, place) };
}

/** Between a speaker's axis and its panel's normal, degrees; `null` without one of the two. */
export function wedgeOf({ result }: Stage, { id }: SpeakerInput): number | null {
  const placed = result.placed.find((one) => one.speaker === id);
  if (!placed?.axis || !placed.normal) return null;
  const [a, b] = [placed.axis, placed.normal];
  return (Math.acos(clamp(a[0] * b[0] + a[1] * b[1] + a[2] * b[2], -1, 1)) * 180) / Math.PI;
}

/**
 * The stand-off that makes a ring possible for every one of these speakers, which move together;
 * `null` where none does.
 */
export function standoffFor(stage: Stage, speakers: readonly SpeakerInput[]): number | null {
  const panels = new Map(stage.cabin.panels.map((panel) => [panel.id, panel]));
  const seats = new Map(stage.cabin.seats.map((seat) => [seat.id, seat]));
  const wanted = speakers.map((speaker) => {
    const input = inputOfSpeaker(speaker);
    const { mount } = speaker;
    if (!input || !mount) return null;
    return ringStandoff(input, (standoff) => {
      const there = { ...speaker, mount: { ...mount, standoff } };
      const answer = placeSpeaker(there, panels, seats);
      return answer.ok ? placeOfSpeaker(there, answer.placed) : null;
    });
  });
  return wanted.some((one) => one === null) ? null : Math.max(...(wanted as number[]));
}
