import type { useSteps } from './use-steps';
import './steps.css';

type Steps = Pick<ReturnType<typeof useSteps>, 'work' | 'stop' | 'again'>;

/** Work in steps: how far it has got, a way to stop it, and a way to take it up again. */
export function Working({ of: { work, stop, again }, words }: { of: Steps; words: string }) {
  if (work.state === 'stopped')
    return (
      <p className="row">
        Stopped.
        <button type="button" onClick={again}>
          Work it out after all
        </button>
      </p>
    );
  if (work.state === 'done') return null;
  return (
    <div className="row steps-working">
      <p role="status">{words}</p>
      {work.progress && (
        <>
          <progress
            aria-label="How far it has got"
            value={work.progress.done}
            max={work.progress.total}
          />
          <button type="button" onClick={stop}>
            Stop
          </button>
        </>
      )}
    </div>
  );
}
