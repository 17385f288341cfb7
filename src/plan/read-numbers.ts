/** Reading what people type: numbers, sums, lengths, angles, temperatures. */
import { quoted } from './quoted';
import { type LengthUnit, MM_PER_INCH, type TemperatureUnit } from './unit-names';

export type ReadAnswer = { ok: true; value: number } | { ok: false; message: string };

const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
};

const refuse = (message: string): ReadAnswer => ({ ok: false, message });

/** A number as people write it, without a sign: 12  12,5  .5  1,234.5  1/4  47 1/4 */
const AMOUNT = String.raw`(?:\d+\s+\d+\s*\/\s*\d+|\d+\s*\/\s*\d+|(?:\d[\d.,]*|[.,]\d+))`;
const TERM = new RegExp(String.raw`^\s*([+-]?)\s*(${AMOUNT})\s*([a-z°%"]*)`, 'i');

interface Term {
  amount: number;
  unit: string;
}

/** One amount without a sign, or a sentence. */
function readAmount(text: string): ReadAnswer {
  const fraction = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (fraction) {
    const [, whole = '0', over = '0', under = '1'] = fraction;
    if (Number(under) === 0) return refuse(`${quoted(text)} divides by zero`);
    return { ok: true, value: Number(whole) + Number(over) / Number(under) };
  }
  const points = (text.match(/\./g) ?? []).length;
  const commas = (text.match(/,/g) ?? []).length;
  let plain = text;
  if (points > 0 && commas > 0) {
    // Both in one number: the last kind is the decimal mark, the other groups thousands.
    const [mark, group] = text.lastIndexOf('.') > text.lastIndexOf(',') ? '.,' : ',.';
    const grouped = new RegExp(`^\\d{1,3}(?:\\${group}\\d{3})+\\${mark}\\d+$`);
    if (!grouped.test(text)) return refuse(`${quoted(text)} is not a number`);
    plain = text.replaceAll(group as string, '').replace(mark as string, '.');
  } else if (points > 1 || commas > 1) {
    if (!/^\d{1,3}([.,])\d{3}(?:\1\d{3})+$/.test(text))
      return refuse(`${quoted(text)} is not a number`);
    plain = text.replace(/[.,]/g, '');
  } else if (commas === 1) {
    if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
      const [whole, rest] = text.split(',') as [string, string];
      return refuse(
        `${quoted(text)} can be read two ways: write ${whole}${rest} or ${whole}.${rest}`,
      );
    }
    plain = text.replace(',', '.');
  }
  const value = Number(plain);
  return Number.isFinite(value) ? { ok: true, value } : refuse(`${quoted(text)} is not a number`);
}

/** The terms of a typed sum, signs included. */
function readTerms(typed: string): Term[] | string {
  const text = typed
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/(?<=\d)[\u00a0\u202f\u2009](?=\d{3}(?!\d))/g, '')
    .replace(/[\u00a0\u202f\u2009]/g, ' ')
    .replace(/[\u2033\u201d]|''/g, '"')
    .trim();
  if (text === '') return 'type a number';
  const twoWays = /(?:^|[^\d/])(\d+)-(\d+)\/(\d+)/.exec(text);
  if (twoWays) {
    const [, whole, over, under] = twoWays;
    return `"${whole}-${over}/${under}" can be read two ways: write ${whole} ${over}/${under} or ${whole} - ${over}/${under}`;
  }
  const terms: Term[] = [];
  let rest = text;
  while (rest.trim() !== '') {
    const found = TERM.exec(rest);
    // A second term needs its sign, or "1 200" would be read as 201.
    if (!found || (terms.length > 0 && found[1] === ''))
      return `${quoted(typed.trim())} is not a number`;
    const [all, sign, amount = '', unit = ''] = found;
    const value = readAmount(amount);
    if (!value.ok) return value.message;
    terms.push({ amount: sign === '-' ? -value.value : value.value, unit: unit.toLowerCase() });
    rest = rest.slice(all.length);
  }
  return terms;
}

/**
 * Reads a number or a typed sum ("12,5", "1200+35", "47 1/4"). A decimal comma is read as the
 * point; a number that can be read two ways ("1,200") is refused with both readings.
 */
export function parseNumber(text: string, units: readonly string[] = []): ReadAnswer {
  const terms = readTerms(text);
  if (typeof terms === 'string') return refuse(terms);
  const strange = terms.find(({ unit }) => unit !== '' && !units.includes(unit));
  if (strange) return refuse(`${quoted(strange.unit)} is not a unit that fits here`);
  return finite(terms.reduce((sum, { amount }) => sum + amount, 0));
}

/**
 * Reads a length in mm. `unit` is what a bare number means; explicit mm, cm, m, in, " and ft
 * overrule it. One explicit unit goes for the whole sum ("1200+35 mm"); with several, every term
 * needs its own.
 */
export function parseLength(text: string, unit: LengthUnit): ReadAnswer {
  const terms = readTerms(text);
  if (typeof terms === 'string') return refuse(terms);
  const strange = terms.find((term) => term.unit !== '' && MM_PER[term.unit] === undefined);
  if (strange) return refuse(`${quoted(strange.unit)} is not a length: use mm, cm, m or in`);
  const named = new Set(terms.map((term) => term.unit).filter((name) => name !== ''));
  if (named.size > 1 && terms.some((term) => term.unit === '')) {
    return refuse('name the unit of every number in the sum, or of one only');
  }
  const [common = unit] = named;
  const mm = terms.reduce((s, t) => s + t.amount * (MM_PER[t.unit || common] as number), 0);
  // A millionth of a millimetre is plenty, and 47 1/4 in reads 1200.15, not 1200.1499999999999.
  return finite(Math.round(mm * 1e6) / 1e6);
}

/** Reads an angle in degrees: "24", "24°", "24 deg". */
export const parseAngle = (text: string): ReadAnswer =>
  parseNumber(text, ['°', 'deg', 'degree', 'degrees']);

/** Reads a temperature in °C; a bare number is in `unit`, "68 F" and "20 °C" overrule it. */
export function parseTemperature(text: string, unit: TemperatureUnit): ReadAnswer {
  const ending = /°?\s*([cf])\s*$/i.exec(text);
  const scale = (ending?.[1]?.toUpperCase() ?? unit) as TemperatureUnit;
  const read = parseNumber(ending ? text.slice(0, ending.index) : text, ['°']);
  if (!read.ok || scale === 'C') return read;
  return { ok: true, value: (read.value - 32) / 1.8 };
}

/** Reads a frequency in Hz: "2500", "2.5k", "2,5 kHz". */
export function parseFrequency(text: string): ReadAnswer {
  const kilo = /k(?:hz)?\s*$/i.exec(text);
  const read = parseNumber(kilo ? text.slice(0, kilo.index) : text, ['hz']);
  return read.ok && kilo ? finite(read.value * 1000) : read;
}

function finite(value: number): ReadAnswer {
  return Number.isFinite(value) ? { ok: true, value } : refuse('that number is too large');
}
