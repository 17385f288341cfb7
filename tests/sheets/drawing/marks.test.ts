import { describe, expect, test } from 'vitest';
import { letterOf } from '../../../src/sheets/drawing/letters';
import { niceBar } from '../../../src/sheets/drawing/nice-bar';
import { placeMarks } from '../../../src/sheets/drawing/place-marks';
import { thinned } from '../../../src/sheets/drawing/thin';

describe('letters', () => {
  test('run on after Z', () => {
    expect([0, 25, 26, 27, 51, 52].map(letterOf)).toEqual(['A', 'Z', 'AA', 'AB', 'AZ', 'BA']);
  });

  test('stand inside the frame and clear of each other, however close the speakers', () => {
    const frame = { left: 0, top: 0, right: 120, bottom: 90 };
    const anchors = Array.from({ length: 12 }, (_, i) => [6 + 0.4 * i, 5] as const);
    const size = anchors.map(() => [2.4, 2.1] as const);
    const places = placeMarks(anchors, size, frame, [], []);
    places.forEach(([x, y], i) => {
      expect(x - 2.4).toBeGreaterThanOrEqual(0);
      expect(y - 2.1).toBeGreaterThanOrEqual(0);
      for (const [ox, oy] of places.slice(i + 1))
        expect(Math.abs(ox - x) >= 4.8 || Math.abs(oy - y) >= 4.2).toBe(true);
    });
  });
});

describe('scale bars', () => {
  test('are as long as fits, in round numbers of the unit', () => {
    expect(niceBar(1 / 30, 'mm', 32)).toBe(500);
    expect(niceBar(1 / 32, 'mm', 32)).toBe(1000);
    expect(niceBar(1 / 30, 'in', 32)).toBe(36 * 25.4);
  });
});

describe('thinned lines', () => {
  test('keep corners and drop what lies between', () => {
    const line = [
      [0, 0],
      [1, 0.1],
      [2, 0],
      [2, 2],
    ] as const;
    expect(thinned(line, 0.2)).toEqual([line[0], line[2], line[3]]);
    expect(thinned(line, 0.05)).toEqual(line);
  });
});
