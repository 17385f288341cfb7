import type { Refusal } from '../../geometry';
import { planStore, usePlan } from '../../store';
import { sentence } from '../parts/check-number';

/** Stands where the answer was: why there is none, where in the plan, and the way back. */
export function Refused({ refusal }: { refusal: Refusal }) {
  const last = usePlan((state) => state.past[state.past.length - 1]?.label);
  return (
    <div className="notice" role="alert">
      <p>
        <strong>This cannot be worked out.</strong> {sentence(refusal.message)}
      </p>
      <p className="footnote">
        In the plan at <code>{refusal.path}</code>. The drawing shows the last car that could be.
      </p>
      {last && (
        <button type="button" onClick={() => planStore.undo()}>
          Undo: {last}
        </button>
      )}
    </div>
  );
}
