import type { Arrival, Band, Line, SpeakerInput } from '../../geometry';
import { capital } from './capital';

/** How numbers and things are called, given from outside so that the sentences stay plain text. */
export interface Wording {
  length: (mm: number) => string;
  /** With its sign, fine enough that a detour is never nothing. */
  more: (mm: number) => string;
  time: (ms: number) => string;
  /** Without digits after the point. */
  level: (db: number) => string;
  frequency: (hz: number) => string;
  /** "left midrange", without an article. */
  speaker: (speaker: SpeakerInput) => string;
  /** An obstacle or a panel: "the steering wheel". */
  thing: (id: string) => string;
}

/** A sentence about a line that is not free. */
export interface WayNote {
  line: Exclude<Line, 'clear'>;
  text: string;
}

/** The octave nearest the middle of a band on a logarithmic axis; `null` where there is none. */
export function middleOctave(
  bands: readonly Band[],
  bandHz: readonly [number, number] | undefined,
): Band | null {
  if (!bandHz) return null;
  const middle = Math.log(bandHz[0] * bandHz[1]) / 2;
  const away = ({ frequencyHz }: Band) => Math.abs(Math.log(frequencyHz) - middle);
  return bands.reduce<Band | null>((best, b) => (best && away(best) <= away(b) ? best : b), null);
}

/**
 * What stands in, or close to, a speaker's line, in a sentence: "Left mid goes round the driver's
 * left thigh: +1 mm, −5 dB at 1 kHz." `null` where the line is clear.
 */
export function wayNote(
  speaker: SpeakerInput,
  arrival: Arrival | undefined,
  wording: Wording,
): WayNote | null {
  if (!arrival || arrival.line === 'clear') return null;
  const { line, detour, round, blockedBy, grazedBy, reasons } = arrival;
  const name = capital(wording.speaker(speaker));
  if (line === 'grazing')
    return { line, text: `${name} passes close to ${things(grazedBy, wording)}.` };
  if (detour === null) {
    const why = reasons?.[0] ?? 'no way round is known';
    return { line, text: `${name} is blocked by ${things(blockedBy, wording)}: ${why}.` };
  }
  const loss = lossInWords(speaker, arrival, wording);
  const by = things(round.length > 0 ? round : blockedBy, wording);
  return { line, text: `${name} goes round ${by}: ${wording.more(detour)}${loss}.` };
}

/** The notes of a pair, or of one speaker; two near misses take one sentence between them. */
export function wayNotes(
  members: readonly { member: SpeakerInput; arrival: Arrival | undefined }[],
  wording: Wording,
): WayNote[] {
  const [a, b] = members;
  if (a?.arrival?.line === 'grazing' && b?.arrival?.line === 'grazing') {
    const name = capital(wording.speaker(a.member));
    const [one, other] = [a, b].map(({ arrival }) =>
      things(arrival?.grazedBy.slice(0, 1) ?? [], wording),
    );
    const rest = one === other ? `, ${b.member.side} as well` : `, ${b.member.side} to ${other}`;
    return [{ line: 'grazing', text: `${name} passes close to ${one}${rest}.` }];
  }
  return members.flatMap(({ member, arrival }) => wayNote(member, arrival, wording) ?? []);
}

function lossInWords(speaker: SpeakerInput, { bands }: Arrival, wording: Wording): string {
  const band = middleOctave(bands, speaker.bandHz);
  if (band === null || band.obstructionDb === null) return '';
  return `, ${wording.level(-band.obstructionDb)} at ${wording.frequency(band.frequencyHz)}`;
}

/** Two names longer than this together are told as one and how many more, letters. */
const SHORT = 44;

/** More than this, their number says nothing: at low frequencies all of the cabin is close by. */
const COUNTED = 5;

/** The first two of them by name, or the first and how many more where that is long. */
export function things(ids: readonly string[], { thing }: Pick<Wording, 'thing'>): string {
  const names = ids.map(thing);
  if (names.length < 2 || (names.length === 2 && names.join('').length <= SHORT))
    return list(names);
  if (names.length > COUNTED) return `${names[0]}, among others`;
  return `${names[0]} and ${names.length - 1} more`;
}

/** "a", "a and b", "a, b and c". */
export function list(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? 'something';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}
