import { useEffect, useMemo } from 'react';
import { pairName } from '../../../plan/names';
import { formatLength } from '../../../plan/units';
import { usePlan, useSession } from '../../../store';
import { SelectField } from '../../parts/select-field';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { type BuiltRequest, buildRequest } from './build-request';
import {
  type SearchGround,
  type SearchPair,
  scopeOf,
  searchPairs,
  stagePairs,
  WHOLE_STAGE,
} from './draft';
import { HowItSearches } from './how-it-searches';
import { Outcome } from './outcome';
import { MainFields, MoreFields } from './request-fields';
import { RequestJson } from './request-json';
import { requestSentence } from './request-words';
import { search } from './run-search';
import { SearchProgress } from './search-progress';
import { changeDraft, startAfresh, useSearch } from './search-store';
import './search.css';

/** The best spots for a pair or the whole front stage: what is asked, what was found. */
export default function SearchSheet({ board }: { board: Board }) {
  const { settled: stage } = useSettled(useStage(board));
  const openedAs = usePlan((state) => state.openedAs);
  const ready = useSearch((state) => state.openedAs === openedAs);
  useEffect(() => startAfresh(openedAs), [openedAs]);
  // A drag is not searched: the plan as it was last left.
  const plan = usePlan((state) => state.plan);
  if (!stage || !ready) return null;
  const option = plan.options.find(({ id }) => id === stage.option.id);
  if (!option) return null;
  const pairs = searchPairs(option);
  if (pairs.length === 0)
    return (
      <p className="quiet-text">
        There is no pair to search spots for. Add a pair of speakers first.
      </p>
    );
  return <Search ground={{ plan, cabin: stage.cabin, option }} pairs={pairs} />;
}

function Search({ ground, pairs }: { ground: SearchGround; pairs: readonly SearchPair[] }) {
  const draft = useSearch((state) => state.draft);
  const job = useSearch((state) => state.job);
  const said = useSearch((state) => state.said);
  const unit = useSession((session) => session.lengthUnit);
  const selected = useSession(({ selection }) =>
    selection?.kind === 'speaker' ? selection.id : null,
  );
  const { plan, cabin, option } = ground;
  const selectedPair = option.speakers.find(({ id }) => id === selected)?.pair ?? null;
  // Who selects a speaker means its pair, until another is chosen here.
  useEffect(() => {
    if (selectedPair) changeDraft({ scope: selectedPair });
  }, [selectedPair]);
  const scope = scopeOf(draft, pairs) ?? '';
  const stage = stagePairs(pairs);
  const asked = scope === WHOLE_STAGE ? stage : pairs.filter(({ pair }) => pair === scope);
  const built: BuiltRequest = useMemo(
    () => buildRequest(draft, scope, { plan, cabin, option }),
    [draft, scope, plan, cabin, option],
  );
  const fields = { draft, ground, scope, asked };
  const nameOf = (pair: string) => pairName(pair, option.speakers);

  return (
    <div className="search-sheet">
      <div className="search-bar">
        <SelectField
          label="Search spots for"
          value={scope}
          choices={[
            ...pairs.map(({ pair }) => ({ value: pair, label: `the ${nameOf(pair)}` })),
            ...(stage.length > 1 ? [{ value: WHOLE_STAGE, label: 'the whole front stage' }] : []),
          ]}
          onChange={(next) => changeDraft({ scope: next })}
        />
        <button
          type="button"
          className="primary"
          disabled={!built.ok}
          onClick={() => {
            if (built.ok) void search(plan, option, built.request);
          }}
        >
          Search
        </button>
        {job.state === 'working' && (
          <SearchProgress job={job} what={`Trying spots for ${scopeWords(asked, nameOf)}`} />
        )}
      </div>
      <p className="search-asked">
        {built.ok ? (
          requestSentence(built.request, {
            cabin,
            length: (mm) => formatLength(mm, unit, unit === 'in' ? 1 : 0),
          })
        ) : (
          <strong role="alert">{built.problem}</strong>
        )}
      </p>
      <div className="search-folds">
        <details className="search-fold">
          <summary>Panels, aim and demands</summary>
          <MainFields {...fields} />
        </details>
        <details className="search-fold">
          <summary>Listeners, weights and grid</summary>
          <MoreFields {...fields} />
          {built.ok && <RequestJson request={built.request} />}
        </details>
      </div>
      {job.state === 'stopped' && <p role="status">Stopped. Nothing was kept of this search.</p>}
      {job.state === 'refused' && (
        <p className="notice" role="alert">
          {job.sentence}
        </p>
      )}
      {job.state === 'failed' && (
        <p className="notice" role="alert">
          The search broke off. The plan is untouched; try again.
        </p>
      )}
      <p className="unseen" role="status">
        {said}
      </p>
      <Outcome />
      <HowItSearches />
    </div>
  );
}

const scopeWords = (asked: readonly SearchPair[], nameOf: (pair: string) => string): string =>
  asked.length > 1 ? 'the front stage' : `the ${nameOf(asked[0]?.pair ?? '')}`;
