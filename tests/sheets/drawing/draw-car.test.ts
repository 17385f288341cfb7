import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/geometry';
import { areasOf } from '../../../src/sheets/drawing/areas';
import { cameraOf } from '../../../src/sheets/drawing/camera';
import { drawCar } from '../../../src/sheets/drawing/draw-car';
import { edgesOf } from '../../../src/sheets/drawing/edges';
import { createGrid, rasterInPlace } from '../../../src/sheets/drawing/raster';
import type { Solid } from '../../../src/sheets/drawing/solids';
import { joined, type Point, visibleStretches } from '../../../src/sheets/drawing/visible-lines';
import { factsOf } from '../mark-out/papers';

const ABOVE = cameraOf('above', 'left', [0, 0, 0]);

/** A level square of the given half side at a height, round the origin. */
function square(half: number, height: number): Solid {
  const vertices: Vec3[] = [
    [-half, -half, height],
    [half, -half, height],
    [half, half, height],
    [-half, half, height],
  ];
  return {
    id: `square-${height}`,
    tone: 'panel',
    vertices,
    triangles: [
      [0, 1, 2],
      [0, 2, 3],
    ],
    oneSided: false,
    glass: false,
  };
}

const BOX = { left: -200, top: -200, right: 200, bottom: 200 };

function seen(solids: readonly Solid[], of: Solid) {
  const grid = createGrid(BOX, 2);
  for (const solid of solids) rasterInPlace(grid, solid, ABOVE);
  return { grid, stretches: visibleStretches(edgesOf(of, ABOVE), grid) };
}

const lengthOf = (stretches: readonly (readonly [Point, Point])[]): number =>
  stretches.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

describe('hidden lines', () => {
  test('a square lying free shows its four sides and not its diagonal', () => {
    const one = square(100, 0);
    expect(lengthOf(seen([one], one).stretches)).toBeCloseTo(800, 6);
  });

  test('under a larger one nothing of it is seen, above it all', () => {
    const [low, high] = [square(100, 0), square(150, 100)];
    expect(seen([low, high], low).stretches).toEqual([]);
    const over = square(100, 200);
    expect(lengthOf(seen([over, high], over).stretches)).toBeCloseTo(800, 6);
  });

  test('half covered, it is cut where the cover ends, within a cell', () => {
    const low = square(100, 0);
    const cover: Solid = {
      ...square(150, 100),
      vertices: [
        [-150, -150, 100],
        [0, -150, 100],
        [0, 150, 100],
        [-150, 150, 100],
      ],
    };
    // One whole side and half of two.
    expect(Math.abs(lengthOf(seen([low, cover], low).stretches) - 400)).toBeLessThan(4);
  });

  test('glass hides nothing', () => {
    const low = square(100, 0);
    const pane = { ...square(150, 100), glass: true };
    expect(lengthOf(seen([low, pane], low).stretches)).toBeCloseTo(800, 6);
  });

  test('stretches that meet become one line, whatever their order', () => {
    const [a, b, c, d]: Point[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [5, 5],
    ] as Point[];
    const lines = joined([
      [a as Point, b as Point],
      [d as Point, [6, 6]],
      [c as Point, b as Point],
    ]);
    expect(lines).toHaveLength(2);
    expect(lines.find((line) => line.length === 3)).toBeDefined();
  });
});

describe('areas of one tone', () => {
  test('a square is traced as one ring of its size', () => {
    const one = square(100, 0);
    const [area, ...others] = areasOf(seen([one], one).grid);
    expect(others).toEqual([]);
    expect(area?.rings).toHaveLength(1);
    const ring = area?.rings[0] ?? [];
    const size = ring.reduce((sum, [x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length] as Point;
      return sum + (x * ny - nx * y) / 2;
    }, 0);
    expect(Math.abs(Math.abs(size) - 40_000)).toBeLessThan(400);
  });

  test('a frame has an outer and an inner ring', () => {
    const frame = square(100, 0);
    const hole: Solid = { ...square(50, 10), tone: 'seat' };
    const areas = areasOf(seen([frame, hole], frame).grid);
    expect(areas.map(({ rings }) => rings.length).sort()).toEqual([1, 2]);
  });
});

describe('the car', () => {
  const { cabin, result } = factsOf();

  test.each(['above', 'side', 'behind'] as const)('%s: tones and lines, all finite', (view) => {
    const drawing = drawCar(cabin, view, 'front');
    expect(drawing.areas.length).toBeGreaterThan(4);
    expect(drawing.outlines.length).toBeGreaterThan(40);
    const numbers = [
      ...drawing.areas.flatMap(({ rings }) => rings),
      ...drawing.outlines,
      ...drawing.folds,
      ...drawing.glass,
      ...drawing.body,
      ...drawing.section,
    ].flat(2);
    expect(numbers.every(Number.isFinite)).toBe(true);
    expect(drawCar(cabin, view, 'front')).toBe(drawing);
  });

  test('from above and from the side a millimetre is one in the drawing', () => {
    const [a, b] = result.placed.map(({ position }) => position) as [Vec3, Vec3];
    const apart = (view: 'above' | 'side', k: 0 | 1) => {
      const { project } = drawCar(cabin, view, 'front').camera;
      return project(b)[k] - project(a)[k];
    };
    expect(apart('above', 0)).toBeCloseTo(b[0] - a[0], 9);
    expect(apart('above', 1)).toBeCloseTo(a[1] - b[1], 9);
    expect(apart('side', 0)).toBeCloseTo(b[0] - a[0], 9);
    expect(apart('side', 1)).toBeCloseTo(a[2] - b[2], 9);
  });

  test('with the wheel on the other side the view from behind is the mirror image', () => {
    const target: Vec3 = [700, 0, 500];
    const [left, right] = (['left', 'right'] as const).map((side) =>
      cameraOf('behind', side, target),
    );
    const here = left?.project([300, 400, 700]);
    const there = right?.project([300, -400, 700]);
    expect(there?.[0]).toBeCloseTo(-(here?.[0] ?? 0), 9);
    expect(there?.[1]).toBeCloseTo(here?.[1] ?? 0, 9);
  });
});
