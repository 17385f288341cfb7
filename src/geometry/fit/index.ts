/** Whether speakers fit where they are put. */
export type { StandingSpeaker } from './body';
export { createFitter, type FitSubject, type Fitter, fitOf } from './fitter';
export { FLANGE_LIFT } from './panel-problems';
export type { FitKind, FitProblem } from './problem';
export { zonesAtSpot } from './zones-at-spot';
