/** Numbers as they are shown: fixed digits, a true minus sign, the point as decimal mark. */
import { type LengthUnit, MM_PER_INCH, type TemperatureUnit } from './unit-names';

/** Shown where there is no value. */
export const NO_VALUE = '–';

/** A number with a true minus sign and a fixed number of digits; never "−0". */
export function formatNumber(value: number | null | undefined, digits = 0): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return NO_VALUE;
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

const withUnit = (value: number | null | undefined, digits: number, unit: string): string => {
  const text = formatNumber(value, digits);
  return text === NO_VALUE ? text : `${text}${unit}`;
};

/** The bare number of a length in its unit, as a field shows it: "283" or "11.14". */
export function lengthNumber(mm: number | null | undefined, unit: LengthUnit, digits?: number) {
  const inches = unit === 'in';
  const value = inches && typeof mm === 'number' ? mm / MM_PER_INCH : mm;
  return formatNumber(value, digits ?? (inches ? 2 : 0));
}

/** "283 mm" or "11.14 in". `digits`: 0 for mm and 2 for inches unless told. */
export function formatLength(
  mm: number | null | undefined,
  unit: LengthUnit,
  digits?: number,
): string {
  const text = lengthNumber(mm, unit, digits);
  return text === NO_VALUE ? text : `${text} ${unit}`;
}

/** A number shown with digits gets a plus where it is above zero: "+2.1", "−0.4", "0.0". */
export const withSign = (text: string): string => (/^[\d.]*[1-9]/.test(text) ? `+${text}` : text);

/** "+38 mm", "−0.20 in", "0 mm". */
export const signedLength = (
  mm: number | null | undefined,
  unit: LengthUnit,
  digits?: number,
): string => withSign(formatLength(mm, unit, digits));

/** "31°". */
export const formatAngle = (deg: number | null | undefined, digits = 0): string =>
  withUnit(deg, digits, '°');

/** "0.82 ms". */
export const formatTime = (ms: number | null | undefined, digits = 2): string =>
  withUnit(ms, digits, ' ms');

/** "−2.9 dB". */
export const formatLevel = (db: number | null | undefined, digits = 1): string =>
  withUnit(db, digits, ' dB');

/** "250 Hz", "2.5 kHz". */
export function formatFrequency(hz: number | null | undefined): string {
  if (typeof hz !== 'number' || Math.abs(hz) < 1000) return withUnit(hz, 0, ' Hz');
  return withUnit(hz / 1000, hz % 1000 === 0 ? 0 : hz % 100 === 0 ? 1 : 2, ' kHz');
}

/** "20 °C" or "68 °F". */
export function formatTemperature(
  celsius: number | null | undefined,
  unit: TemperatureUnit,
  digits = 0,
): string {
  const value = unit === 'F' && typeof celsius === 'number' ? celsius * 1.8 + 32 : celsius;
  return withUnit(value, digits, ` °${unit}`);
}
