import { lazy, Suspense } from 'react';
import { isTied, tiePair } from '../../plan/edits';
import { pairName, speakerName } from '../../plan/names';
import type { PlanOption } from '../../plan/types';
import { lengthNumber } from '../../plan/units';
import { planStore, useSession } from '../../store';
import { selectSpeaker } from '../answers/speaker-button';
import { Boundary } from '../parts/boundary';
import { SideMark } from '../parts/marks';
import { type Board, useBoard, useLocked } from '../parts/use-board';
import { AddSpeakers } from './add-speakers';
import { GroupActions } from './group-actions';
import { groupSpeakers, type SpeakerGroup } from './group-speakers';

// Not needed for the first numbers on screen.
const GroupFitSign = lazy(() => import('../fit/group-fit'));

/** The speakers of the option on the board, by pair, each with its path to the seat in view. */
export function SpeakersList() {
  const { board } = useBoard();
  const unit = useSession((session) => session.lengthUnit);
  const option = board?.option;
  return (
    <section id="speakers" aria-labelledby="speakers-head" tabIndex={-1}>
      <div className="section-head">
        <h2 id="speakers-head">Speakers</h2>
        <span className="quiet-text small">path in {unit === 'in' ? 'inches' : 'mm'}, tied</span>
      </div>
      {option && board && (
        <>
          <ul className="speaker-groups">
            {groupSpeakers(option.speakers).map((group) => (
              <Group key={group.key} group={group} option={option} board={board} />
            ))}
          </ul>
          <AddSpeakers key={option.id} option={option} />
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
  const selected = group.speakers.find(
    (speaker) => selection?.kind === 'speaker' && selection.id === speaker.id,
  );
  const { pair, speakers } = group;
  const first = speakers[0];
  if (!first) return null;
  const name =
    pair === null ? speakerName(first, option.speakers) : pairName(pair, option.speakers);
  return (
    <li data-selected={selected !== undefined}>
      <div className="group-row">
        <h3>{name}</h3>
        {speakers.map((speaker) => (
          <SpeakerPick
            key={speaker.id}
            speaker={speaker}
            option={option}
            board={board}
            selected={speaker.id === selected?.id}
          />
        ))}
        {pair !== null && speakers.length === 2 && (
          <TieBox option={option} pair={pair} name={name} />
        )}
      </div>
      <Boundary what="whether it fits">
        <Suspense fallback={null}>
          <GroupFitSign board={board} ids={speakers.map(({ id }) => id)} brief />
        </Suspense>
      </Boundary>
      {selected && <GroupActions speaker={selected} option={option} group={group} />}
    </li>
  );
}

interface SpeakerPickProps {
  speaker: SpeakerGroup['speakers'][number];
  option: PlanOption;
  board: Board;
  selected: boolean;
}

function SpeakerPick({ speaker, option, board, selected }: SpeakerPickProps) {
  const unit = useSession((session) => session.lengthUnit);
  const path = board.seat?.arrivals.find((a) => a.speaker === speaker.id)?.path;
  return (
    <button
      type="button"
      className={`speaker-pick ${speaker.side ?? 'neither'}`}
      aria-pressed={selected}
      onClick={() => selectSpeaker(speaker.id)}
    >
      <SideMark side={speaker.side} />
      <span className="unseen">{speakerName(speaker, option.speakers)}, </span>
      {lengthNumber(path, unit, unit === 'in' ? 1 : 0)}
    </button>
  );
}

function TieBox({ option, pair, name }: { option: PlanOption; pair: string; name: string }) {
  const locked = useLocked();
  const tied = isTied(option, pair);
  return (
    <label className="tie" title={tied ? 'Tied: left and right move together' : 'Not tied'}>
      <input
        type="checkbox"
        checked={tied}
        disabled={locked}
        onChange={() =>
          planStore.edit(`${tied ? 'untie' : 'tie'} the ${name}`, tiePair(option.id, pair, !tied))
        }
      />
      <span className="unseen">{name} tied: left and right move together</span>
    </label>
  );
}
