import type { SpeakerInput } from '../../geometry';
import { copySpeaker, removeSpeaker } from '../../plan/edits';
import { pairName, speakerName } from '../../plan/names';
import type { PlanOption } from '../../plan/types';
import { planStore, sessionStore } from '../../store';
import { selectSpeaker } from '../answers/speaker-button';
import { useLocked } from '../parts/use-board';
import { addedTo } from './added-to';
import type { SpeakerGroup } from './group-speakers';

interface GroupActionsProps {
  /** The selected one of the group. */
  speaker: SpeakerInput;
  option: PlanOption;
  group: SpeakerGroup;
}

/** Copying and removing the selected speaker or its pair. */
export function GroupActions({ speaker, option, group }: GroupActionsProps) {
  const locked = useLocked();
  const name = speakerName(speaker, option.speakers);
  const paired = group.pair !== null && group.speakers.length === 2;

  function remove(withTwin: boolean, what: string): void {
    planStore.edit(`remove ${what}`, removeSpeaker(option.id, speaker.id, withTwin));
    sessionStore.setState({ selection: null });
  }

  function copy(): void {
    const made = addedTo(option.id, `copy ${name}`, copySpeaker(option.id, speaker.id));
    if (made) selectSpeaker(made);
  }

  return (
    <div className="word-buttons">
      <button type="button" disabled={locked} onClick={copy}>
        Copy<span className="unseen"> {name}</span>
      </button>
      {paired && (
        <button
          type="button"
          disabled={locked}
          onClick={() => remove(true, `the ${pairName(group.pair ?? '', option.speakers)}`)}
        >
          Remove both
        </button>
      )}
      <button type="button" disabled={locked} onClick={() => remove(false, name)}>
        {paired ? `Remove ${speaker.side}` : 'Remove'}
      </button>
    </div>
  );
}
