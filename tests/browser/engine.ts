/** The engine as Node runs it, to hold the page against. */
export type { FoundSpot, SearchRequest } from '../../src/geometry';
export {
  channelSettings,
  compromiseOver,
  evaluatePlan,
  pairsOf,
  searchSpots,
  searchStage,
  sumsAt,
} from '../../src/geometry';
export type { Plan } from '../../src/plan/types';
