import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoxShape,
  buildCabin,
  type CapsuleShape,
  distance,
  type MeshShape,
  type Obstacle,
  type Panel,
  type PanelInput,
  type RingShape,
  type Shape,
  type Vec3,
} from '../../../../src/geometry';
import { buildCaster } from '../../../../src/geometry/paths/cast';
import { buildWayFinder } from '../../../../src/geometry/paths/way-round';
import * as any from '../../arbitraries';
import { exhaustiveWay } from './exhaustive';

const solid = (shape: Shape, i = 0): Obstacle => ({
  id: `solid-${i}`,
  name: `solid ${i}`,
  shape,
  given: true,
});

function panelsOf(inputs: readonly PanelInput[]): readonly Panel[] {
  const answer = buildCabin({ cabin: { template: 'none', wheelSide: 'left', panels: inputs } });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin.panels;
}

function wayRound(a: Vec3, b: Vec3, shapes: readonly Shape[], panels: readonly PanelInput[] = []) {
  const made = panelsOf(panels);
  const obstacles = shapes.map(solid);
  const caster = buildCaster(made, obstacles);
  return buildWayFinder(made, obstacles, caster).wayRound(a, b, null, null);
}

const lengthOf = (...of: Parameters<typeof wayRound>): number => {
  const way = wayRound(...of);
  if (!way) throw new Error('expected a way round');
  return way.length;
};

/** The larger of 0.5 % and 2 mm. */
const allowed = (length: number) => Math.max(2, 0.005 * length);

const board = (id: string, y0: number, y1: number, z0: number, z1: number, x = 0): PanelInput => ({
  id,
  corners: [
    [x, y0, z0],
    [x, y1, z0],
    [x, y1, z1],
    [x, y0, z1],
  ],
});

function boxMesh({ center, size }: BoxShape): MeshShape {
  const vertices: Vec3[] = [];
  for (let k = 0; k < 8; k++)
    vertices.push([
      center[0] + (k & 1 ? 0.5 : -0.5) * size[0],
      center[1] + (k & 2 ? 0.5 : -0.5) * size[1],
      center[2] + (k & 4 ? 0.5 : -0.5) * size[2],
    ]);
  const quads = [
    [0, 4, 6, 2],
    [1, 3, 7, 5],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 2, 3, 1],
    [4, 5, 7, 6],
  ] as const;
  const triangles = quads.flatMap(([a, b, c, d]) => [[a, b, c] as const, [a, c, d] as const]);
  return { shape: 'mesh', vertices, triangles };
}

describe('against closed forms', () => {
  test('round the free edge of a thin screen, the string is straight once unfolded', () => {
    // The screen's upper edge at z = 120 is the nearest; from 400 before to 600 behind, 90 aside.
    const screen = board('screen', -500, 500, -800, 120);
    const way = wayRound([-400, 0, 0], [600, 90, 20], [], [screen]);
    const unfolded = Math.hypot(Math.hypot(400, 120) + Math.hypot(600, 100), 90);
    expect(Math.abs((way?.length ?? 0) - unfolded)).toBeLessThan(1e-3);
    expect(way?.round).toEqual(['screen']);
    expect(way?.path.length).toBe(3);
    expect(way?.path[1]?.[2]).toBeCloseTo(120, 6);
  });

  test('over two edges of a box, the string is straight once unfolded', () => {
    const box: BoxShape = { shape: 'box', center: [0, 0, -400], size: [200, 2000, 1000] };
    const length = lengthOf([-400, -100, 0], [500, 150, 40], [box]);
    const unfolded = Math.hypot(Math.hypot(300, 100) + 200 + Math.hypot(400, 60), 250);
    expect(Math.abs(length - unfolded)).toBeLessThan(1e-3);
  });

  test('round a ball: two tangents and an arc', () => {
    for (const [r, off] of [
      [60, 0],
      [60, 35],
      [150, 80],
      [300, 10],
    ] as const) {
      const ball: CapsuleShape = {
        shape: 'capsule',
        from: [0, off, 0],
        to: [0, off, 0],
        radius: r,
      };
      const [a, b]: [Vec3, Vec3] = [
        [-500, 0, 0],
        [700, 0, 0],
      ];
      const [da, db] = [Math.hypot(500, off), Math.hypot(700, off)];
      const between = Math.PI - Math.atan2(off, 500) - Math.atan2(off, 700);
      const arc = between - Math.acos(r / da) - Math.acos(r / db);
      const exact = Math.sqrt(da * da - r * r) + Math.sqrt(db * db - r * r) + r * arc;
      const length = lengthOf(a, b, [ball]);
      expect(Math.abs(length - exact)).toBeLessThan(allowed(exact));
      // Its faces lie outside it, so the string does too.
      expect(length).toBeGreaterThan(exact - 1e-6);
    }
  });

  test('aslant over a long rod the string is a helix between tangents', () => {
    const [r, rise] = [80, 500];
    const rod: CapsuleShape = {
      shape: 'capsule',
      from: [0, -3000, 0],
      to: [0, 3000, 0],
      radius: r,
    };
    const length = lengthOf([-400, 0, 0], [400, rise, 0], [rod]);
    const flat = 2 * Math.sqrt(400 ** 2 - r ** 2) + r * (Math.PI - 2 * Math.acos(r / 400));
    const exact = Math.hypot(flat, rise);
    expect(Math.abs(length - exact)).toBeLessThan(2);
    expect(length).toBeGreaterThan(exact - 1e-6);
  });

  test('a straight line through a ring’s hole is clear, and its rim costs a few millimetres', () => {
    const wheel: RingShape = {
      shape: 'ring',
      center: [0, 0, 0],
      axis: [1, 0, 0],
      diameter: 360,
      thickness: 30,
    };
    expect(wayRound([-300, 0, 0], [300, 0, 0], [wheel])?.round).toEqual([]);
    // Over the rim's side: in the plane of the line and the wheel's middle the tube is a disc.
    const way = wayRound([-300, 180, 0], [300, 180, 0], [wheel]);
    const [r, d] = [15, 300];
    const arc = r * (Math.PI - 2 * Math.acos(r / d));
    const exact = 2 * Math.sqrt(d * d - r * r) + arc;
    expect(Math.abs((way?.length ?? 0) - exact)).toBeLessThan(0.5);
    expect(way?.round).toEqual(['solid-0']);
  });
});

describe('against an exhaustive search over edges', () => {
  const place = (x: number) => fc.tuple(fc.constant(x), any.real(-250, 250), any.real(-250, 250));
  const turned = (reach: number): fc.Arbitrary<BoxShape> =>
    fc.record({
      shape: fc.constant('box' as const),
      center: fc.tuple(any.real(-reach, reach), any.real(-90, 90), any.real(-90, 90)),
      size: fc.tuple(any.real(120, 400), any.real(120, 400), any.real(120, 400)),
      turnDeg: fc.tuple(any.real(-180, 180), any.real(-180, 180), any.real(-180, 180)),
    });

  test('round one box the way is the shortest there is', () => {
    let met = 0;
    fc.assert(
      fc.property(fc.noBias(turned(100)), place(-700), place(800), (box, a, b) => {
        const exact = exhaustiveWay(a, b, [box]);
        const length = lengthOf(a, b, [box]);
        if (length > distance(a, b)) met += 1;
        expect(length).toBeLessThan(exact + 0.01);
        // The net is a little too long, never too short by more than its own error.
        expect(length).toBeGreaterThan(exact - allowed(exact));
      }),
      { numRuns: 60, seed: 20263 },
    );
    expect(met).toBeGreaterThan(20);
  });

  test('round two boxes the way is the shortest there is', () => {
    let met = 0;
    fc.assert(
      fc.property(
        fc.noBias(fc.tuple(turned(50), turned(50))),
        place(-700),
        place(700),
        ([one, other], a, b) => {
          const boxes = [
            { ...one, center: [one.center[0] - 300, one.center[1], one.center[2]] as Vec3 },
            { ...other, center: [other.center[0] + 300, other.center[1], other.center[2]] as Vec3 },
          ];
          const exact = exhaustiveWay(a, b, boxes, 10);
          const way = wayRound(a, b, boxes);
          if ((way?.round.length ?? 0) > 1) met += 1;
          expect(way?.length).toBeLessThan(exact + allowed(exact));
          expect(way?.length).toBeGreaterThan(exact - allowed(exact));
        },
      ),
      { numRuns: 60, seed: 20264 },
    );
    expect(met).toBeGreaterThan(8);
  });
});

describe('round a thin screen', () => {
  test('the way is the shortest over any of its four edges', () => {
    let met = 0;
    const size = any.real(60, 400);
    const end = (x: number) =>
      fc.tuple(any.real(x - 100, x + 100), any.real(-250, 250), any.real(-250, 250));
    fc.assert(
      fc.property(fc.noBias(fc.tuple(size, size, size, size)), end(-500), end(600), (by, a, b) => {
        const [y0, y1, z0, z1] = [-by[0], by[1], -by[2], by[3]];
        const way = wayRound(a, b, [], [board('screen', y0, y1, z0, z1)]);
        const at = a[0] / (a[0] - b[0]);
        const [y, z] = [a[1] + at * (b[1] - a[1]), a[2] + at * (b[2] - a[2])];
        if (y < y0 || y > y1 || z < z0 || z > z1) {
          expect(way?.round).toEqual([]);
          return;
        }
        met += 1;
        // Each edge by ternary search: the way over it is convex along it.
        const over = (place: (t: number) => Vec3): number => {
          let [low, high] = [0, 1];
          const length = (t: number) => distance(a, place(t)) + distance(place(t), b);
          for (let i = 0; i < 100; i++) {
            const [s, t] = [low + (high - low) / 3, high - (high - low) / 3];
            if (length(s) < length(t)) high = t;
            else low = s;
          }
          return length(low);
        };
        const exact = Math.min(
          over((t) => [0, y0 + t * (y1 - y0), z0]),
          over((t) => [0, y0 + t * (y1 - y0), z1]),
          over((t) => [0, y0, z0 + t * (z1 - z0)]),
          over((t) => [0, y1, z0 + t * (z1 - z0)]),
        );
        expect(Math.abs((way?.length ?? 0) - exact)).toBeLessThan(1e-3);
      }),
      { numRuns: 200, seed: 20272 },
    );
    expect(met).toBeGreaterThan(60);
  });
});

describe('whatever is in the way', () => {
  // Solids in the middle and ends on either side of it, so that something is mostly in the way.
  const inside = fc.tuple(any.real(-250, 250), any.real(-250, 250), any.real(-250, 250));
  const angle = any.real(-180, 180);
  const side = any.real(20, 350);
  const box: fc.Arbitrary<BoxShape> = fc.record({
    shape: fc.constant('box' as const),
    center: inside,
    size: fc.tuple(side, side, side),
    turnDeg: fc.tuple(angle, angle, angle),
  });
  const shape: fc.Arbitrary<Shape> = fc.oneof(
    box,
    fc.record({
      shape: fc.constant('capsule' as const),
      from: inside,
      to: inside,
      radius: any.real(10, 120),
    }),
    fc.record({
      shape: fc.constant('ring' as const),
      center: inside,
      axis: any.heading,
      diameter: any.real(150, 500),
      thickness: any.real(10, 60),
    }),
  );
  const someShapes = fc.noBias(fc.array(shape, { minLength: 1, maxLength: 4 }));
  const end = (low: number, high: number) =>
    fc.tuple(any.real(low, high), any.real(-300, 300), any.real(-300, 300));
  const ends = fc.noBias(fc.tuple(end(-900, -400), end(400, 900)));

  test('the way is never shorter than the straight line, and equal to it where that is clear', () => {
    let [free, blocked, lost] = [0, 0, 0];
    fc.assert(
      fc.property(someShapes, ends, (shapes, [a, b]) => {
        const way = wayRound(a, b, shapes);
        const clear = buildCaster([], shapes.map(solid)).isFree(a, b);
        if (clear) free += 1;
        else if (way) blocked += 1;
        else lost += 1;
        if (clear) expect(way).toEqual({ path: [a, b], length: distance(a, b), round: [] });
        else if (way) {
          expect(way.length).toBeGreaterThanOrEqual(distance(a, b));
          expect(way.path.length).toBeGreaterThan(2);
        }
      }),
      { numRuns: 200, seed: 20265 },
    );
    expect(free).toBeGreaterThan(20);
    expect(blocked).toBeGreaterThan(60);
    // All of these stand in the open: there is always a way.
    expect(lost).toBe(0);
  });

  test('the way back is the way there', () => {
    fc.assert(
      fc.property(someShapes, ends, (shapes, [a, b]) => {
        const there = wayRound(a, b, shapes);
        const back = wayRound(b, a, shapes);
        expect(back?.length).toBe(there?.length);
        expect(back?.path.toReversed()).toEqual(there?.path);
      }),
      { numRuns: 80, seed: 20266 },
    );
  });

  test('the path adds up to the length and crosses nothing', () => {
    fc.assert(
      fc.property(someShapes, ends, (shapes, [a, b]) => {
        const way = wayRound(a, b, shapes);
        if (!way) return;
        let sum = 0;
        for (let i = 1; i < way.path.length; i++)
          sum += distance(way.path[i - 1] as Vec3, way.path[i] as Vec3);
        expect(Math.abs(sum - way.length)).toBeLessThan(1e-6);
        // Drawn in by half a millimetre all round, nothing is touched any more.
        const thinner = shapes.map((s): Shape => {
          if (s.shape === 'box')
            return { ...s, size: s.size.map((x) => Math.max(0.1, x - 1)) as unknown as Vec3 };
          if (s.shape === 'capsule') return { ...s, radius: s.radius - 0.5 };
          if (s.shape === 'ring') return { ...s, thickness: s.thickness - 1 };
          return s;
        });
        const caster = buildCaster([], thinner.map(solid));
        for (let i = 1; i < way.path.length; i++)
          expect(
            caster.crossings(way.path[i - 1] as Vec3, way.path[i] as Vec3, null, null),
          ).toEqual([]);
      }),
      { numRuns: 100, seed: 20267 },
    );
  });

  test('the length has no jump as a body slides into the line', () => {
    const [a, b]: [Vec3, Vec3] = [
      [-500, 0, 0],
      [600, 30, -20],
    ];
    const slid: ((y: number) => Shape)[] = [
      (y) => ({ shape: 'box', center: [0, y, 10], size: [120, 200, 300], turnDeg: [20, -15, 40] }),
      (y) => ({ shape: 'capsule', from: [-60, y, -80], to: [90, y, 120], radius: 70 }),
      (y) => ({
        shape: 'ring',
        center: [0, y, 0],
        axis: [1, 0.2, 0.3],
        diameter: 340,
        thickness: 30,
      }),
    ];
    for (const at of slid) {
      let last = lengthOf(a, b, [at(-400)]);
      for (let y = -400; y <= 400; y += 2) {
        const length = lengthOf(a, b, [at(y)]);
        // No body's edge moves faster than the body: two slopes of at most one each.
        expect(Math.abs(length - last)).toBeLessThan(2);
        last = length;
      }
      expect(last).toBe(distance(a, b));
    }
  });

  test('a mesh of a box is passed as the box is', () => {
    fc.assert(
      fc.property(fc.noBias(box), ends, ({ center, size }, [a, b]) => {
        const box: BoxShape = { shape: 'box', center, size };
        const way = wayRound(a, b, [box]);
        const meshWay = wayRound(a, b, [boxMesh(box)]);
        expect(meshWay === null).toBe(way === null);
        if (way && meshWay) expect(Math.abs(meshWay.length - way.length)).toBeLessThan(1e-6);
      }),
      { numRuns: 150, seed: 20268 },
    );
  });
});

describe('several at once, and no way at all', () => {
  test('between two boards reaching in from opposite sides the string runs in an S', () => {
    const boards = [
      board('lower', -900, 900, -900, 60, -100),
      board('upper', -900, 900, -60, 900, 100),
    ];
    const way = wayRound([-400, 0, 0], [400, 0, 0], [], boards);
    const exact = 2 * Math.hypot(300, 60) + Math.hypot(200, 120);
    expect(Math.abs((way?.length ?? 0) - exact)).toBeLessThan(0.01);
    expect(way?.round).toEqual(['lower', 'upper']);
  });

  test('what stands round the first corner is passed too', () => {
    const box: BoxShape = { shape: 'box', center: [0, 0, -100], size: [100, 3000, 400] };
    const lid: BoxShape = { shape: 'box', center: [0, 0, 250], size: [20, 3000, 250] };
    const way = wayRound([-400, 0, 0], [400, 0, 0], [box, lid]);
    // Between them there is a gap from 100 to 125.
    const exact = 2 * Math.hypot(350, 100) + 100;
    expect(Math.abs((way?.length ?? 0) - exact)).toBeLessThan(0.01);
    expect(way?.round).toEqual(['solid-0']);
  });

  test('a speaker or an ear inside a solid is not reached', () => {
    const box: BoxShape = { shape: 'box', center: [0, 0, 0], size: [200, 200, 200] };
    for (const shape of [
      box,
      boxMesh(box),
      { shape: 'capsule', from: [-20, 0, 0], to: [20, 0, 0], radius: 80 } as const,
    ]) {
      expect(wayRound([0, 10, 20], [900, 0, 0], [shape])).toBeNull();
      expect(wayRound([900, 0, 0], [0, 10, 20], [shape])).toBeNull();
    }
  });

  test('why there is no way is said in words', () => {
    const console: Obstacle = {
      ...solid({ shape: 'box', center: [0, 0, 0], size: [200, 200, 200] }),
      name: 'centre console',
      given: false,
    };
    const ring = solid(
      { shape: 'ring', center: [0, 0, 0], axis: [1, 0, 0], diameter: 360, thickness: 30 },
      7,
    );
    const why = (obstacle: Obstacle, from: Vec3, to: Vec3) => {
      const finder = buildWayFinder([], [obstacle], buildCaster([], [obstacle]));
      expect(finder.wayRound(from, to, null, null)).toBeNull();
      return finder.whyNone(from, to, null, null);
    };
    const [within, outside]: [Vec3, Vec3] = [
      [0, 10, 20],
      [900, 0, 0],
    ];
    expect(why(console, within, outside)).toBe('the speaker stands inside the centre console');
    expect(why(console, outside, within)).toBe(
      "the listener's point lies inside the centre console",
    );
    expect(why(ring, [2, 180, 1], outside)).toBe('the speaker stands inside "solid 7"');
  });

  test('out of a closed room of panels there is no way', () => {
    const c = (k: number): Vec3 => [k & 1 ? 300 : -300, k & 2 ? 300 : -300, k & 4 ? 300 : -300];
    const walls = [
      [0, 2, 6, 4],
      [1, 3, 7, 5],
      [0, 1, 5, 4],
      [2, 3, 7, 6],
      [0, 1, 3, 2],
      [4, 5, 7, 6],
    ].map((corners, i) => ({ id: `wall-${i}`, corners: corners.map(c) as never }));
    expect(wayRound([10, 20, 30], [1000, 40, 50], [], walls)).toBeNull();
    const made = panelsOf(walls);
    const finder = buildWayFinder(made, [], buildCaster(made, []));
    expect(finder.whyNone([10, 20, 30], [1000, 40, 50], null, null)).toBe(
      'no way past "wall-1" was found: everything tried is closed',
    );
    const open = wayRound([10, 20, 30], [1000, 40, 50], [], walls.slice(0, 5));
    expect(open?.length).toBeGreaterThan(distance([10, 20, 30], [1000, 40, 50]));
  });

  test('a panel or mesh without area is in nobody’s way', () => {
    const speck: MeshShape = { shape: 'mesh', vertices: [[0, 0, 0]], triangles: [[0, 0, 0]] };
    const line = board('line', 0, 0, -100, 100);
    expect(wayRound([-9, 1, 0], [9, 1, 0], [speck], [line])?.round).toEqual([]);
  });

  test('the listener’s own head does not bend the way, a neighbour’s does', () => {
    const head: Obstacle = {
      ...solid({ shape: 'capsule', from: [0, 0, 0], to: [0, 0, 50], radius: 80 }),
      occupant: { seat: 'front-left', part: 'head' },
    };
    const finder = buildWayFinder([], [head], buildCaster([], [head]));
    const to = (listener: string) => finder.wayRound([-500, 0, 0], [500, 0, 0], listener, null);
    expect(to('front-left')?.length).toBe(1000);
    expect(to('front-right')?.length).toBeGreaterThan(1005);
  });
});
