import type { FoundSpot, PairRequest, SharedRequest, SpotMeasures, SpotPenalties } from './types';

/** Several pairs searched together: the whole front stage. */
export interface StageRequest extends SharedRequest {
  pairs: readonly PairRequest[];
  /** What is wanted of the pairs together, beside what each is asked for. Left out: 0.5. */
  want?: { pathSpread?: number };
}

/** What a stage is judged by: the aims of its pairs, and how far the paths of a side differ. */
export type StageAim = keyof SpotMeasures | 'pathSpread';

/** One spot for each pair. */
export interface FoundStage {
  /** In the order asked. */
  spots: (FoundSpot & { pair: string })[];
  /** Of each aim the worst over the pairs; and the longest less the shortest path among the
   * speakers of one side, at the seat and on the side where that is most, mm.
   */
  measures: SpotMeasures & { pathSpread: number };
  /**
   * Of each aim the sum over the pairs of their weighted penalties; and the weighted penalty of the
   * path spread, 100 mm a unit, the largest over seats and sides of seat weight × penalty there.
   */
  penalties: SpotPenalties & { pathSpread: number };
  /** Their sum: smaller is better. */
  score: number;
}

export interface StageAnswer {
  pairs: { pair: string; tried: number; feasible: number }[];
  /** Combinations of the grids' feasible spots. */
  tried: number;
  /**
   * Combinations that no other one looked at beats: none has all penalties as small and one
   * smaller. Best score first. The best combination of the grids is always the first of them.
   */
  front: FoundStage[];
  /** What was looked at for the front, and how much of it is told. */
  frontOf: {
    /** So many combinations: all of those below that can stand together. */
    combinations: number;
    /**
     * Of spots that stand at least so far apart on their pair's grid, mm, the best of each
     * neighbourhood taken first; and the best combinations found. 0: of all spots.
     */
    spacing: number;
    /**
     * Each combination looked at is matched by one told that is at most so much worse in any
     * penalty. 0: the whole front is told.
     */
    within: number;
  };
  /**
   * Clearly different ones, best first, refined: in each, half of the pairs or more stand `apart`
   * from where they stand in every better one.
   */
  answers: FoundStage[];
  /** False where the search for the best combination was cut short: a better one may exist. */
  complete: boolean;
}
