import type { SpeakerInput } from '../input';
import { pairsOf } from '../stage/pairs';
import type { Who } from './measure';

export interface WhoGroup {
  who: Who;
  /** The pair's id; `null` for a speaker without a twin. */
  pair: string | null;
  members: readonly SpeakerInput[];
}

/**
 * The pairs and lone speakers of an option by role and number, so that the same ones are found in
 * another option whatever their ids.
 */
export function whoIn(speakers: readonly SpeakerInput[]): WhoGroup[] {
  const counted = new Map<string, number>();
  const next = (key: string): number => {
    const nth = counted.get(key) ?? 0;
    counted.set(key, nth + 1);
    return nth;
  };
  const members = pairsOf(speakers).flatMap(({ pair, left, right }): WhoGroup[] => {
    const own = speakers.filter(({ id }) => id === left || id === right);
    const role = own[0]?.role;
    return role ? [{ who: { role, nth: next(role) }, pair, members: own }] : [];
  });
  const paired = new Set(members.flatMap((group) => group.members.map(({ id }) => id)));
  const lone = speakers
    .filter(({ id }) => !paired.has(id))
    .map((speaker): WhoGroup => {
      const { role } = speaker;
      return {
        who: { role, nth: next(`lone ${role}`), lone: true },
        pair: null,
        members: [speaker],
      };
    });
  return [...members, ...lone];
}
