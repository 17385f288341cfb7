import { describe, expect, it } from 'vitest';
import { HEAD, halfAt, type Rect, splitSheet } from '../../src/scene/halves/split';

const right = ({ left, width }: Rect) => left + width;
const bottom = ({ top, height }: Rect) => top + height;

describe('two options side by side', () => {
  it('gives the whole area to the option on the board while there is no other', () => {
    const split = splitSheet(664, 400, false);
    expect(split.way).toBe('whole');
    expect(split.board).toEqual({ left: 0, top: 0, width: 664, height: 400 });
    expect(split.beside).toBeNull();
  });

  it('puts them beside each other on a wide area, one above the other on a tall one', () => {
    expect(splitSheet(664, 400, true).way).toBe('across');
    expect(splitSheet(1600, 700, true).way).toBe('across');
    expect(splitSheet(768, 730, true).way).toBe('down');
    expect(splitSheet(390, 600, true).way).toBe('down');
  });

  it('makes the halves alike to the pixel, side by side, clear of each other and of their strips', () => {
    for (let width = 320; width < 1700; width += 37) {
      for (let height = 240; height < 1100; height += 41) {
        const { way, board, beside } = splitSheet(width, height, true);
        if (!beside) throw new Error('two options need two halves');
        expect([beside.width, beside.height]).toEqual([board.width, board.height]);
        expect(right(beside)).toBe(width);
        expect(bottom(beside)).toBe(way === 'down' ? height : bottom(board));
        if (way === 'across') {
          expect(right(board)).toBeLessThanOrEqual(beside.left);
          expect(bottom(board)).toBe(height);
        } else {
          expect(right(board)).toBe(width);
          expect(bottom(board) + HEAD).toBeLessThanOrEqual(beside.top);
        }
        expect(Math.min(board.top, beside.top)).toBeGreaterThanOrEqual(HEAD);
      }
    }
  });

  it('never leaves the car smaller than the other way of cutting would', () => {
    // A car 1.4 times as wide as high on a sheet of this size.
    const car = (width: number, height: number) => Math.min(width, 1.4 * height);
    for (const [width, height] of [
      [664, 400],
      [900, 900],
      [768, 690],
      [390, 500],
      [500, 1000],
    ] as const) {
      const { board } = splitSheet(width, height, true);
      const across = car(width / 2, height - HEAD);
      const down = car(width, height / 2 - HEAD);
      expect(car(board.width, board.height)).toBeGreaterThan(Math.max(across, down) - 1);
    }
  });

  it('tells which half a pointer is in, and where in it', () => {
    const split = splitSheet(801, 400, true);
    expect(halfAt(split, 10, HEAD + 5)).toEqual({ half: 'board', x: 10, y: 5 });
    expect(halfAt(split, 801 - 400 + 10, HEAD + 5)).toEqual({ half: 'beside', x: 10, y: 5 });
    expect(halfAt(split, 10, HEAD - 1)).toBeNull();
    expect(halfAt(split, 801, HEAD + 5)).toBeNull();
    const down = splitSheet(390, 600, true);
    expect(halfAt(down, 200, 300 + HEAD + 7)).toEqual({ half: 'beside', x: 200, y: 7 });
    expect(halfAt(down, 200, 300 + HEAD - 1)).toBeNull();
    const whole = splitSheet(664, 400, false);
    expect(halfAt(whole, 400, 10)).toEqual({ half: 'board', x: 400, y: 10 });
  });
});
