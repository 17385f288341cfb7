import { useStore } from 'zustand';
import { preparing } from '../drawing/progress';

/** Stands in the place of the pages while they are worked out. Going back to the board stops it. */
export function Waiting() {
  const steps = useStore(preparing, (state) => state.steps);
  return (
    <div className="room-wait" role="status">
      <p>Laying out the pages…</p>
      {steps && <progress aria-label="Drawn and compared" value={steps.done} max={steps.total} />}
    </div>
  );
}
