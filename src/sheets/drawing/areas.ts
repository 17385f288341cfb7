/** Areas of one tone, traced along the cells' sides and smoothed: fills without a single pixel. */
import type { Grid } from './raster';
import { thinned } from './thin';
import type { Point } from './visible-lines';

export interface Area {
  label: number;
  /** Closed rings, mm of the drawing; even-odd. */
  rings: Point[][];
}

/** Rings round fewer cells than this are specks, and left out. */
const SPECK = 24;
/** How far a smoothed ring may stray, cells. */
const STRAY = 0.8;

/** All areas of a grid, by label. */
export function areasOf(grid: Grid): Area[] {
  const labels = [...new Set(grid.label)].filter((label) => label >= 0).sort((a, b) => a - b);
  return labels.map((label) => ({ label, rings: ringsOf(grid, label) }));
}

/** East, south, west, north: each step keeps the area on its right. */
const STEP: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

function ringsOf({ width, height, label: labels, box, fine }: Grid, label: number): Point[][] {
  const inside = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && labels[y * width + x] === label;
  const done = new Uint8Array((width + 1) * (height + 1));
  const rings: Point[][] = [];
  for (let y = 0; y <= height; y++) {
    for (let x = 0; x < width; x++) {
      // A ring's upper side runs east with the area below it, or west with the area above it.
      for (const heading of [0, 2]) {
        const below = inside(x, y);
        const above = inside(x, y - 1);
        const bit = heading === 0 ? 1 : 2;
        const from = heading === 0 ? x : x + 1;
        const at = y * (width + 1) + from;
        if (heading === 0 ? !below || above : !above || below) continue;
        if ((done[at] as number) & bit) continue;
        const ring = walk(from, y, heading, inside, (px, py, way) => {
          if (way === 0) done[py * (width + 1) + px] = (done[py * (width + 1) + px] as number) | 1;
          if (way === 2) done[py * (width + 1) + px] = (done[py * (width + 1) + px] as number) | 2;
        });
        if (Math.abs(areaOf(ring)) < SPECK) continue;
        rings.push(
          smooth(ring).map(([px, py]): Point => [box.left + px / fine, box.top + py / fine]),
        );
      }
    }
  }
  return rings;
}

function walk(
  startX: number,
  startY: number,
  startHeading: number,
  inside: (x: number, y: number) => boolean,
  mark: (x: number, y: number, heading: number) => void,
): Point[] {
  const ring: Point[] = [];
  let [x, y, heading] = [startX, startY, startHeading];
  do {
    mark(x, y, heading);
    ring.push([x, y]);
    const [dx, dy] = STEP[heading] as Point;
    x += dx;
    y += dy;
    // Turn right as soon as the cell ahead on the right is outside; left when both ahead are inside.
    const right = cellAhead(x, y, heading, 1, inside);
    const left = cellAhead(x, y, heading, 0, inside);
    if (!right) heading = (heading + 1) % 4;
    else if (left) heading = (heading + 3) % 4;
  } while (x !== startX || y !== startY || heading !== startHeading);
  return ring;
}

/** The cell ahead of a corner, on the left (0) or the right (1) of the heading. */
function cellAhead(
  x: number,
  y: number,
  heading: number,
  side: 0 | 1,
  inside: (x: number, y: number) => boolean,
): boolean {
  const cells: readonly (readonly [Point, Point])[] = [
    [
      [0, -1],
      [0, 0],
    ],
    [
      [0, 0],
      [-1, 0],
    ],
    [
      [-1, 0],
      [-1, -1],
    ],
    [
      [-1, -1],
      [0, -1],
    ],
  ];
  const [dx, dy] = (cells[heading] as readonly [Point, Point])[side] as Point;
  return inside(x + dx, y + dy);
}

const areaOf = (ring: readonly Point[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as Point;
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/** Stairs become slopes: middles of the steps, thinned in two halves. */
function smooth(ring: readonly Point[]): Point[] {
  const middles = ring.map(([x, y], i): Point => {
    const [nx, ny] = ring[(i + 1) % ring.length] as Point;
    return [(x + nx) / 2, (y + ny) / 2];
  });
  const half = middles.length >> 1;
  const first = thinned(middles.slice(0, half + 1), STRAY);
  const second = thinned([...middles.slice(half), middles[0] as Point], STRAY);
  return [...first.slice(0, -1), ...second.slice(0, -1)];
}
