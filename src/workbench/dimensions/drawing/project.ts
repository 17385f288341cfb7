import type { DimensionLine, Vec3 } from '../../../geometry';

export type View = DimensionLine['view'];
export type Point = readonly [number, number];

/**
 * A point of the car on the paper, mm, y downward as in SVG. Side: from the car's left, nose to
 * the left. Plan: from above, nose to the left, so it stands in line under the side view. Front:
 * as the people inside look ahead, the car's left on the left.
 */
export function project(view: View, [x, y, z]: Vec3): Point {
  if (view === 'side') return [x, -z];
  if (view === 'plan') return [x, -y];
  return [y, -z];
}

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** The smallest box round all points, or `null` when there are none. */
export function boxOf(points: Iterable<Point>): Box | null {
  let box: Box | null = null;
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    if (!box) box = { left: x, right: x, top: y, bottom: y };
    else {
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
      box.top = Math.min(box.top, y);
      box.bottom = Math.max(box.bottom, y);
    }
  }
  return box;
}

/** From mm on the paper to the drawing's own units. */
export interface Fit {
  width: number;
  height: number;
  at: (point: Point) => Point;
}

/**
 * Scales a box to a drawing of the given width, with a margin all round; where that would be
 * taller than `maxHeight`, to the height instead, centred.
 */
export function fitToPaper(box: Box, width: number, maxHeight: number, margin: number): Fit {
  const across = Math.max(box.right - box.left, 1);
  const down = Math.max(box.bottom - box.top, 1);
  const scale = Math.min((width - 2 * margin) / across, (maxHeight - 2 * margin) / down);
  const height = down * scale + 2 * margin;
  const shift = (width - across * scale) / 2;
  return {
    width,
    height,
    at: ([x, y]) => [(x - box.left) * scale + shift, (y - box.top) * scale + margin],
  };
}

const round = (n: number): number => Math.round(n * 10) / 10;

/** SVG path data through points. */
export function pathThrough(points: readonly Point[], closed = false): string {
  if (points.length === 0) return '';
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
  return closed ? `${d}Z` : d;
}
