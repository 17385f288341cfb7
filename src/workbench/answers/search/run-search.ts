/** Sends searches to the pool and puts what comes back into the search's store. */
import {
  measurePairsNow,
  type SearchProgress,
  type SearchRequest,
  type SearchResult,
  type StageRequest,
  type StageSearchResult,
} from '../../../geometry';
import type { Plan, PlanOption } from '../../../plan/types';
import type { Asked } from '../../../worker';
import { enginePool } from '../../parts/engine-pool';
import { plainReason } from '../../parts/plain-reason';
import { type AnyRequest, isStageRequest } from './build-request';
import { type Found, foundOfPair, foundOfStage } from './found';
import { type Job, searchStore } from './search-store';
import { tallyOf } from './tally';

/** Takes back what is asked now; `null` while nothing is. */
let running: { stop(): void } | null = null;

/** Stops the search or the count that runs. */
export const stopSearch = (): void => running?.stop();

type Told = (job: Job) => void;

/** Follows one question to its end; a later one drops this one, whatever it still says. */
async function follow<T>(
  ask: (onProgress: (progress: SearchProgress) => void) => Asked<T>,
  tell: Told,
): Promise<T | null> {
  const mine = { stop: () => {} };
  const isMine = () => running === mine;
  running = mine;
  tell({ state: 'working', progress: null, finishing: false });
  try {
    const asked = ask((progress) => {
      if (isMine()) tell({ state: 'working', progress, finishing: progress.phase === 'choices' });
    });
    mine.stop = () => asked.cancel();
    const outcome = await asked.outcome;
    if (!isMine()) return null;
    running = null;
    if (outcome.kind === 'answer') return outcome.value;
    tell({ state: outcome.kind === 'cancelled' ? 'stopped' : 'idle' });
  } catch {
    if (!isMine()) return null;
    running = null;
    tell({ state: 'failed' });
  }
  return null;
}

/** Searches; what was found before stays on the page until something else is. */
export async function search(plan: Plan, option: PlanOption, request: AnyRequest): Promise<void> {
  const { openedAs } = searchStore.getState();
  const tell: Told = (job) => {
    if (searchStore.getState().openedAs === openedAs) searchStore.setState({ job });
  };
  searchStore.setState({ tally: { state: 'idle' }, said: '' });
  const found = isStageRequest(request)
    ? await searchStage(plan, option, request, tell)
    : await searchPair(plan, option, request, tell);
  if (!found || searchStore.getState().openedAs !== openedAs) return;
  searchStore.setState({
    job: { state: 'idle' },
    found,
    chosen: found.answers[0]?.key ?? null,
  });
  if (found.feasible === 0) await count(found);
}

async function searchPair(
  plan: Plan,
  option: PlanOption,
  request: SearchRequest,
  tell: Told,
): Promise<Found | null> {
  const result = await follow<SearchResult>(
    (onProgress) => enginePool().search(plan, request, onProgress),
    tell,
  );
  if (!result) return null;
  if (!result.ok) {
    tell({ state: 'refused', sentence: plainReason(result.error.message, option.speakers) });
    return null;
  }
  const { pair, want = {} } = request;
  const now = measurePairsNow(plan, request, [{ pair, want }]);
  return foundOfPair({ plan, option, request }, result.answer, now.ok ? now.now : null);
}

async function searchStage(
  plan: Plan,
  option: PlanOption,
  request: StageRequest,
  tell: Told,
): Promise<Found | null> {
  const result = await follow<StageSearchResult>(
    (onProgress) => enginePool().searchStage(plan, request, onProgress),
    tell,
  );
  if (!result) return null;
  if (!result.ok) {
    tell({ state: 'refused', sentence: plainReason(result.error.message, option.speakers) });
    return null;
  }
  const asked = request.pairs.map(({ pair, want = {} }) => ({ pair, want }));
  const now = measurePairsNow(plan, request, asked, request.want?.pathSpread);
  return foundOfStage({ plan, option, request }, result.answer, now.ok ? now.now : null);
}

/** The pair whose spots are counted: the one asked for, or of several the first without a spot. */
export function pairToCount({ request, pairs }: Found): SearchRequest | null {
  if (!isStageRequest(request)) return request;
  const none = pairs.find(({ feasible }) => feasible === 0);
  const asked = request.pairs.find(({ pair }) => pair === none?.pair);
  const { pairs: _, want: __, ...shared } = request;
  return asked ? { ...shared, ...asked } : null;
}

/** Goes over the same grid once more for the reasons against each spot. */
export async function count(found: Found): Promise<void> {
  const { plan, option } = found;
  const request = pairToCount(found);
  if (!request) return;
  const { openedAs } = searchStore.getState();
  const result = await follow<SearchResult>(
    (onProgress) => enginePool().search(plan, { ...request, answers: 0, all: true }, onProgress),
    (tally) => {
      if (searchStore.getState().openedAs === openedAs) searchStore.setState({ tally });
    },
  );
  if (!result || searchStore.getState().openedAs !== openedAs) return;
  searchStore.setState({
    tally: result.ok
      ? { state: 'done', tally: tallyOf(result.answer) }
      : { state: 'refused', sentence: plainReason(result.error.message, option.speakers) },
  });
}
