import type { OptionInput, PlanInput } from '../geometry';

/** One option as the document keeps it. */
export interface PlanOption extends OptionInput {
  /** Pairs whose left and right move on their own; all others move as mirror images. */
  untied?: readonly string[];
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
