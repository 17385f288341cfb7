/** Between the model and the real car: the only door of this folder. */
export { type FaceReading, faceReadings, type HeldAlong } from './face-tilt';
export { type LaserHit, type MarkOut, markOut, type TapeReading } from './mark-out';
export { hourOf, type PanelFrame, panelFrame, turnOf, type Way, wayOf } from './panel-frame';
export { circleHolding, TAPE_SD, type TapeFix, tapeFix } from './tape-fix';
export { type Ellipse, type MarkTemplate, markTemplate } from './template';
