import { copyOption, nextOptionId, optionTitle } from '../../../plan/edits';
import type { PlanOption } from '../../../plan/types';
import { planStore, sessionStore } from '../../../store';
import { useLocked } from '../../parts/use-board';

/** Nothing to compare yet, and how to come by something. */
export function OneOption({ option }: { option: PlanOption }) {
  const locked = useLocked();
  const copy = () => {
    const id = nextOptionId(planStore.getState().plan);
    planStore.edit('copy the option', copyOption(option.id));
    sessionStore.setState({ option: id, selection: null });
  };
  return (
    <div className="compare-one">
      <p>
        There is one option, so there is nothing to compare it with. Copy it and move a pair, or let
        the search find spots and take one of its answers as an option.
      </p>
      <p>
        <button type="button" disabled={locked} onClick={copy}>
          Copy {optionTitle(option)}
        </button>
      </p>
    </div>
  );
}
