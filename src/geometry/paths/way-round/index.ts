export { buildWayFinder, type WayFinder, type WayRound } from './finder';
