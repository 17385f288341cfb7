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
      <p role="status">{finishing ? 'Putting the answers together…' : `${what}…`}</p>
      {progress && !finishing && (
        <>
          <progress aria-label="How far it has got" value={progress.done} max={progress.total} />
          <span className="tabular" aria-hidden="true">
            {`${progress.done} of ${progress.total} spots`}
          </span>
        </>
      )}
      <button type="button" onClick={stopSearch}>
        Stop
      </button>
    </div>
  );
}
