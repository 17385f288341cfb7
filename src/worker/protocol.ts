/**
 * What page and worker say to each other: the one typed protocol. Every request carries a number;
 * the page drops answers to questions it no longer asks, the worker stops work it is told to stop.
 */
import type {
  EvaluateAnswer,
  GridHeard,
  MapAnswer,
  MapProgress,
  MapRequest,
  MapShare,
  PlanInput,
  RankAnswer,
  RankProgress,
  RankSettings,
  Refusal,
  SearchProgress,
  SearchRequest,
  SearchResult,
  SearchShare,
  StageRequest,
  StageSearchResult,
} from '../geometry';

/** An answer, or word that the work was stopped on request. */
export type Served<T> = { stopped: false; value: T } | { stopped: true };

/** Called on the page while the worker works. */
export type OnProgress = (progress: RankProgress) => void;

export type OnSearchProgress = (progress: SearchProgress) => void;

/** With what of the map stands so far. */
export type OnMapProgress = (progress: MapProgress) => void;

export type HeardAnswer = { ok: true; heard: GridHeard } | { ok: false; error: Refusal };

/** The same for the grids of several pairs. */
export type StageHeardAnswer =
  | { ok: true; heard: readonly GridHeard[] }
  | { ok: false; error: Refusal };

/** What the worker offers. */
export interface EngineService {
  evaluate(request: number, plan: PlanInput): Promise<Served<EvaluateAnswer>>;
  rankDimensions(
    request: number,
    plan: PlanInput,
    settings: RankSettings,
    onProgress: OnProgress | null,
  ): Promise<Served<RankAnswer>>;
  /** A share of a map. */
  map(
    request: number,
    plan: PlanInput,
    asked: MapRequest,
    share: MapShare,
    onProgress: OnMapProgress | null,
  ): Promise<Served<MapAnswer>>;
  /** The first half of a search: a share of its grid. */
  hearGrid(
    request: number,
    plan: PlanInput,
    asked: SearchRequest,
    share: SearchShare,
    onProgress: OnSearchProgress | null,
  ): Promise<Served<HeardAnswer>>;
  /** The second half: the answer from all shares of the grid. */
  finishSearch(
    request: number,
    plan: PlanInput,
    asked: SearchRequest,
    shares: readonly GridHeard[],
    onProgress: OnSearchProgress | null,
  ): Promise<Served<SearchResult>>;
  /** The same two halves for several pairs together. */
  hearStage(
    request: number,
    plan: PlanInput,
    asked: StageRequest,
    share: SearchShare,
    onProgress: OnSearchProgress | null,
  ): Promise<Served<StageHeardAnswer>>;
  finishStage(
    request: number,
    plan: PlanInput,
    asked: StageRequest,
    shares: readonly (readonly GridHeard[])[],
    onProgress: OnSearchProgress | null,
  ): Promise<Served<StageSearchResult>>;
  /** Stops the request of that number, if it still runs or has not begun. */
  cancel(request: number): void;
}

/** What becomes of a question on the page. */
export type Outcome<T> =
  | { kind: 'answer'; value: T }
  /** A newer question of the same kind was asked meanwhile. */
  | { kind: 'superseded' }
  | { kind: 'cancelled' };
