import { usePlan } from '../../store';
import { sentence } from '../parts/check-number';
import { dismissNotes, useOpening } from './opening';
import './plans.css';

/** What must be known about the open plan: only looked at, or opened with something to be said. */
export function KeepingBanner() {
  const readOnly = usePlan((state) => state.readOnly);
  const notes = useOpening((state) => state.notes);
  return (
    <>
      {readOnly && (
        <section className="notice banner" aria-label="Looking only">
          <p>
            <strong>This plan is open to look at only.</strong> {sentence(readOnly)}
          </p>
        </section>
      )}
      {notes && (
        <section className="notice banner" aria-label="About the plan just opened">
          <div>
            <p>
              Opened <bdi>{notes.fileName}</bdi>:
            </p>
            <ul>
              {notes.sentences.map((text) => (
                <li key={text}>{sentence(text)}</li>
              ))}
            </ul>
          </div>
          <button type="button" onClick={dismissNotes}>
            Understood
          </button>
        </section>
      )}
    </>
  );
}
