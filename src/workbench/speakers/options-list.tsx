import { useState } from 'react';
import {
  addOption,
  copyOption,
  nextOptionId,
  optionTitle,
  removeOption,
  renameOption,
} from '../../plan/edits';
import type { PlanOption } from '../../plan/types';
import { formatLength } from '../../plan/units';
import {
  planStore,
  type Recipe,
  sessionStore,
  useAnswer,
  useSession,
  useShownPlan,
} from '../../store';
import { TextField } from '../parts/text-field';
import { useLocked } from '../parts/use-board';
import { widestDifference } from './widest-difference';

const onTheBoard = (option: string): void => sessionStore.setState({ option, selection: null });

/** The options of the plan: which one is on the board, and adding, copying, naming, removing. */
export function OptionsList() {
  const { options } = useShownPlan();
  const chosen = useSession((session) => session.option);
  const [renaming, setRenaming] = useState(false);
  const current = options.find(({ id }) => id === chosen) ?? options[0];

  return (
    <section aria-labelledby="options-head">
      <h2 id="options-head">Options</h2>
      <fieldset className="options">
        <legend className="unseen">Option on the board</legend>
        {options.map((option) => (
          <OptionRow
            key={option.id}
            option={option}
            checked={option.id === current?.id}
            onChoose={() => {
              setRenaming(false);
              onTheBoard(option.id);
            }}
          />
        ))}
      </fieldset>
      {current &&
        (renaming ? (
          <TextField
            label="Name of the option"
            value={optionTitle(current)}
            autoFocus
            onCommit={(title) =>
              planStore.edit('rename the option', renameOption(current.id, title))
            }
            onDone={() => setRenaming(false)}
          />
        ) : (
          <OptionActions current={current} onRename={() => setRenaming(true)} />
        ))}
    </section>
  );
}

function OptionActions({ current, onRename }: { current: PlanOption; onRename: () => void }) {
  const count = useShownPlan().options.length;
  const locked = useLocked();

  function make(label: string, recipe: Recipe): void {
    const id = nextOptionId(planStore.getState().plan);
    planStore.edit(label, recipe);
    onTheBoard(id);
  }

  return (
    <div className="word-buttons">
      <button
        type="button"
        disabled={locked}
        onClick={() => make('add an option', addOption(`Option ${count + 1}`))}
      >
        Add<span className="unseen"> an option</span>
      </button>
      <button
        type="button"
        disabled={locked}
        onClick={() => make('copy the option', copyOption(current.id))}
      >
        Copy<span className="unseen"> {optionTitle(current)}</span>
      </button>
      <button type="button" disabled={locked} onClick={onRename}>
        Rename<span className="unseen"> {optionTitle(current)}</span>
      </button>
      <button
        type="button"
        disabled={locked || count < 2}
        title={count < 2 ? 'A plan keeps at least one option' : undefined}
        onClick={() => planStore.edit('remove the option', removeOption(current.id))}
      >
        Remove<span className="unseen"> {optionTitle(current)}</span>
      </button>
    </div>
  );
}

interface OptionRowProps {
  option: PlanOption;
  checked: boolean;
  onChoose: () => void;
}

function OptionRow({ option, checked, onChoose }: OptionRowProps) {
  const answer = useAnswer();
  const unit = useSession((session) => session.lengthUnit);
  const seat = useSession((session) => session.seat);
  const result = answer.ok ? answer.options.find(({ id }) => id === option.id) : undefined;
  const widest = widestDifference(result, seat);
  const count = option.speakers.length;
  return (
    <label className="option-row">
      <input type="radio" name="option" checked={checked} onChange={onChoose} />
      <span>
        <span className="option-title" dir="auto">
          {optionTitle(option)}
        </span>
        <span className="quiet-text option-sum">
          {count === 1 ? '1 speaker' : `${count} speakers`}
          {widest !== null && `, ${formatLength(widest, unit)} apart`}
        </span>
      </span>
    </label>
  );
}
