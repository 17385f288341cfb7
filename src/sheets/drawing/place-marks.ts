/** Where letters stand beside what they name, so that none covers another or a speaker. */
import type { Point } from './visible-lines';

export interface Rect {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const ANGLES = Array.from({ length: 16 }, (_, i) => (2 * Math.PI * i) / 16);
const REACHES = [4.2, 6.5, 9, 12, 16, 22, 30];

/**
 * A place for each mark, all in mm of paper: near its anchor, inside the frame, clear of the others
 * as far as that can be had. Tried greedily, the first mark first.
 * @param size half width and half height of a mark
 */
export function placeMarks(
  anchors: readonly Point[],
  size: readonly (readonly [number, number])[],
  frame: Rect,
  lines: readonly (readonly Point[])[],
  /** Half the size of what an anchor stands for. */
  sizes: readonly number[],
): Point[] {
  const taken: Rect[] = anchors.map((at, i) => around(at, sizes[i] ?? 1.2, sizes[i] ?? 1.2));
  return anchors.map((anchor, i) => {
    const [w, h] = size[i] as readonly [number, number];
    let best: Point = anchor;
    let least = Number.POSITIVE_INFINITY;
    for (const reach of REACHES) {
      for (const angle of ANGLES) {
        const away = reach + (sizes[i] ?? 1.2) - 1.2;
        const x = anchor[0] + Math.cos(angle) * (away + w - h);
        const y = anchor[1] + Math.sin(angle) * away;
        const rect = around([x, y], w + 0.4, h + 0.4);
        const cost =
          reach +
          30 * taken.reduce((sum, other) => sum + overlap(rect, other), 0) +
          1000 * outside(rect, frame) +
          lines.reduce((sum, line) => sum + crossing(rect, line), 0);
        if (cost < least) [best, least] = [[x, y], cost];
      }
    }
    taken.push(around(best, w + 0.4, h + 0.4));
    return best;
  });
}

const around = ([x, y]: Point, w: number, h: number): Rect => ({
  left: x - w,
  top: y - h,
  right: x + w,
  bottom: y + h,
});

const overlap = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

const outside = (a: Rect, frame: Rect): number =>
  Math.max(0, frame.left - a.left) +
  Math.max(0, frame.top - a.top) +
  Math.max(0, a.right - frame.right) +
  Math.max(0, a.bottom - frame.bottom);

/** How much of a line runs under a mark, by eight samples a stretch. */
function crossing(rect: Rect, line: readonly Point[]): number {
  let hits = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    for (let k = 0; k <= 24; k++) {
      const x = a[0] + ((b[0] - a[0]) * k) / 24;
      const y = a[1] + ((b[1] - a[1]) * k) / 24;
      if (x > rect.left && x < rect.right && y > rect.top && y < rect.bottom) hits++;
    }
  }
  return hits;
}
