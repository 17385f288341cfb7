import { lazy, Suspense, useState } from 'react';
import { dismissNotice, planStore, retryKeeping, takeOver, useKeeping, usePlan } from '../../store';
import { sentence } from '../parts/check-number';
import { Banner } from './banner';
import { dismissNotes, useOpening } from './opening';
import { savePlanFile } from './plan-files';
import { LINKED } from './shared-link';
import './plans.css';

const LinkedActions = lazy(() => import('./linked-actions'));

/** What must be known about the open plan: whether it is kept, whether it may be changed. */
export function KeepingBanner() {
  const readOnly = usePlan((state) => state.readOnly);
  const notes = useOpening((state) => state.notes);
  const keeping = useKeeping((state) => state);
  const [said, setSaid] = useState<string | null>(null);
  const [memoryKnown, setMemoryKnown] = useState(false);

  const save = async () => {
    const outcome = await savePlanFile(planStore.getState().plan);
    if (outcome.kind === 'failed') setSaid(outcome.why);
  };
  const take = async () => {
    const answer = await takeOver();
    setSaid(answer.ok ? null : answer.message);
  };
  const saveButton = (
    <button type="button" onClick={save}>
      Save to a file
    </button>
  );

  return (
    <>
      {keeping.elsewhere ? (
        <Banner
          title="Looking only"
          text={keeping.message ?? readOnly}
          actions={
            <>
              <button type="button" onClick={take}>
                Take it over
              </button>
              {saveButton}
            </>
          }
        />
      ) : (
        readOnly !== null && (
          <Banner
            title="Looking only"
            text={readOnly}
            actions={
              readOnly === LINKED && (
                <Suspense fallback={null}>
                  <LinkedActions />
                </Suspense>
              )
            }
          />
        )
      )}
      {keeping.status === 'failed' && !keeping.elsewhere && (
        <Banner
          title="Not kept"
          text={keeping.message}
          alert
          actions={
            <>
              <button type="button" onClick={() => void retryKeeping()}>
                Try again
              </button>
              {saveButton}
            </>
          }
        />
      )}
      {keeping.status === 'memory-only' && !memoryKnown && (
        <Banner
          title="In memory only"
          text={keeping.message}
          actions={
            <>
              {saveButton}
              <button type="button" onClick={() => setMemoryKnown(true)}>
                Understood
              </button>
            </>
          }
        />
      )}
      {keeping.notice !== null && (
        <Banner title="Please note" text={keeping.notice} onDismiss={dismissNotice} />
      )}
      {said !== null && (
        <Banner title="That did not work" text={said} alert onDismiss={() => setSaid(null)} />
      )}
      {notes && (
        <Banner
          title={
            <>
              Opened <bdi>{notes.name}</bdi>
            </>
          }
          onDismiss={dismissNotes}
        >
          <ul>
            {notes.sentences.map((text) => (
              <li key={text}>{sentence(text)}</li>
            ))}
          </ul>
        </Banner>
      )}
    </>
  );
}
