/** The best spots for a pair: the only door of this folder. */
export { finishSearchInSteps } from './finish';
export { tradeOffFront } from './front';
export {
  type GridHeard,
  hearGridInSteps,
  joinShares,
  type SearchShare,
  WHOLE_GRID,
} from './hear-grid';
export { prepareSearch, type ReadySearch, type ReadySearchAnswer } from './prepare';
export { type SearchResult, searchInSteps, searchSpots } from './search';
export { type StageSearchResult, searchStage, searchStageInSteps } from './search-stage';
export * from './stage-types';
export * from './types';
