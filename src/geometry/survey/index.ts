/** Between the model and the real car: the only door of this folder. */

export type { DistanceReading } from './distance-fit';
export { type FaceReading, faceReadings, type HeldAlong } from './face-tilt';
export { type LaserHit, type MarkOut, markOut, type TapeReading } from './mark-out';
export { nextReadings } from './next-reading';
export { hourOf, type PanelFrame, panelFrame, turnOf, type Way, wayOf } from './panel-frame';
export { type FixAnswer, type PositionFix, positionFix } from './position-fix';
export { circleHolding, TAPE_SD, type TapeFix, tapeFix } from './tape-fix';
export { type Ellipse, type MarkTemplate, markTemplate } from './template';
