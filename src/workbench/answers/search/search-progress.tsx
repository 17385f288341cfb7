import { stopSearch } from './run-search';
import type { Job } from './search-store';

/** How far it has got, and the way to stop it. */
export function SearchProgress({
  job,
  what,
}: {
  job: Extract<Job, { state: 'working' }>;
  what: string;
}) {
  const { progress, finishing } = job;
  return (
    <div className="row search-working">
      <p role="status">{finishing ? 'Choosing among them…' : `${what}…`}</p>
      {progress && progress.total > 0 && (
        <>
          <progress aria-label="How far it has got" value={progress.done} max={progress.total} />
          {!finishing && (
            <span className="search-count" aria-hidden="true">
              {`${progress.done} of ${progress.total} spots`}
            </span>
          )}
        </>
      )}
      <button type="button" onClick={stopSearch}>
        Stop
      </button>
    </div>
  );
}
