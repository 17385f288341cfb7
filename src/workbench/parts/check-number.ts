import type { ReadAnswer } from '../../plan/units';
import type { FieldKind } from './field-kind';

export interface Range {
  min?: number;
  max?: number;
}

/** Reads a field's text and holds it to its range: the value, or one sentence for the user. */
export function checkNumber(text: string, kind: FieldKind, { min, max }: Range = {}): ReadAnswer {
  const read = kind.read(text);
  if (!read.ok) return { ok: false, message: sentence(read.message) };
  const low = min !== undefined && read.value < min - 1e-9;
  const high = max !== undefined && read.value > max + 1e-9;
  if (!low && !high) return read;
  const show = (value: number) => withUnit(kind.show(value), kind.unit);
  if (min !== undefined && max !== undefined)
    return { ok: false, message: `Must be between ${show(min)} and ${show(max)}.` };
  return {
    ok: false,
    message: low ? `Must be ${show(min ?? 0)} or more.` : `Must be ${show(max ?? 0)} or less.`,
  };
}

/** A value one or more arrow steps on, on the step's grid's own offset, within its range. */
export function nudged(
  value: number,
  steps: number,
  kind: FieldKind,
  { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: Range = {},
): number {
  return Math.min(max, Math.max(min, value + steps * kind.step));
}

const withUnit = (text: string, unit: string): string =>
  unit === '°' || unit === '' ? `${text}${unit}` : `${text} ${unit}`;

/** First letter large, a full stop at the end. */
export function sentence(text: string): string {
  const large = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(large) ? large : `${large}.`;
}
