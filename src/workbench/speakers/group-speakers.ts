import type { SpeakerInput } from '../../geometry';

export interface SpeakerGroup {
  /** The pair's id, or the lone speaker's. */
  key: string;
  pair: string | null;
  /** Left before right. */
  speakers: SpeakerInput[];
}

const ORDER = { left: 0, right: 1 } as const;

/** The speakers of an option by pair, in the order each pair first appears. */
export function groupSpeakers(speakers: readonly SpeakerInput[]): SpeakerGroup[] {
  const groups = new Map<string, SpeakerGroup>();
  for (const speaker of speakers) {
    const pair = speaker.pair && speaker.side ? speaker.pair : null;
    const key = pair === null ? `one:${speaker.id}` : `pair:${pair}`;
    const group = groups.get(key) ?? { key, pair, speakers: [] };
    group.speakers.push(speaker);
    groups.set(key, group);
  }
  for (const { speakers: members } of groups.values()) {
    members.sort((a, b) => (a.side ? ORDER[a.side] : 2) - (b.side ? ORDER[b.side] : 2));
  }
  return [...groups.values()];
}
