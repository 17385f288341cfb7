import { describe, expect, test } from 'vitest';
import {
  formatFrequency,
  formatLength,
  formatLevel,
  formatNumber,
  formatTemperature,
  formatTime,
  NO_VALUE,
  parseAngle,
  parseFrequency,
  parseLength,
  parseNumber,
  parseTemperature,
} from '../../src/plan/units';

describe('reading what is typed', () => {
  test.each([
    ['1200', 'mm', 1200],
    ['1200+35', 'mm', 1235],
    ['1200 - 35 + 0,5', 'mm', 1165.5],
    ['12,5', 'mm', 12.5],
    ['−3', 'mm', -3],
    ['+3', 'mm', 3],
    ['.5', 'mm', 0.5],
    ['1\u202f234', 'mm', 1234],
    ['47\u00a01/4', 'in', 1200.15],
    ['1.234,5', 'mm', 1234.5],
    ['1,234.5', 'mm', 1234.5],
    ['1,234,567', 'mm', 1234567],
    ['0,125', 'mm', 0.125],
    ['10 cm', 'mm', 100],
    ['1.2 m', 'mm', 1200],
    ['47 1/4', 'in', 1200.15],
    ['47 1/4 in', 'mm', 1200.15],
    ['47 1/4"', 'mm', 1200.15],
    ['3/8', 'in', 9.525],
    ['47 - 1/4', 'in', 1187.45],
    ['1200+35 mm', 'in', 1235],
    ['1 m + 35 mm', 'in', 1035],
    ['2 ft + 3 in', 'mm', 685.8],
  ] as const)('"%s" in a field of %s is %d mm', (text, unit, mm) => {
    const read = parseLength(text, unit);
    expect(read.ok, JSON.stringify(read)).toBe(true);
    if (read.ok) expect(Math.abs(read.value - mm)).toBeLessThan(1e-6);
  });

  test.each([
    ['', /type a number/],
    ['abc', /"abc" is not a number/],
    ['12 kg', /"kg" is not a length/],
    ['1 200', /is not a number/],
    ['1,200', /two ways: write 1200 or 1\.200/],
    ['47-1/4', /two ways: write 47 1\/4 or 47 - 1\/4/],
    ['1/0', /divides by zero/],
    ['1 m + 35 mm + 2', /name the unit of every number/],
    ['1e3', /is not a number/],
    ['--3', /is not a number/],
    ['12,34,5', /is not a number/],
    ['=1+1', /is not a number/],
    ['9'.repeat(400), /too large|not a number/],
  ])('"%s" is refused with a sentence', (text, sentence) => {
    const read = parseLength(text, 'mm');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.message).toMatch(sentence);
  });

  test('angles, temperatures and frequencies take their own units', () => {
    expect(parseAngle('24°')).toEqual({ ok: true, value: 24 });
    expect(parseAngle('24,5 deg')).toEqual({ ok: true, value: 24.5 });
    expect(parseTemperature('20', 'C')).toEqual({ ok: true, value: 20 });
    expect(parseTemperature('68', 'F')).toEqual({ ok: true, value: 20 });
    expect(parseTemperature('68 °F', 'C')).toEqual({ ok: true, value: 20 });
    expect(parseTemperature('-4 c', 'F')).toEqual({ ok: true, value: -4 });
    expect(parseFrequency('2,5k')).toEqual({ ok: true, value: 2500 });
    expect(parseFrequency('80 Hz')).toEqual({ ok: true, value: 80 });
    expect(parseNumber('12 mm').ok).toBe(false);
  });
});

describe('showing numbers', () => {
  test('lengths in both units, with a true minus sign and never a minus zero', () => {
    expect(formatLength(283.1, 'mm')).toBe('283 mm');
    expect(formatLength(-283.1, 'in')).toBe('−11.15 in');
    expect(formatLength(-0.2, 'mm')).toBe('0 mm');
    expect(formatLength(12.34, 'mm', 1)).toBe('12.3 mm');
  });

  test('other quantities', () => {
    expect(formatTime(0.8234)).toBe('0.82 ms');
    expect(formatLevel(-2.92)).toBe('−2.9 dB');
    expect(formatFrequency(80)).toBe('80 Hz');
    expect(formatFrequency(2500)).toBe('2.5 kHz');
    expect(formatFrequency(20000)).toBe('20 kHz');
    expect(formatTemperature(20, 'F')).toBe('68 °F');
  });

  test('where there is no value a dash stands, never NaN', () => {
    for (const nothing of [null, undefined, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(formatLength(nothing, 'in')).toBe(NO_VALUE);
      expect(formatNumber(nothing)).toBe(NO_VALUE);
      expect(formatFrequency(nothing)).toBe(NO_VALUE);
    }
  });

  test('what is shown in inches reads back as the same length to a tenth of a millimetre', () => {
    for (let mm = -3000; mm <= 3000; mm += 37.3) {
      const read = parseLength(formatLength(mm, 'in', 3), 'mm');
      expect(read.ok && Math.abs(read.value - mm) < 0.05, String(mm)).toBe(true);
    }
  });
});
