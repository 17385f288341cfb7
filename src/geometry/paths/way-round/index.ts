export { buildWayFinder, type WayFinder, type WayRound } from './finder';
export type { NearMiss } from './near-miss';
