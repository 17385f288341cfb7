import { useMemo, useRef } from 'react';
import type { SpeakerInput } from '../../geometry';
import { useSession } from '../../store';
import { type Group, groupsOf } from './groups';
import { selectSpeaker } from './speaker-button';

/**
 * The pair (or lone speaker) a sheet is about: that of the speaker selected last, else the one
 * proposed, else the first.
 * Choosing another selects its first speaker, so that page and drawing go along.
 */
export function useGroup(
  speakers: readonly SpeakerInput[],
  proposed: string | null = null,
): {
  groups: Group[];
  group: Group | null;
  choose: (id: string) => void;
} {
  const selected = useSession(({ selection }) =>
    selection?.kind === 'speaker' ? selection.id : null,
  );
  const groups = useMemo(() => groupsOf(speakers), [speakers]);
  const last = useRef<string | null>(null);
  // A panel or a seat selected since does not change what is looked at.
  if (selected !== null) last.current = selected;
  const has = ({ members }: Group) => members.some(({ id }) => id === last.current);
  const group = groups.find(has) ?? groups.find(({ id }) => id === proposed) ?? groups[0] ?? null;
  const choose = (id: string) => {
    const [first] = groups.find((one) => one.id === id)?.members ?? [];
    if (first) selectSpeaker(first.id);
  };
  return { groups, group, choose };
}
