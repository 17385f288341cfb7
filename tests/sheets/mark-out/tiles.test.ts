import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OVERLAP, tilesFor } from '../../../src/sheets/mark-out/tiles';
import { real } from '../../geometry/arbitraries';

describe('a template cut into pages', () => {
  test('stays on one page where it fits, in its middle', () => {
    const { tiles, xs, ys } = tilesFor([-42, -42], [42, 42], [180, 220]);
    expect(tiles).toEqual([{ column: 0, row: 0, name: 'A1', low: [-90, -110], high: [90, 110] }]);
    expect([xs, ys]).toEqual([[], []]);
  });

  test('by hand: 300 mm round on pages of 180 by 220', () => {
    const { tiles, columns, rows, xs, ys } = tilesFor([-150, -150], [150, 150], [180, 220]);
    expect([columns, rows]).toEqual([2, 2]);
    expect(tiles.map(({ name }) => name)).toEqual(['A1', 'B1', 'A2', 'B2']);
    // 2 × 180 − 12 = 348 wide, from −174; the glue line half an overlap into the second.
    expect(tiles[0]?.low[0]).toBeCloseTo(-174, 9);
    expect(xs).toEqual([expect.closeTo(0, 9)]);
    expect(ys).toEqual([expect.closeTo(0, 9)]);
    // The first row is the upper one.
    expect(tiles[0]?.low[1]).toBeGreaterThan(tiles[2]?.low[1] as number);
  });

  test('every place is on a page, neighbours share the overlap, and one page less would not do', () => {
    fc.assert(
      fc.property(real(20, 900), real(20, 900), real(-100, 100), (wide, high, off) => {
        const low = [off - wide / 2, off - high / 2] as const;
        const end = [off + wide / 2, off + high / 2] as const;
        const window = [180, 220] as const;
        const { tiles, columns, rows, xs } = tilesFor(low, end, window);
        expect(tiles).toHaveLength(columns * rows);
        expect(Math.min(...tiles.map((t) => t.low[0]))).toBeLessThanOrEqual(low[0] + 1e-6);
        expect(Math.max(...tiles.map((t) => t.high[1]))).toBeGreaterThanOrEqual(end[1] - 1e-6);
        if (columns > 1) {
          const [a, b] = tiles as [(typeof tiles)[0], (typeof tiles)[0]];
          expect(a.high[0] - b.low[0]).toBeCloseTo(OVERLAP, 6);
          expect(xs[0]).toBeCloseTo((a.high[0] + b.low[0]) / 2, 6);
          expect((columns - 1) * (window[0] - OVERLAP) + OVERLAP).toBeLessThan(wide);
        }
      }),
    );
  });

  test('a window no wider than the overlap is refused', () => {
    expect(() => tilesFor([0, 0], [10, 10], [12, 200])).toThrow('more than 12 mm, got 12');
  });
});
