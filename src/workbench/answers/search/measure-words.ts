/** What the measures are called and how they are told. */
import {
  formatAngle,
  formatLength,
  formatLevel,
  formatTime,
  type LengthUnit,
  NO_VALUE,
  withSign,
} from '../../../plan/units';
import type { Measure } from './found';

export const MEASURE_NAMES: Readonly<Record<Measure, string>> = {
  difference: 'Difference',
  offAxisDeg: 'Off axis',
  obstructionDb: 'Obstruction',
  firstReflectionTime: '1st reflection',
  pathSpread: 'Path spread',
};

/** What is wanted of each, as the field with its weight is called. */
export const WANT_NAMES: Readonly<Record<Measure, string>> = {
  difference: 'Small difference',
  offAxisDeg: 'Near the axis',
  obstructionDb: 'Little obstruction',
  firstReflectionTime: 'First reflection late',
  pathSpread: 'Small path spread',
};

function amount(measure: Measure, value: number, unit: LengthUnit): string {
  switch (measure) {
    case 'difference':
    case 'pathSpread':
      return formatLength(value, unit);
    case 'offAxisDeg':
      return formatAngle(value);
    case 'obstructionDb':
      return formatLevel(value);
    case 'firstReflectionTime':
      return formatTime(value);
  }
}

/** "17 mm", "20°", "5.0 dB", "0.02 ms"; "none" where no reflection comes. */
export function measureText(
  measure: Measure,
  value: number | null | undefined,
  unit: LengthUnit,
): string {
  if (value === null || value === undefined)
    return measure === 'firstReflectionTime' && value === null ? 'none' : NO_VALUE;
  return amount(measure, value, unit);
}

/** "−492 mm", "+4°": how much a measure changes from what it is now. */
export function changeText(
  measure: Measure,
  value: number | null | undefined,
  now: number | null | undefined,
  unit: LengthUnit,
): string {
  if (typeof value !== 'number' || typeof now !== 'number') return NO_VALUE;
  return withSign(amount(measure, value - now, unit));
}

/** What the best of several has. */
export const BEST_WORDS: Readonly<Record<Measure, string>> = {
  difference: 'the least difference',
  offAxisDeg: 'nearest the axis',
  obstructionDb: 'the least obstruction',
  firstReflectionTime: 'the latest first reflection',
  pathSpread: 'the least path spread',
};

/** How far one is behind the best: "12° further off the axis than 2". */
export function behindWords(
  measure: Measure,
  value: number | null | undefined,
  best: number | null | undefined,
  than: string,
  unit: LengthUnit,
): string | null {
  if (typeof value !== 'number') return null;
  if (typeof best !== 'number')
    return measure === 'firstReflectionTime'
      ? `its first reflection comes after ${amount(measure, value, unit)}, ${than} has none`
      : null;
  const by = amount(measure, Math.abs(value - best), unit);
  switch (measure) {
    case 'difference':
      return `${by} more difference than ${than}`;
    case 'offAxisDeg':
      return `${by} further off the axis than ${than}`;
    case 'obstructionDb':
      return `${by} more obstruction than ${than}`;
    case 'firstReflectionTime':
      return `its first reflection comes ${by} earlier than that of ${than}`;
    case 'pathSpread':
      return `${by} more path spread than ${than}`;
  }
}
