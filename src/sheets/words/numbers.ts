/** Numbers on paper: the language's decimal sign, a true minus sign, fixed digits, mm or inches. */
import { type LengthUnit, MM_PER_INCH, NO_VALUE } from '../../plan/units';

type Value = number | null | undefined;

export interface Numbers {
  unit: LengthUnit;
  /** "283", "−2,9". */
  number(value: Value, digits?: number): string;
  /** "+2,1", "−0,4", "0,0". */
  signed(value: Value, digits?: number): string;
  /** "283 mm" or "11.14 in"; digits: 0 for mm and 2 for inches unless told. */
  length(mm: Value, digits?: number): string;
  /** The bare number of {@link length}. */
  lengthNumber(mm: Value, digits?: number): string;
  /** "+38 mm", "−0.20 in". */
  signedLength(mm: Value, digits?: number): string;
  /** "0,82 ms". */
  time(ms: Value, digits?: number): string;
  /** "31°". */
  angle(deg: Value, digits?: number): string;
  /** "−2,9 dB". */
  level(db: Value, digits?: number): string;
  /** "250 Hz", "2,5 kHz". */
  frequency(hz: Value): string;
  /** "20 °C": always Celsius on metric paper, Fahrenheit beside inches. */
  temperature(celsius: Value): string;
  /** "28. November 2026". */
  date(date: Date): string;
  /** "a, b and c". */
  list(names: readonly string[]): string;
}

/** A space that no line is broken at, between a number and its unit. */
const TIE = '\u00a0';

export function createNumbers(locale: string, unit: LengthUnit): Numbers {
  const formats = new Map<number, Intl.NumberFormat>();
  function number(value: Value, digits = 0): string {
    if (value === null || value === undefined || !Number.isFinite(value)) return NO_VALUE;
    let format = formats.get(digits);
    if (!format) {
      format = new Intl.NumberFormat(locale, {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
        useGrouping: false,
        signDisplay: 'negative',
      });
      formats.set(digits, format);
    }
    return format.format(value).replace('-', '−');
  }
  const signed = (value: Value, digits = 0) => {
    const text = number(value, digits);
    return /^\D*0*([.,]0*)?$/.test(text) || text.startsWith('−') ? text : `+${text}`;
  };
  const withUnit = (text: string, unitText: string) => (text === NO_VALUE ? text : text + unitText);
  const inches = unit === 'in';
  const lengthNumber = (mm: Value, digits = inches ? 2 : 0) =>
    number(typeof mm === 'number' && inches ? mm / MM_PER_INCH : mm, digits);
  return {
    unit,
    number,
    signed,
    lengthNumber,
    length: (mm, digits) => withUnit(lengthNumber(mm, digits), `${TIE}${unit}`),
    signedLength: (mm, digits = inches ? 2 : 0) =>
      withUnit(
        signed(typeof mm === 'number' && inches ? mm / MM_PER_INCH : mm, digits),
        `${TIE}${unit}`,
      ),
    time: (ms, digits = 2) => withUnit(number(ms, digits), `${TIE}ms`),
    angle: (deg, digits = 0) => withUnit(number(deg, digits), '°'),
    level: (db, digits = 1) => withUnit(number(db, digits), `${TIE}dB`),
    frequency: (hz) => {
      if (typeof hz !== 'number' || Math.abs(hz) < 1000) return withUnit(number(hz), `${TIE}Hz`);
      return withUnit(number(hz / 1000, hz % 1000 === 0 ? 0 : hz % 100 === 0 ? 1 : 2), `${TIE}kHz`);
    },
    temperature: (celsius) =>
      inches && typeof celsius === 'number'
        ? withUnit(number(celsius * 1.8 + 32), `${TIE}°F`)
        : withUnit(number(celsius), `${TIE}°C`),
    date: (date) => new Intl.DateTimeFormat(locale, { dateStyle: 'long' }).format(date),
    list: (names) => new Intl.ListFormat(locale, { type: 'conjunction' }).format(names),
  };
}
