/** Mounting rings: the only door of this folder. */
export {
  type DimensionLine as DimensionMark,
  type DimensionStyle,
  dimensionLine,
  strokeOf,
} from './dimension-line';
export { ringInCar } from './ring-in-car';
export { type RingSectionDrawing, ringSection } from './ring-section';
export { ringStandoff } from './ring-standoff';
export { formOfSpeaker, inputOfSpeaker, placeOfSpeaker, ringOfSpeaker } from './speaker-ring';
export { stepUp } from './step-up';
export * from './types';
export { LEAST_THICKNESS, usualRing } from './usual-ring';
export {
  MOST_WEDGE_DEG,
  RIM_RADIUS,
  ringFrame,
  ringShape,
  screwDepths,
  screwPlaces,
  wedgeRing,
} from './wedge-ring';
