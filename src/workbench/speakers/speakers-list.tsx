import { copySpeaker, isTied, removeSpeaker, tiePair } from '../../plan/edits';
import { pairName, speakerName } from '../../plan/names';
import type { PlanOption } from '../../plan/types';
import { formatLength } from '../../plan/units';
import { planStore, sessionStore, useSession } from '../../store';
import { selectSpeaker } from '../answers/speaker-button';
import { SideMark } from '../parts/marks';
import { type Board, useBoard, useLocked } from '../parts/use-board';
import { AddSpeakers } from './add-speakers';
import { addedTo } from './added-to';
import { groupSpeakers, type SpeakerGroup } from './group-speakers';

/** The speakers of the option on the board, by pair. */
export function SpeakersList() {
  const { board } = useBoard();
  const option = board?.option;
  return (
    <section id="speakers" aria-labelledby="speakers-head" tabIndex={-1}>
      <div className="section-head">
        <h2 id="speakers-head">Speakers</h2>
      </div>
      {option && board && (
        <>
          <ul className="speaker-groups">
            {groupSpeakers(option.speakers).map((group) => (
              <Group key={group.key} group={group} option={option} board={board} />
            ))}
          </ul>
          <AddSpeakers option={option} />
        </>
      )}
    </section>
  );
}

interface GroupProps {
  group: SpeakerGroup;
  option: PlanOption;
  board: Board;
}

function Group({ group, option, board }: GroupProps) {
  const selection = useSession((session) => session.selection);
  const unit = useSession((session) => session.lengthUnit);
  const locked = useLocked();
  const selected = group.speakers.find(
    (speaker) => selection?.kind === 'speaker' && selection.id === speaker.id,
  );
  const first = group.speakers[0];
  const { pair } = group;
  const name =
    pair === null ? first && speakerName(first, option.speakers) : pairName(pair, option.speakers);
  return (
    <li data-selected={selected !== undefined}>
      <div className="group-head">
        <h3>{name}</h3>
        {pair !== null && group.speakers.length === 2 && (
          <label className="tie">
            <input
              type="checkbox"
              checked={isTied(option, pair)}
              disabled={locked}
              onChange={(event) => {
                const tied = event.target.checked;
                const label = tied ? `tie the ${name}` : `untie the ${name}`;
                planStore.edit(label, tiePair(option.id, pair, tied));
              }}
            />
            tied<span className="unseen">: left and right {name} move together</span>
          </label>
        )}
      </div>
      <div className="group-speakers">
        {group.speakers.map((speaker) => {
          const arrival = board.seat?.arrivals.find((a) => a.speaker === speaker.id);
          return (
            <button
              key={speaker.id}
              type="button"
              className="speaker-pick"
              aria-pressed={speaker.id === selected?.id}
              onClick={() => selectSpeaker(speaker.id)}
            >
              <SideMark side={speaker.side} />
              <span className="unseen">{speakerName(speaker, option.speakers)}, </span>
              <span>{arrival ? formatLength(arrival.path, unit) : '–'}</span>
            </button>
          );
        })}
      </div>
      {selected && <GroupActions selected={selected.id} option={option} group={group} />}
    </li>
  );
}

interface GroupActionsProps {
  selected: string;
  option: PlanOption;
  group: SpeakerGroup;
}

function GroupActions({ selected, option, group }: GroupActionsProps) {
  const locked = useLocked();
  const speaker = group.speakers.find(({ id }) => id === selected);
  if (!speaker) return null;
  const name = speakerName(speaker, option.speakers);
  const paired = group.speakers.length === 2;
  const remove = (withTwin: boolean, what: string) => {
    planStore.edit(`remove ${what}`, removeSpeaker(option.id, selected, withTwin));
    sessionStore.setState({ selection: null });
  };
  return (
    <div className="row small-buttons">
      <button
        type="button"
        disabled={locked}
        onClick={() => {
          const made = addedTo(option.id, `copy ${name}`, copySpeaker(option.id, selected));
          if (made) selectSpeaker(made);
        }}
      >
        Copy
      </button>
      {paired && group.pair !== null && (
        <button
          type="button"
          disabled={locked}
          onClick={() => remove(true, `the ${pairName(group.pair ?? '', option.speakers)}`)}
        >
          Remove pair
        </button>
      )}
      <button type="button" disabled={locked} onClick={() => remove(false, name)}>
        {paired ? `Remove ${speaker.side}` : 'Remove'}
      </button>
    </div>
  );
}
