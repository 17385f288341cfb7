import { useRef } from 'react';
import { demoPlan } from '../../plan/demo';
import { useKeeping, usePlan } from '../../store';
import { KeptPlan } from './kept-plan';
import { openPlan } from './opening';
import { useKept } from './use-kept';

const DEMO_TITLE = demoPlan().title;

export interface KeptListProps {
  /** A plan was opened: nothing more to do here. */
  onOpened: () => void;
  /** Says in words what was done or why not. */
  onSay: (text: string) => void;
}

/** Every kept plan, the one changed last on top. */
export function KeptList({ onOpened, onSay }: KeptListProps) {
  const kept = useKept();
  const list = useRef<HTMLDivElement>(null);
  const openId = useKeeping((state) => state.planId);
  const title = usePlan((state) => state.plan.title);
  const readOnly = usePlan((state) => state.readOnly !== null);
  // The demo is not kept before its first change, so there must be a way back to it.
  const demoStands = openId === null && title === DEMO_TITLE;
  return (
    <div ref={list} tabIndex={-1} className="kept">
      {openId === null && (
        <p className="kept-not-yet">
          {'Open now, not kept yet: '}
          <strong>
            <bdi>{title}</bdi>
          </strong>
          {readOnly
            ? '. It is here to be looked at only.'
            : '. It is kept from its first change on.'}
        </p>
      )}
      {kept?.length === 0 && <p>No plan is kept yet.</p>}
      {kept && kept.length > 0 && (
        <ul className="kept-list">
          {kept.map((entry) => (
            <KeptPlan
              key={entry.planId}
              entry={entry}
              open={entry.planId === openId}
              onOpened={onOpened}
              onDeleted={() => list.current?.focus()}
              onSay={onSay}
            />
          ))}
        </ul>
      )}
      {!demoStands && (
        <button
          type="button"
          className="words"
          onClick={async () => {
            await openPlan(demoPlan());
            onOpened();
          }}
        >
          Open the demo plan
        </button>
      )}
    </div>
  );
}
