import { useEffect } from 'react';
import { setTitle } from '../../plan/edits';
import { planStore, sessionStore, usePlan, useSession } from '../../store';
import { Segments } from '../parts/segments';
import { TextField } from '../parts/text-field';
import { useLocked } from '../parts/use-board';
import { useTheme } from '../parts/use-theme';
import { SeatInView } from './seat-in-view';
import { openPapers } from './use-paper';

export type DialogName = 'plans' | 'start' | 'export' | 'keys';

/** The plan's name and everything that is done to the plan as a whole, in words. */
export function TopBar({ onOpen }: { onOpen: (dialog: DialogName) => void }) {
  const title = usePlan((state) => state.plan.title);
  const locked = useLocked();
  useEffect(() => {
    document.title = `${title} – Earpath`;
  }, [title]);
  return (
    <header className="top-bar">
      <h1>Earpath</h1>
      <TextField
        className="plan-title"
        label="Title of the plan"
        hideLabel
        value={title}
        readOnly={locked}
        onCommit={(text) => planStore.edit('rename the plan', setTitle(text))}
      />
      <div className="top-bar-group">
        <button type="button" onClick={() => onOpen('plans')}>
          Plans…
        </button>
        <button type="button" onClick={() => onOpen('start')}>
          New car…
        </button>
        <button type="button" onClick={() => onOpen('export')}>
          Export…
        </button>
        <button type="button" onClick={openPapers}>
          On paper…
        </button>
      </div>
      <UndoButtons />
      <div className="top-bar-group top-bar-push">
        <SeatInView />
        <UnitButtons />
        <ThemeButton />
        <button type="button" className="quiet" onClick={() => onOpen('keys')}>
          Keys…
        </button>
      </div>
    </header>
  );
}

function UndoButtons() {
  const last = usePlan((state) => state.past[state.past.length - 1]?.label);
  const next = usePlan((state) => state.future[0]?.label);
  return (
    <div className="top-bar-group">
      <button
        type="button"
        disabled={!last}
        title={last ? `Undo: ${last}` : 'Nothing to undo'}
        onClick={() => planStore.undo()}
      >
        Undo{last && <span className="unseen">: {last}</span>}
      </button>
      <button
        type="button"
        disabled={!next}
        title={next ? `Redo: ${next}` : 'Nothing to redo'}
        onClick={() => planStore.redo()}
      >
        Redo{next && <span className="unseen">: {next}</span>}
      </button>
    </div>
  );
}

function UnitButtons() {
  const unit = useSession((session) => session.lengthUnit);
  return (
    <Segments
      label="Unit of length"
      value={unit}
      choices={[
        { value: 'mm', label: 'mm' },
        { value: 'in', label: 'inch' },
      ]}
      onChange={(lengthUnit) => sessionStore.setState({ lengthUnit })}
    />
  );
}

function ThemeButton() {
  const other = useTheme() === 'light' ? 'dark' : 'light';
  return (
    <button type="button" onClick={() => sessionStore.setState({ theme: other })}>
      {other === 'dark' ? 'Dark' : 'Light'}
      <span className="unseen"> look</span>
    </button>
  );
}
