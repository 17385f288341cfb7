import { LEVEL_FLOOR_DB } from '../tolerance';

/** Level of a pressure ratio, dB: 20 lg |ratio|, never below the floor, so never −Infinity. */
export function decibels(ratio: number): number {
  return Math.max(LEVEL_FLOOR_DB, 20 * Math.log10(Math.abs(ratio)));
}

/** Pressure ratio of a level in dB. */
export const pressureRatio = (levelDb: number): number => 10 ** (levelDb / 20);
