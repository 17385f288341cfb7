/** Quantities over whole panels: the only door of this folder. */
export type { AimRule, BetweenAim } from './aim-rule';
export type { MakeFitter, Misfit, SpotFitter } from './fits';
export { joinMaps } from './join-maps';
export { type MapAnswer, type MapShare, mapInSteps, mapSpots } from './map-spots';
export { type GridSpot, gridSize, gridSpot, type PanelGrid, panelGrid } from './panel-grid';
export {
  ANGLE_SCALE_DEG,
  DIFFERENCE_SCALE,
  OBSTRUCTION_SCALE_DB,
  penalty,
  REFLECTION_SCALE,
  SPOT_AIMS,
  type SpotAim,
} from './penalty';
export {
  createSpotReader,
  type SpotReader,
  type SpotReaderAnswer,
  type SpotReading,
} from './read-spot';
export * from './types';
