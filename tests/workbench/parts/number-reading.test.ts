import { describe, expect, test } from 'vitest';
import { checkNumber, nudged } from '../../../src/workbench/parts/check-number';
import {
  angleKind,
  frequencyKind,
  lengthKind,
  numberKind,
  temperatureKind,
} from '../../../src/workbench/parts/field-kind';

const mm = lengthKind('mm');
const inch = lengthKind('in');
const value = (...given: Parameters<typeof checkNumber>) => {
  const read = checkNumber(...given);
  if (!read.ok) throw new Error(read.message);
  return read.value;
};

describe('a number field', () => {
  test('reads a sum of tape readings', () => {
    expect(value('1200+35', mm)).toBe(1235);
  });

  test('reads a decimal comma', () => {
    expect(value('12,5', mm)).toBe(12.5);
  });

  test('reads inches as inches, and mm when mm is written', () => {
    expect(value('10', inch)).toBeCloseTo(254, 9);
    expect(value('10 mm', inch)).toBe(10);
  });

  test('answers wrong input with one sentence', () => {
    for (const text of ['', 'abc', '12 apples', '1.2.3']) {
      const read = checkNumber(text, mm);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.message).toMatch(/^[A-Z"“].*[.]$/);
    }
  });

  test('says the range in the unit on show', () => {
    const read = checkNumber('30', inch, { min: 0, max: 508 });
    expect(read).toEqual({ ok: false, message: 'Must be between 0 in and 20 in.' });
    expect(checkNumber('-1', mm, { min: 0 })).toEqual({
      ok: false,
      message: 'Must be 0 mm or more.',
    });
  });

  test('a value right at the end of its range is taken', () => {
    expect(value('1', numberKind('', 4, 0.01), { min: 0, max: 1 })).toBe(1);
  });

  test('shows no more digits than the value has', () => {
    expect(mm.show(283)).toBe('283');
    expect(mm.show(283.14159)).toBe('283.1');
    expect(mm.show(-0.01)).toBe('0');
    expect(inch.show(254)).toBe('10');
    expect(temperatureKind('F').show(20)).toBe('68');
    expect(frequencyKind.show(2500)).toBe('2500');
  });

  test('what it shows is read back as the same value, to the digits shown', () => {
    const cases = [
      [mm, 1234.5, 0.05],
      [inch, 1234.5, 0.0127],
      [angleKind, -31.2, 0.05],
      [temperatureKind('F'), 21.3, 0.05],
    ] as const;
    for (const [kind, number, digits] of cases) {
      expect(Math.abs(value(kind.show(number), kind) - number)).toBeLessThanOrEqual(digits);
    }
  });

  test('arrow keys step within the range and no further', () => {
    expect(nudged(10, 1, mm, { max: 500 })).toBe(11);
    expect(nudged(499.5, 10, mm, { max: 500 })).toBe(500);
    expect(nudged(0.005, -1, numberKind('', 4, 0.01), { min: 0 })).toBe(0);
    expect(nudged(0, 16, inch)).toBeCloseTo(25.4, 9);
  });
});
