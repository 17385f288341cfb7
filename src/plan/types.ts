import type { MeasuredArrival, OptionInput, PlanInput, Side } from '../geometry';

/** One option as the document keeps it. */
export interface PlanOption extends OptionInput {
  /** Pairs whose left and right move on their own; all others move as mirror images. */
  untied?: readonly string[];
  /** First arrivals measured in the car as built by this option: one a speaker and place. */
  measured?: readonly MeasuredArrival[];
  /** Distances measured in that car, by tape or by sound. */
  readings?: readonly Reading[];
}

/** One end of a reading. */
export type ReadingEnd =
  | { kind: 'speaker'; speaker: string }
  /** The middle between the ears. */
  | { kind: 'head'; seat: string }
  | { kind: 'ear'; seat: string; side: Side }
  /** A named point of the cabin. */
  | { kind: 'reference'; reference: string };

/** A distance from one point of the car to another, straight, mm. */
export interface Reading {
  from: ReadingEnd;
  to: ReadingEnd;
  distance: number;
  by: 'tape' | 'sound';
  /** Standard deviation, mm; left out: a tape's. */
  sd?: number;
}

/** The document: one car, its seats, obstacles and options. Nothing derived is kept in it. */
export interface Plan extends PlanInput {
  format: 'earpath-plan';
  version: 1;
  title: string;
  /** A few sentences of the user's own about the car and the choice. */
  story?: string;
  options: readonly PlanOption[];
}
