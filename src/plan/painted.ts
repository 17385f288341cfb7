/** What a painted map shows of a spot: where drawing and legend must agree. */
import type { MapQuantity, SpotMap } from '../geometry';
import { formatNumber, type LengthUnit, MM_PER_INCH } from './units';

/** A difference is painted by its size, whichever side is later; everything else as it is. */
export const paintedValue = (quantity: MapQuantity, value: number): number =>
  quantity === 'difference' ? Math.abs(value) : value;

/** The painted value of spot number `k`; NaN where it has none, or none yet. */
export function paintedAt(map: SpotMap, quantity: MapQuantity, k: number): number {
  return paintedValue(quantity, map.values[quantity]?.[k] ?? Number.NaN);
}

/** How far a value is on its way through the colours, 0 to 1; beyond their ends it stays there. */
export function colourShare(value: number, [low, high]: readonly [number, number]): number {
  return high > low ? Math.min(1, Math.max(0, (value - low) / (high - low))) : 0;
}

/** What a quantity is counted in. */
export type PaintedUnit = 'length' | 'deg' | 'db' | 'ms' | 'none';

export const PAINTED_UNITS: Readonly<Record<MapQuantity, PaintedUnit>> = {
  difference: 'length',
  offAxisDeg: 'deg',
  obstructionDb: 'db',
  firstReflectionTime: 'ms',
  pathSpread: 'length',
  blend: 'none',
};

/** "50", "2.5": the bare number at a line of equal value, in the unit the user reads. */
export function levelText(quantity: MapQuantity, level: number, unit: LengthUnit): string {
  const value = PAINTED_UNITS[quantity] === 'length' && unit === 'in' ? level / MM_PER_INCH : level;
  const digits = [0, 1, 2, 3].find(
    (count) => Math.abs(Number(value.toFixed(count)) - value) < 1e-6 * Math.max(1, Math.abs(value)),
  );
  return formatNumber(value, digits ?? 3);
}
