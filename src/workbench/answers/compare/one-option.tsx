import { copyOption, nextOptionId, optionTitle } from '../../../plan/edits';
import type { PlanOption } from '../../../plan/types';
import { planStore, sessionStore } from '../../../store';
import { useLocked } from '../../parts/use-board';
import { openSheet } from '../open-sheet';

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
      <p className="row">
        <button type="button" disabled={locked} onClick={copy}>
          Copy {optionTitle(option)}
        </button>
        <button type="button" onClick={() => openSheet('search')}>
          Find best spots
        </button>
      </p>
    </div>
  );
}
