/** The names over the two halves, what may be done with the second, and what each shows in words. */
import { useId } from 'react';
import { optionTitle } from '../../plan/edits';
import { speakerName } from '../../plan/names';
import type { PlanOption } from '../../plan/types';
import { currentAnswer, currentSeat, sessionStore, usePlan, useSession } from '../../store';
import { shortLineWords } from '../words/line-words';

/** @param leave called when the second half is closed: its buttons had the focus and are gone */
export function HalfHeadings({ leave }: { leave: () => void }) {
  // Of the whole plan: a seat that has slid changes the ways of every option.
  const { options } = usePlan(({ plan }) => plan);
  const chosen = useSession((session) => session.option);
  const besideId = useSession((session) => session.beside);
  const onBoard = options.find(({ id }) => id === chosen) ?? options[0];
  const beside = options.find(({ id }) => id === besideId);
  if (!onBoard || !beside) return null;

  const close = () => {
    sessionStore.setState({ beside: null });
    leave();
  };
  return (
    <div className="scene-halves">
      <HalfHeading option={onBoard}>
        <p className="scene-half-note">on the board</p>
      </HalfHeading>
      <HalfHeading option={beside}>
        <p className="scene-late" role="status">
          Follows when you let go
        </p>
        <button type="button" onClick={() => swap(onBoard, beside)}>
          Put on the board
        </button>
        <button type="button" onClick={close}>
          Close<span className="scene-hidden-words"> {optionTitle(beside)}</span>
        </button>
      </HalfHeading>
    </div>
  );
}

function HalfHeading({ option, children }: { option: PlanOption; children: React.ReactNode }) {
  const id = useId();
  return (
    <section className="scene-half" aria-labelledby={id}>
      <div className="scene-half-head">
        <h2 id={id} dir="auto">
          {optionTitle(option)}
        </h2>
        {children}
      </div>
      <WaysInWords option={option} />
    </section>
  );
}

/** What the labels say, for those who do not see them: they are moved with the camera and hidden. */
function WaysInWords({ option }: { option: PlanOption }) {
  const unit = useSession((session) => session.lengthUnit);
  // Another seat in view, other ways.
  useSession((session) => session.seat);
  const answer = currentAnswer();
  const result = answer.ok ? answer.options.find(({ id }) => id === option.id) : undefined;
  const seat = currentSeat(result ?? null);
  return (
    <ul className="scene-hidden-words">
      {option.speakers.map((speaker) => {
        const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
        return (
          <li key={speaker.id}>
            {speakerName(speaker, option.speakers)}
            {arrival && `: ${shortLineWords(arrival, unit)}`}
          </li>
        );
      })}
    </ul>
  );
}

/** The two change places; a chosen speaker stays chosen where the other option has it too. */
function swap(onBoard: PlanOption, beside: PlanOption): void {
  const { selection } = sessionStore.getState();
  const stays =
    selection?.kind !== 'speaker' || beside.speakers.some(({ id }) => id === selection.id);
  sessionStore.setState({
    option: beside.id,
    beside: onBoard.id,
    selection: stays ? selection : null,
  });
}
