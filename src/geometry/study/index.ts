/** Studies: what is worked out on demand for one option on screen. The only door of this folder. */
export { type Beaming, beamingHzOf } from './beaming';
export * from './compromise';
export { type Crossing, crossingProblem, crossingsOf, polaritiesOf } from './crossings';
export { createImageStudy, type SeatImage } from './image';
export { levelsAt, type PairLevels } from './levels';
export * from './pockets';
export { type EarSound, earliestReflection, reflectogramAt } from './reflectogram';
export * from './sensitivity';
export { type ChannelSetting, type ChannelSettings, channelSettings } from './settings';
export type { Stage } from './stage';
export { type SideSum, sumsAt } from './sums';
export { type OptionStudy, type SeatStudy, studyOption, weightsOf } from './whole';
