/** Mounting rings: the only door of this folder. */
export * from './types';
export { MOST_WEDGE_DEG, RIM_RADIUS, ringFrame, screwPlaces, wedgeRing } from './wedge-ring';
