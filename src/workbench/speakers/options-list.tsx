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
import { planStore, sessionStore, useAnswer, useSession, useShownPlan } from '../../store';
import { TextField } from '../parts/text-field';
import { useLocked } from '../parts/use-board';
import { widestDifference } from './widest-difference';

const onTheBoard = (option: string): void => sessionStore.setState({ option, selection: null });

/** The options of the plan: which one is on the board, and adding, copying, naming, removing. */
export function OptionsList() {
  const { options } = useShownPlan();
  const chosen = useSession((session) => session.option);
  const locked = useLocked();
  const [renaming, setRenaming] = useState(false);
  const current = options.find(({ id }) => id === chosen) ?? options[0];

  function make(label: string, recipe: ReturnType<typeof addOption>): void {
    const id = nextOptionId(planStore.getState().plan);
    planStore.edit(label, recipe);
    onTheBoard(id);
  }

  return (
    <section aria-labelledby="options-head">
      <div className="section-head">
        <h2 id="options-head">Options</h2>
        <button
          type="button"
          className="quiet"
          disabled={locked}
          onClick={() => make('add an option', addOption(`Option ${options.length + 1}`))}
        >
          Add
        </button>
      </div>
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
      {current && renaming && (
        <TextField
          label="Name of the option"
          value={optionTitle(current)}
          autoFocus
          onCommit={(title) => planStore.edit('rename the option', renameOption(current.id, title))}
          onDone={() => setRenaming(false)}
        />
      )}
      {current && !renaming && (
        <div className="row small-buttons">
          <button
            type="button"
            disabled={locked}
            onClick={() => make('copy the option', copyOption(current.id))}
          >
            Copy
          </button>
          <button type="button" disabled={locked} onClick={() => setRenaming(true)}>
            Rename
          </button>
          <button
            type="button"
            disabled={locked || options.length < 2}
            title={options.length < 2 ? 'A plan keeps at least one option' : undefined}
            onClick={() => planStore.edit('remove the option', removeOption(current.id))}
          >
            Remove
          </button>
        </div>
      )}
    </section>
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
          {widest !== null && `, at most ${formatLength(widest, unit)} apart`}
        </span>
      </span>
    </label>
  );
}
