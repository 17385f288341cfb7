import { describe, expect, test } from 'vitest';
import { withSign } from '../../../src/plan/units';
import { nextIndex } from '../../../src/workbench/answers/sheet-choice';
import { SHEETS } from '../../../src/workbench/answers/sheets';

describe('the choice of sheets', () => {
  test('offers each once, times first', () => {
    expect(SHEETS[0]?.title).toBe('Times');
    expect(new Set(SHEETS.map(({ id }) => id)).size).toBe(SHEETS.length);
    expect(SHEETS.map(({ title }) => title)).toEqual(
      expect.arrayContaining(['Reflections', 'Levels', 'Crossovers', 'Image', 'Seats']),
    );
  });

  test('arrows go round, Home and End to the ends, other keys nowhere', () => {
    expect(nextIndex('ArrowRight', 9, 10)).toBe(0);
    expect(nextIndex('ArrowLeft', 0, 10)).toBe(9);
    expect(nextIndex('ArrowDown', 3, 10)).toBe(4);
    expect(nextIndex('Home', 5, 10)).toBe(0);
    expect(nextIndex('End', 5, 10)).toBe(9);
    expect(nextIndex('Tab', 5, 10)).toBeNull();
  });
});

test('a plus stands before what is above zero as it is shown, and nothing else', () => {
  expect(withSign('2.1 dB')).toBe('+2.1 dB');
  expect(withSign('10 mm')).toBe('+10 mm');
  expect(withSign('0.05 ms')).toBe('+0.05 ms');
  for (const text of ['0 mm', '0.0 dB', '−0.4 dB', '–']) expect(withSign(text)).toBe(text);
});
