import { pairName } from '../../../plan/names';
import type { Found } from './found';
import { tallyLines, whatWouldHaveToGive } from './outcome-words';
import { count, pairToCount } from './run-search';
import { SearchProgress } from './search-progress';
import { useSearch } from './search-store';

/** What rules the other spots out, counted on request, or at once where nothing is allowed. */
export function WhyNot({ found }: { found: Found }) {
  const job = useSearch((state) => state.tally);
  const counted = pairToCount(found);
  if (!counted) return null;
  const none = found.feasible === 0;
  if (job.state === 'working')
    return <SearchProgress job={job} what="Counting what rules the spots out" />;
  if (job.state === 'done') {
    const { tally } = job;
    return (
      <section className="search-why" aria-label="Why spots are not allowed">
        {none && <p className="search-sentence">{whatWouldHaveToGive(tally)}</p>}
        <p>
          {`Of ${tally.tried} spots for the ${pairName(counted.pair, found.option.speakers)}, ${tally.tried - tally.feasible} are not allowed:`}
        </p>
        <ul>
          {tallyLines(tally).map(({ reason, text }) => (
            <li key={reason}>{text}</li>
          ))}
        </ul>
        <details>
          <summary>The commonest reasons one by one</summary>
          <ul>
            {tally.commonest.map(({ sentence, count: times }) => (
              <li key={sentence}>{`${times}: ${sentence}`}</li>
            ))}
          </ul>
        </details>
      </section>
    );
  }
  if (found.feasible === found.tried) return null;
  return (
    <p className="row">
      {job.state === 'refused' && <span className="quiet-text">{job.sentence}</span>}
      {job.state === 'failed' && (
        <span className="quiet-text">The count did not come through.</span>
      )}
      <button type="button" className="words" onClick={() => void count(found)}>
        What rules the others out?
      </button>
    </p>
  );
}
