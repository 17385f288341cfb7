/**
 * What the search holds while its sheet is open or closed: the fields, the search that runs and
 * what the last one found. It outlives the sheet, so that one may look elsewhere meanwhile.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { NEW_DRAFT, type SearchDraft } from './draft';
import type { Found, Proposal } from './found';
import type { Tally } from './tally';

export type Job =
  | { state: 'idle' }
  /** `finishing`: every spot is heard, the answers are being put together. */
  | { state: 'working'; progress: { done: number; total: number } | null; finishing: boolean }
  | { state: 'stopped' }
  | { state: 'refused'; sentence: string }
  | { state: 'failed' };

export type TallyJob = Job | { state: 'done'; tally: Tally };

export interface SearchState {
  /** The plan the fields were filled in for. */
  openedAs: number;
  draft: SearchDraft;
  job: Job;
  found: Found | null;
  /** Why spots are not allowed, counted. */
  tally: TallyJob;
  /** Key of the proposal looked at. */
  chosen: string | null;
  /** What was done last, for those who cannot see it. */
  said: string;
}

const fresh = (openedAs: number): SearchState => ({
  openedAs,
  draft: NEW_DRAFT,
  job: { state: 'idle' },
  found: null,
  tally: { state: 'idle' },
  chosen: null,
  said: '',
});

export const searchStore = createStore<SearchState>(() => fresh(-1));

/** Another plan was opened: nothing of the last one's search holds. */
export function startAfresh(openedAs: number): void {
  if (searchStore.getState().openedAs !== openedAs) searchStore.setState(fresh(openedAs));
}

export const useSearch = <T>(select: (state: SearchState) => T): T => useStore(searchStore, select);

export const changeDraft = (fields: Partial<SearchDraft>): void =>
  searchStore.setState(({ draft }) => ({ draft: { ...draft, ...fields } }));

export const chooseProposal = (chosen: string): void => searchStore.setState({ chosen });

/** The proposal looked at, among the answers or the front. */
export const chosenOf = ({ found, chosen }: SearchState): Proposal | null =>
  found?.answers.find(({ key }) => key === chosen) ??
  found?.front.find(({ key }) => key === chosen) ??
  null;
