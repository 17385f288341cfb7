import type { SpeakerInput } from '../../geometry';

/** A pair, left before right, or one speaker without a twin. */
export interface Group {
  /** The pair's id, or the lone speaker's. */
  id: string;
  members: readonly [SpeakerInput] | readonly [SpeakerInput, SpeakerInput];
}

/** The speakers of an option by pair, in the order each pair first appears. */
export function groupsOf(speakers: readonly SpeakerInput[]): Group[] {
  const groups: Group[] = [];
  const done = new Set<string>();
  for (const speaker of speakers) {
    if (done.has(speaker.id)) continue;
    const twin =
      speaker.pair && speaker.side
        ? speakers.find(
            (s) => !done.has(s.id) && s.id !== speaker.id && s.pair === speaker.pair && s.side,
          )
        : undefined;
    if (!twin || !speaker.pair) {
      done.add(speaker.id);
      groups.push({ id: speaker.id, members: [speaker] });
      continue;
    }
    done.add(speaker.id).add(twin.id);
    const members =
      speaker.side === 'left' ? ([speaker, twin] as const) : ([twin, speaker] as const);
    groups.push({ id: speaker.pair, members });
  }
  return groups;
}
