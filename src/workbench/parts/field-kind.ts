import {
  type LengthUnit,
  MM_PER_INCH,
  parseAngle,
  parseFrequency,
  parseLength,
  parseNumber,
  parseTemperature,
  type ReadAnswer,
  type TemperatureUnit,
} from '../../plan/units';

/** How a number is shown in a field, read from it and stepped through. */
export interface FieldKind {
  /** Shown at the field's right edge. */
  unit: string;
  /** The value as text without its unit, no more digits than it needs. */
  show: (value: number) => string;
  read: (text: string) => ReadAnswer;
  /** What an arrow key changes, in the value's own unit. */
  step: number;
}

/** A number with at most `digits` decimals, trailing zeros dropped; a plain minus, to type over. */
export function trimmed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  const short = digits > 0 ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** Lengths: mm to a tenth, inches to a thousandth; one mm or a sixteenth of an inch a step. */
export const lengthKind = (unit: LengthUnit): FieldKind => ({
  unit,
  show: (mm) => (unit === 'in' ? trimmed(mm / MM_PER_INCH, 3) : trimmed(mm, 1)),
  read: (text) => parseLength(text, unit),
  step: unit === 'in' ? MM_PER_INCH / 16 : 1,
});

export const angleKind: FieldKind = {
  unit: '°',
  show: (deg) => trimmed(deg, 1),
  read: parseAngle,
  step: 1,
};

export const frequencyKind: FieldKind = {
  unit: 'Hz',
  show: (hz) => trimmed(hz, 1),
  read: parseFrequency,
  step: 50,
};

export const temperatureKind = (unit: TemperatureUnit): FieldKind => ({
  unit: `°${unit}`,
  show: (c) => trimmed(unit === 'F' ? c * 1.8 + 32 : c, 1),
  read: (text) => parseTemperature(text, unit),
  step: unit === 'F' ? 1 / 1.8 : 1,
});

/** A bare number with `digits` decimals at most. */
export const numberKind = (unit: string, digits: number, step: number): FieldKind => ({
  unit,
  show: (value) => trimmed(value, digits),
  read: (text) => parseNumber(text, unit ? [unit.toLowerCase()] : []),
  step,
});
