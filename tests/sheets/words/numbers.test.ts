import { describe, expect, test } from 'vitest';
import { createNumbers } from '../../../src/sheets/words/numbers';

const english = createNumbers('en-GB', 'mm');
const german = createNumbers('de-DE', 'mm');
const inches = createNumbers('en-GB', 'in');

describe('numbers on paper', () => {
  test('the decimal sign is the language’s, the minus a true one, and thousands are not grouped', () => {
    expect(english.number(-1234.56, 1)).toBe('−1234.6');
    expect(german.number(-1234.56, 1)).toBe('−1234,6');
  });

  test('a sign stands where it says something', () => {
    expect(german.signed(2.14, 1)).toBe('+2,1');
    expect(german.signed(-0.04, 1)).toBe('0,0');
    expect(english.signed(0.0004, 2)).toBe('0.00');
    expect(english.signed(null, 1)).toBe('–');
  });

  test('lengths in mm or inches, with a space no line is broken at', () => {
    expect(german.length(283.4)).toBe('283\u00a0mm');
    expect(inches.length(283)).toBe('11.14\u00a0in');
    expect(german.signedLength(38)).toBe('+38\u00a0mm');
    expect(inches.signedLength(-5)).toBe('−0.20\u00a0in');
    expect(createNumbers('de-DE', 'in').length(283)).toBe('11,14\u00a0in');
  });

  test('what is not known is a dash, without a unit', () => {
    expect(english.length(null)).toBe('–');
    expect(english.time(Number.NaN)).toBe('–');
    expect(english.level(Number.POSITIVE_INFINITY)).toBe('–');
  });

  test('frequencies, times, dates and lists', () => {
    expect(german.frequency(2500)).toBe('2,5\u00a0kHz');
    expect(english.frequency(300)).toBe('300\u00a0Hz');
    expect(german.time(0.823)).toBe('0,82\u00a0ms');
    expect(german.date(new Date(2026, 10, 28))).toBe('28. November 2026');
    expect(german.list(['a', 'b', 'c'])).toBe('a, b und c');
    expect(english.list(['a', 'b', 'c'])).toBe('a, b and c');
  });

  test('temperatures go with the lengths', () => {
    expect(german.temperature(20)).toBe('20\u00a0°C');
    expect(inches.temperature(20)).toBe('68\u00a0°F');
  });
});
