/** Whether speakers fit where they are put. */
export { backLift, depthBehind } from './back-lift';
export type { StandingSpeaker } from './body';
export { DEEPEST_POCKET } from './deepest-pocket';
export { type DepthAnswer, depthForLitres } from './depth-for-litres';
export { createFitter, type FitSubject, type Fitter, fitOf } from './fitter';
export { type FlatPanel, flatPanel } from './flat-panel';
export { LITRE, meshVolume } from './mesh-volume';
export { isSimple, type Point2 } from './outline';
export { outlineOf } from './panel-ground';
export { FLANGE_LIFT } from './panel-problems';
export {
  PILLAR_LIMIT_DEG,
  PILLAR_VIEW_CAUTION,
  type PillarSections,
  type PillarView,
  type PillarViewSubject,
  pillarViews,
  type SightLines,
} from './pillar-view';
export { type PocketSubject, planPocket, pocketInput, speakersIn } from './plan-pocket';
export { type Pocket, type PocketAnswer, type PocketInput, pocketOf } from './pocket';
export type { FitKind, FitProblem } from './problem';
export { zonesAtSpot } from './zones-at-spot';
