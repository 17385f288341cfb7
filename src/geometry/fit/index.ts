/** Whether speakers fit where they are put. */
export type { StandingSpeaker } from './body';
export { createFitter, type FitSubject, type Fitter, fitOf } from './fitter';
export { LITRE, meshVolume } from './mesh-volume';
export { FLANGE_LIFT } from './panel-problems';
export {
  PILLAR_LIMIT_DEG,
  PILLAR_VIEW_CAUTION,
  type PillarView,
  type PillarViewSubject,
  pillarViews,
} from './pillar-view';
export { type Pocket, type PocketAnswer, type PocketInput, pocketOf } from './pocket';
export type { FitKind, FitProblem } from './problem';
export { zonesAtSpot } from './zones-at-spot';
