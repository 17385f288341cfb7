/** Arrival in slow motion: what leaves and arrives when, and its drawing from above. The only door. */
export * from './car-from-above';
export { fromAbove, type Spot } from './cut';
export { type HeadShape, headShape } from './head-from-above';
export { type Moment, stripMoments } from './moments';
export { type PlanWindow, windowOf } from './plan-window';
export { slowMotion } from './slow-motion';
export type { Coming, MotionDelays, Reach, Receiver, SlowMotion, Wave } from './types';
export { comeRound, radiusAt, sectionRadius } from './wave';
