/** What a search is asked and what it answers: mm, ms, dB, degrees. */
import type { Aim, SeatWeight } from '../input';
import type { AimRule } from '../map/aim-rule';
import type { SpotAim } from '../map/penalty';

export interface SearchLimits {
  /** The speaker fits its spot. Left out: it must. Keep-clear zones are never overridden. */
  fits?: boolean;
  /** Nothing crosses the straight line to any of the seats. Left out: it may. */
  free?: boolean;
  maxOffAxisDeg?: number;
  /**
   * Most of the view that the front pillar a speaker stands on may hide with it, degrees (see
   * `pillarViews`). One that hides nothing more than the pillar does without it passes anyhow.
   */
  maxPillarViewDeg?: number;
  /** Most that all pods on that pillar may add to what it hides bare, degrees. */
  maxAddedPillarViewDeg?: number;
}

/** Aims and their weights, ≥ 0; one left out, or of weight 0, is no aim. */
export type SearchWants = Partial<Record<SpotAim, number>>;

/** What is asked of one pair. */
export interface PairRequest {
  pair: string;
  /** The right speaker on the mirrored spot. Left out: so. */
  mirrored?: boolean;
  /**
   * Ids; one stands for its mirror image on the other side as well. Left out: every mountable panel
   * where the pair's role is commonly mounted.
   */
  panels?: readonly string[];
  /** Of the grid, mm. Left out: 20. */
  step?: number;
  /** Left out: each speaker's own aim. */
  aim?: AimRule;
  /** Left out: each speaker's own. */
  standoff?: number;
  require?: SearchLimits;
  want?: SearchWants;
}

export interface SharedRequest {
  option: string;
  /** Left out: the seat delays are set for, or the first. */
  seats?: readonly SeatWeight[];
  /** Clearly different spots wanted. Left out: 5. */
  answers?: number;
  /** How far these are from each other at least, mm. Left out: 80. */
  apart?: number;
}

export interface SearchRequest extends SharedRequest, PairRequest {
  /** Also list every spot tried, with the reasons against it. */
  all?: boolean;
}

/** Weighted penalties, by aim: what a score is the sum of. */
export type SpotPenalties = Record<SpotAim, number>;

export type SpotMeasures = Record<SpotAim, number | null>;

export interface FoundPlace {
  panel: string;
  u: number;
  v: number;
  standoff: number;
  /** As the plan would hold it; only where the request gives an aim. */
  aim?: Aim;
}

/** Spots of a pair: the left speaker's, and its partner's, the right one's. */
export interface FoundSpot extends FoundPlace {
  partner: FoundPlace;
  feasible: boolean;
  /** Why it is not. */
  why: string[];
  /**
   * The worst over the seats and over the two speakers: absolute difference of the paths, larger
   * angle, larger loss at the middle of the band, time from the direct sound to the earlier first
   * reflection. `null`: no reflection; no angle, or no way round, is known.
   */
  measures: SpotMeasures;
  /** For each aim weight × penalty, the largest over the seats of seat weight × penalty there. */
  penalties: SpotPenalties;
  /** Their sum: 0 would be perfect; smaller is better. */
  score: number;
}

export interface SearchAnswer {
  /** Pairs of spots on the grid. */
  tried: number;
  feasible: number;
  /**
   * Spots of the grid that no other feasible one beats: none is at least as good in the measure of
   * every aim wanted and better in one. The measures do not see how seats weigh, so with seats of
   * unlike weight the best score can lie off it, and is then only among the answers. Best first.
   */
  front: FoundSpot[];
  /** Clearly different spots, best score first, each refined to the millimetre. */
  answers: FoundSpot[];
  all?: FoundSpot[];
}

export interface SearchProgress {
  /** First spots are listened to, then choices among them are made; each counts from 0. */
  phase: 'spots' | 'choices';
  done: number;
  total: number;
}
