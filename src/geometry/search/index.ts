/** The best spots for a pair: the only door of this folder. */
export { finishSearchInSteps } from './finish';
export { finishStageInSteps } from './finish-stage';
export { tradeOffFront } from './front';
export {
  type GridHeard,
  hearGridInSteps,
  joinShares,
  type SearchShare,
  WHOLE_GRID,
} from './hear-grid';
export { hearStageInSteps, joinStageShares } from './hear-stage';
export { measurePairsNow, type PairNow, type PairsNow, type PairsNowAnswer } from './measure-now';
export { prepareSearch, type ReadySearch, type ReadySearchAnswer } from './prepare';
export { prepareStage, type ReadyStage, type ReadyStageAnswer } from './prepare-stage';
export { type SearchResult, searchInSteps, searchSpots } from './search';
export { type StageSearchResult, searchStage, searchStageInSteps } from './search-stage';
export * from './stage-types';
export * from './types';
