import type { Arrival, SeatResult, SpeakerInput } from '../../geometry';
import { capital } from './capital';
import { groupsOf } from './groups';
import { type WayNote, type Wording, wayNotes } from './way-words';

/** What one pair (or one speaker without a twin) does at a seat, in plain words. */
export interface PairWords {
  /** The pair's id, or the lone speaker's. */
  id: string;
  speakers: string[];
  kind: 'apart' | 'together' | 'alone' | 'unknown';
  /** The answer: "Left midrange is 283 mm nearer; delay it 0.82 ms." */
  answer: string;
  /** One for each speaker whose line is not clear. */
  notes: WayNote[];
}

/**
 * Closer than this two arrivals are called together, ms: half of the last digit shown. It is also
 * the ear's just noticeable interaural difference, about 10 µs, halved (CIPIC notes).
 */
export const TOGETHER = 0.005;

/** The sentences for one seat: a line for each pair or lone speaker, in the option's order. */
export function pairWords(
  speakers: readonly SpeakerInput[],
  seat: SeatResult,
  wording: Wording,
): PairWords[] {
  const arrivals = new Map(seat.arrivals.map((arrival) => [arrival.speaker, arrival]));
  return groupsOf(speakers).map(({ id, members }) => {
    const own = members.map((member) => ({ member, arrival: arrivals.get(member.id) }));
    return {
      id,
      speakers: members.map((member) => member.id),
      ...answerFor(own, wording),
      notes: wayNotes(own, wording),
    };
  });
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

const withoutSide = (name: string): string => name.replace(/^(left|right) /, '');
