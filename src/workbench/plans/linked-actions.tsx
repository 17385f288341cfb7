import { backToBefore, keepCopy, planBefore } from './linked-plan';

/** What can be done with a plan from a link. */
export default function LinkedActions() {
  return (
    <>
      {planBefore() !== null && (
        <button type="button" onClick={() => void backToBefore()}>
          Back to your plan
        </button>
      )}
      <button type="button" className="primary" onClick={() => void keepCopy()}>
        Keep a copy
      </button>
    </>
  );
}
