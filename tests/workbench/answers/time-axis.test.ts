import { describe, expect, test } from 'vitest';
import { timeAxis } from '../../../src/workbench/answers/time-axis';

describe('the time axis of the strip chart', () => {
  test('shows every time inside its edges', () => {
    const times = [2.31, 3.4, 5.9];
    const axis = timeAxis(times, 400, 16);
    for (const time of times) {
      expect(axis.x(time)).toBeGreaterThanOrEqual(16 - 1e-9);
      expect(axis.x(time)).toBeLessThanOrEqual(384 + 1e-9);
    }
  });

  test('puts equal steps of time at equal distances', () => {
    const axis = timeAxis([1, 6], 500);
    expect(axis.x(3) - axis.x(2)).toBeCloseTo(axis.x(5) - axis.x(4), 9);
  });

  test('labels round times, far enough apart to read', () => {
    for (const width of [120, 300, 900]) {
      const axis = timeAxis([2.31, 5.9], width);
      const gaps = axis.ticks.slice(1).map((tick, i) => tick.time - (axis.ticks[i]?.time ?? 0));
      expect(axis.ticks.length).toBeGreaterThan(0);
      for (const [i, gap] of gaps.entries()) {
        expect(gap).toBeCloseTo(gaps[0] ?? 0, 9);
        const [a, b] = [axis.ticks[i], axis.ticks[i + 1]];
        expect(axis.x(b?.time ?? 0) - axis.x(a?.time ?? 0)).toBeGreaterThanOrEqual(52);
      }
    }
  });

  test('one time alone, or none, still gives a finite axis', () => {
    for (const times of [[3.2], [3.2, 3.2], [], [Number.NaN]]) {
      const axis = timeAxis(times, 300);
      expect(axis.to).toBeGreaterThan(axis.from);
      expect(Number.isFinite(axis.x(1))).toBe(true);
    }
  });

  test('no label stands for a time before the sound starts', () => {
    expect(timeAxis([0, 0.1], 300).ticks.every((tick) => tick.time >= 0)).toBe(true);
  });
});
