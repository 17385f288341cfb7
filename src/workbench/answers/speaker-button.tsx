import type { ReactNode } from 'react';
import type { SpeakerInput } from '../../geometry';
import { speakerName } from '../../plan/names';
import { sessionStore, useSession } from '../../store';
import { SideMark } from '../parts/marks';

export const selectSpeaker = (id: string): void =>
  sessionStore.setState({ selection: { kind: 'speaker', id } });

export const useIsSelected = (id: string): boolean =>
  useSession(({ selection }) => selection?.kind === 'speaker' && selection.id === id);

/** A speaker's name in a table; choosing it selects the speaker. */
export function SpeakerButton({ id, name }: { id: string; name: string }) {
  const selected = useIsSelected(id);
  return (
    <button
      type="button"
      className="row-name"
      aria-current={selected ? 'true' : undefined}
      onClick={() => selectSpeaker(id)}
    >
      {name}
    </button>
  );
}

/** A table row that shows which speaker is selected. */
export function SpeakerRow({ id, children }: { id: string; children: ReactNode }) {
  return <tr data-selected={useIsSelected(id)}>{children}</tr>;
}

interface SpeakerHeadProps {
  speaker: SpeakerInput;
  among: readonly SpeakerInput[];
}

/** The head of a speaker's row: its side by letter and shape, its name to select it by. */
export function SpeakerHead({ speaker, among }: SpeakerHeadProps) {
  return (
    <th scope="row">
      <span className="row-label">
        <SideMark side={speaker.side} />
        <SpeakerButton id={speaker.id} name={speakerName(speaker, among)} />
      </span>
    </th>
  );
}
