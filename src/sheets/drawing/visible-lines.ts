/** What of the edges is not hidden, joined into long lines. */
import type { Edge } from './edges';
import type { Grid } from './raster';

export type Point = readonly [number, number];

/** What lies no farther behind a surface than this is drawn on it, mm. */
const SKIN = 9;

/** The visible stretches of edges, in mm of the drawing. */
export function visibleStretches(edges: readonly Edge[], grid: Grid): [Point, Point][] {
  const { left, top } = grid.box;
  const found: [Point, Point][] = [];
  for (const { from, to } of edges) {
    const [ax, ay] = [(from[0] - left) * grid.fine, (from[1] - top) * grid.fine];
    const [bx, by] = [(to[0] - left) * grid.fine, (to[1] - top) * grid.fine];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay)));
    const at = (t: number): Point => [
      from[0] + t * (to[0] - from[0]),
      from[1] + t * (to[1] - from[1]),
    ];
    let start: number | null = null;
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps;
      const seen = isSeen(
        grid,
        ax + t * (bx - ax),
        ay + t * (by - ay),
        from[2] + t * (to[2] - from[2]),
      );
      if (seen) start ??= i / steps;
      else if (start !== null) {
        found.push([at(start), at(i / steps)]);
        start = null;
      }
    }
    if (start !== null) found.push([at(start), at(1)]);
  }
  return found;
}

/** Seen where the surface there, or just beside it, is not nearer: a rim lies between two cells. */
function isSeen({ width, height, depth }: Grid, x: number, y: number, z: number): boolean {
  const [cx, cy] = [Math.floor(x), Math.floor(y)];
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const [px, py] = [cx + i, cy + j];
      if (px < 0 || py < 0 || px >= width || py >= height) return true;
      if (z <= (depth[py * width + px] as number) + SKIN) return true;
    }
  }
  return false;
}

const keyOf = ([x, y]: Point): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** Stretches that meet end to end, as lines: fewer strokes, and no gaps at the joints. */
export function joined(stretches: readonly (readonly [Point, Point])[]): Point[][] {
  const open = new Map<string, Point[]>();
  const lines = new Set<Point[]>();
  const release = (line: Point[]) => {
    for (const end of [line[0], line.at(-1)] as [Point, Point])
      if (open.get(keyOf(end)) === line) open.delete(keyOf(end));
  };
  const hold = (line: Point[]) => {
    for (const end of [line[0], line.at(-1)] as [Point, Point])
      if (!open.has(keyOf(end))) open.set(keyOf(end), line);
  };
  for (const [from, to] of stretches) {
    let line: Point[] = [from, to];
    for (const end of [from, to]) {
      const other = open.get(keyOf(end));
      if (!other || other === line) continue;
      release(other);
      release(line);
      lines.delete(other);
      lines.delete(line);
      line = spliced(other, line, keyOf(end));
      lines.add(line);
      hold(line);
    }
    lines.add(line);
    hold(line);
  }
  return [...lines];
}

function spliced(a: Point[], b: Point[], at: string): Point[] {
  const first = keyOf(a.at(-1) as Point) === at ? a : a.toReversed();
  const second = keyOf(b[0] as Point) === at ? b : b.toReversed();
  return [...first, ...second.slice(1)];
}
