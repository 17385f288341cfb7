/**
 * What page and worker say to each other: the one typed protocol. Every request carries a number;
 * the page drops answers to questions it no longer asks, the worker stops work it is told to stop.
 */
import type {
  EvaluateAnswer,
  PlanInput,
  RankAnswer,
  RankProgress,
  RankSettings,
} from '../geometry';

/** An answer, or word that the work was stopped on request. */
export type Served<T> = { stopped: false; value: T } | { stopped: true };

/** Called on the page while the worker works. */
export type OnProgress = (progress: RankProgress) => void;

/** What the worker offers. */
export interface EngineService {
  evaluate(request: number, plan: PlanInput): Promise<Served<EvaluateAnswer>>;
  rankDimensions(
    request: number,
    plan: PlanInput,
    settings: RankSettings,
    onProgress: OnProgress | null,
  ): Promise<Served<RankAnswer>>;
  /** Stops the request of that number, if it still runs or has not begun. */
  cancel(request: number): void;
}

/** What becomes of a question on the page. */
export type Outcome<T> =
  | { kind: 'answer'; value: T }
  /** A newer question of the same kind was asked meanwhile. */
  | { kind: 'superseded' }
  | { kind: 'cancelled' };
