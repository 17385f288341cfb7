import type { FoundSpot, PairRequest, SharedRequest } from './types';

/** Several pairs searched together: the whole front stage. */
export interface StageRequest extends SharedRequest {
  pairs: readonly PairRequest[];
  /** What is wanted of the pairs together, beside what each is asked for. Left out: 0.5. */
  want?: { pathSpread?: number };
}

/** One spot for each pair. */
export interface FoundStage {
  /** In the order asked. */
  spots: (FoundSpot & { pair: string })[];
  /**
   * Longest less shortest path among the speakers of one side, at the seat and on the side where
   * that is most, mm.
   */
  measures: { pathSpread: number };
  /** Of all pairs, and the weighted penalty of the path spread: smaller is better. */
  score: number;
}

export interface StageAnswer {
  pairs: { pair: string; tried: number; feasible: number }[];
  /** Combinations of the grids' feasible spots. */
  tried: number;
  /**
   * Clearly different ones, best first, refined: in each at least one pair stands `apart` from
   * where it stands in every better one.
   */
  answers: FoundStage[];
  /** False where the search for the best combination was cut short: a better one may exist. */
  complete: boolean;
}
