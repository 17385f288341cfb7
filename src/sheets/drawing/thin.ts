import type { Point } from './visible-lines';

/**
 * A line with fewer points, nowhere farther than `by` from the one given (Douglas and Peucker 1973).
 */
export function thinned(points: readonly Point[], by: number): Point[] {
  if (points.length < 3) return [...points];
  const keep = new Uint8Array(points.length);
  keep[0] = 1;
  keep[points.length - 1] = 1;
  const stack: [number, number][] = [[0, points.length - 1]];
  for (let part = stack.pop(); part; part = stack.pop()) {
    const [from, to] = part;
    let farthest = -1;
    let most = by;
    for (let i = from + 1; i < to; i++) {
      const far = distanceTo(points[i] as Point, points[from] as Point, points[to] as Point);
      if (far > most) [farthest, most] = [i, far];
    }
    if (farthest < 0) continue;
    keep[farthest] = 1;
    stack.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, i) => keep[i] === 1);
}

function distanceTo([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / size));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
