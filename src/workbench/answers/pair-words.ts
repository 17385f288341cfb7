import type { Arrival, SeatResult, SpeakerInput } from '../../geometry';

/** How numbers and things are called, given from outside so that the sentences stay plain text. */
export interface Wording {
  length: (mm: number) => string;
  time: (ms: number) => string;
  /** "left midrange", without an article. */
  speaker: (speaker: SpeakerInput) => string;
  /** An obstacle or a panel: "the steering wheel". */
  thing: (id: string) => string;
}

/** What one pair (or one speaker without a twin) does at a seat, in plain words. */
export interface PairWords {
  /** The pair's id, or the lone speaker's. */
  id: string;
  speakers: string[];
  kind: 'apart' | 'together' | 'alone' | 'unknown';
  /** The answer: "Left midrange is 283 mm nearer; delay it 0.82 ms." */
  answer: string;
  /** One sentence for each speaker whose straight line is blocked. */
  blocked: string[];
}

/**
 * Closer than this two arrivals are called together, ms: half of the last digit shown. It is also
 * the ear's just noticeable interaural difference, about 10 µs, halved (CIPIC notes).
 */
export const TOGETHER = 0.005;

/** The sentences for one seat, pairs first in the option's order, then speakers without a twin. */
export function pairWords(
  speakers: readonly SpeakerInput[],
  seat: SeatResult,
  wording: Wording,
): PairWords[] {
  const arrivals = new Map(seat.arrivals.map((arrival) => [arrival.speaker, arrival]));
  const lines: PairWords[] = [];
  const done = new Set<string>();
  for (const speaker of speakers) {
    if (done.has(speaker.id)) continue;
    const twin = speaker.pair
      ? speakers.find((s) => s.id !== speaker.id && s.pair === speaker.pair && s.side)
      : undefined;
    const members =
      twin && speaker.side
        ? speaker.side === 'left'
          ? [speaker, twin]
          : [twin, speaker]
        : [speaker];
    for (const member of members) done.add(member.id);
    const own = members.map((member) => ({ member, arrival: arrivals.get(member.id) }));
    lines.push({
      id: twin && speaker.pair ? speaker.pair : speaker.id,
      speakers: members.map((member) => member.id),
      ...answerFor(own, wording),
      blocked: own.flatMap(({ member, arrival }) => blockedWords(member, arrival, wording)),
    });
  }
  return lines;
}

interface Member {
  member: SpeakerInput;
  arrival: Arrival | undefined;
}

function answerFor(members: Member[], wording: Wording): Pick<PairWords, 'kind' | 'answer'> {
  const [a, b] = members;
  if (!a?.arrival || (b && !b.arrival)) return { kind: 'unknown', answer: 'No arrival is known.' };
  if (!b?.arrival) {
    const name = capital(wording.speaker(a.member));
    const { path, time } = a.arrival;
    return {
      kind: 'alone',
      answer: `${name} is ${wording.length(path)} away; its sound takes ${wording.time(time)}.`,
    };
  }
  const difference = a.arrival.path - b.arrival.path;
  const apart = Math.abs(a.arrival.time - b.arrival.time);
  if (apart < TOGETHER) {
    const name = withoutSide(wording.speaker(a.member));
    return { kind: 'together', answer: `Left and right ${name} arrive together.` };
  }
  const nearer = difference < 0 ? a : b;
  return {
    kind: 'apart',
    answer:
      `${capital(wording.speaker(nearer.member))} is ${wording.length(Math.abs(difference))} ` +
      `nearer; delay it ${wording.time(apart)}.`,
  };
}

function blockedWords(
  speaker: SpeakerInput,
  arrival: Arrival | undefined,
  wording: Wording,
): string[] {
  if (arrival?.line !== 'blocked') return [];
  const things = list(arrival.blockedBy.map(wording.thing));
  return [`The line from the ${wording.speaker(speaker)} is blocked by ${things}.`];
}

const withoutSide = (name: string): string => name.replace(/^(left|right) /, '');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a", "a and b", "a, b and c". */
export function list(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? 'something';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}
