/** The engine's only door. */
export { buildCabin } from './cabin/build-cabin';
export {
  DIMENSIONS,
  type DimensionGroup,
  type DimensionId,
  type DimensionInfo,
  type Dimensions,
  dimensionInfo,
  resolveDimensions,
} from './cabin/dimensions';
export * from './cabin/model';
export { nearestOnPatch, patchNormal, pointOnPatch, tessellate } from './cabin/patch';
export { isCabinPanel } from './cabin/shell/panel-kinds';
export {
  type BodyData,
  type BodyStyle,
  getTemplate,
  TEMPLATES,
  type TemplateData,
} from './cabin/templates';
export { tessellatePanel } from './cabin/tessellate-panel';
export * from './compare';
export * from './fit';
export * from './input';
export * from './map';
export * from './measure';
export { buildTriangleTree } from './paths/build-triangle-tree';
export { type Crossed, type Faces, firstCrossed } from './paths/first-crossed';
export type { TriangleTree } from './paths/triangle-tree';
export * from './result';
export * from './ring';
export * from './search';
export * from './slow-motion';
export { cramerSpeed, isoSpeed, type SpeedOfSound, speedOfSound } from './sound/air';
export * from './sound/closed-box';
export { crossoverProblem } from './sound/crossover';
export { spreadingDb } from './sound/level';
export {
  type MeasuredAnswer,
  type MeasuredDirectivity,
  measuredDirectivity,
} from './sound/measured-directivity';
export {
  createEvaluator,
  DEFAULT_SAMPLE_RATE_HZ,
  type EvaluateAnswer,
  evaluatePlan,
} from './stage/evaluate';
export { offAxis, speakerFrame } from './stage/off-axis';
export { pairsOf } from './stage/pairs';
export { placeSpeaker } from './stage/place';
export * from './stage/rank-dimensions';
export * from './study';
export * from './survey';
export * from './vector';
