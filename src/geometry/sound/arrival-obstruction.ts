import type { Line } from '../result';
import { fresnelNumber, obstructionDb } from './obstruction';

/**
 * What stands in, or close to, a line takes from the sound at one frequency, dB, ≥ 0. Sources and
 * limits: those of `obstructionDb` and `fresnelNumber`.
 * @param detour see `Arrival`: way round − straight where blocked; minus the way by the nearest
 * edge where grazing, mm
 * @param speed mm/ms
 * @returns `null` where the line is blocked and no way round is known
 */
export function obstructionAt(
  { line, detour }: { line: Line; detour: number | null },
  frequencyHz: number,
  speed: number,
): number | null {
  if (line === 'clear') return 0;
  if (detour === null) return line === 'blocked' ? null : 0;
  return obstructionDb(fresnelNumber(detour, frequencyHz, speed));
}
