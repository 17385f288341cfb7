import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Obstacle, Shape, Vec3 } from '../../../../src/geometry';
import { buildCaster } from '../../../../src/geometry/paths/cast';
import { buildWayFinder } from '../../../../src/geometry/paths/way-round';
import { solidBodies } from '../../../../src/geometry/paths/way-round/bodies';
import { buildEdgeTree, type EdgeTree } from '../../../../src/geometry/paths/way-round/edge-tree';
import { nearestEdge, zoneRound } from '../../../../src/geometry/paths/way-round/near-miss';
import { edgeOf } from '../../../../src/geometry/paths/way-round/string';
import { fresnelRadius, GRAZING_RADII } from '../../../../src/geometry/sound/obstruction';
import { along, distance, dot, mix, sub } from '../../../../src/geometry/vector';
import * as any from '../../arbitraries';

const solid = (shape: Shape, id = 'solid'): Obstacle => ({ id, name: id, shape, given: true });

function misses(a: Vec3, b: Vec3, obstacles: readonly Obstacle[], wavelength: number) {
  const finder = buildWayFinder([], obstacles, buildCaster([], obstacles));
  return finder.nearMisses(a, b, null, null, wavelength);
}

const detourOver = (a: Vec3, p: Vec3, b: Vec3) => distance(a, p) + distance(p, b) - distance(a, b);

/** Whether a place lies within the zone, by its definition. */
function isInZone(a: Vec3, b: Vec3, p: Vec3, wavelength: number): boolean {
  const reach = distance(a, b);
  const way = sub(b, a);
  const at = dot(sub(p, a), way) / reach;
  const off = distance(p, along(a, way, at / reach));
  // At 1000 Hz and a speed of λ mm/ms the wavelength is λ mm.
  return off < GRAZING_RADII * fresnelRadius(at, reach - at, 1000, wavelength);
}

describe('a near miss', () => {
  const shelf: Shape = { shape: 'box', center: [0, 0, -100], size: [100, 4000, 100] };

  test('costs what the way over the edge is longer, which unfolds into a plane', () => {
    // Aslant over the shelf; both ends are level with each other, 70 above its two upper edges. The
    // one in the middle of the line costs least.
    const [a, b]: [Vec3, Vec3] = [
      [-600, -90, 20],
      [500, 210, 20],
    ];
    const [miss, ...others] = misses(a, b, [solid(shelf)], 400);
    const overFirst = Math.hypot(2 * Math.hypot(550, 70), 300);
    expect(Math.abs((miss?.detour ?? 0) - (overFirst - distance(a, b)))).toBeLessThan(1e-9);
    expect(miss?.point[0]).toBe(-50);
    expect(miss?.point[2]).toBe(-50);
    expect(others).toEqual([]);
  });

  test('tells where on the line it is, and how far the edge is from there', () => {
    const [a, b]: [Vec3, Vec3] = [
      [-400, 0, 20],
      [400, 0, 40],
    ];
    const [miss] = misses(a, b, [solid(shelf)], 400);
    if (!miss) throw new Error('expected a near miss');
    expect(Math.abs(distance(miss.point, miss.onLine) - miss.distance)).toBeLessThan(1e-9);
    expect(Math.abs(distance(a, miss.onLine) - miss.at)).toBeLessThan(1e-9);
    expect(Math.abs(dot(sub(miss.point, miss.onLine), sub(b, a)))).toBeLessThan(1e-6);
    expect(Math.abs(detourOver(a, miss.point, b) - miss.detour)).toBeLessThan(1e-9);
  });

  test('of a round body is over its side, to its faces’ fineness', () => {
    const ball: Shape = { shape: 'capsule', from: [0, 0, 0], to: [0, 0, 0], radius: 100 };
    const [miss] = misses([-500, 0, 150], [500, 0, 150], [solid(ball)], 500);
    expect(Math.abs((miss?.distance ?? 0) - 50)).toBeLessThan(2);
  });

  test('is one only within 0.6 of the first Fresnel radius, be it in the middle or near an end', () => {
    const post = (x: number): Obstacle =>
      solid({ shape: 'box', center: [x, 0, -50], size: [1e-3, 4000, 100] });
    for (const [x, wavelength] of [
      [0, 100],
      [-380, 100],
      [250, 700],
      [-399, 5700],
    ] as const) {
      const edge = GRAZING_RADII * fresnelRadius(400 + x, 400 - x, 1000, wavelength);
      const at = (height: number) =>
        misses([-400, 0, height], [400, 0, height], [post(x)], wavelength).length;
      expect([x, at(edge * 0.999)]).toEqual([x, 1]);
      expect([x, at(edge * 1.001)]).toEqual([x, 0]);
    }
  });

  test('is none before a line’s start, behind its end, or along a face far from its edges', () => {
    const at = (x: number) => solid({ shape: 'box', center: [x, 0, 0], size: [100, 100, 100] });
    expect(misses([-300, 0, 0], [300, 0, 0], [at(-351), at(351)], 5700)).toEqual([]);
    const table: Shape = { shape: 'box', center: [0, 0, -50], size: [4000, 4000, 100] };
    expect(misses([-400, 0, 1], [400, 0, 1], [solid(table)], 100)).toEqual([]);
  });

  test('of several bodies the smallest detour is named first, the listener’s own head not at all', () => {
    const ball = (id: string, y: number, seat?: string): Obstacle => ({
      ...solid({ shape: 'capsule', from: [0, y, -50], to: [0, y, 50], radius: 20 }, id),
      ...(seat && { occupant: { seat, part: 'head' as const } }),
    });
    const all = [ball('far', 90), ball('near', -60), ball('own', 40, 'front-left')];
    const finder = buildWayFinder([], all, buildCaster([], all));
    const named = (listener: string) =>
      finder.nearMisses([-400, 0, 0], [400, 0, 0], listener, null, 300).map(({ id }) => id);
    expect(named('front-left')).toEqual(['near', 'far']);
    expect(named('front-right')).toEqual(['own', 'near', 'far']);
  });

  test('goes over into the way round without a jump as a body rises into the line', () => {
    const [a, b]: [Vec3, Vec3] = [
      [-400, -60, 0],
      [500, 80, 0],
    ];
    // Its detour counts as negative while it is missed.
    const detourAt = (z: number): number => {
      const body = solid({ ...shelf, center: [0, 0, z - 50] });
      const finder = buildWayFinder([], [body], buildCaster([], [body]));
      const way = finder.wayRound(a, b, null, null);
      if (way && way.round.length > 0) return way.length - distance(a, b);
      return -(finder.nearMisses(a, b, null, null, 700)[0]?.detour ?? Number.NaN);
    };
    let last = detourAt(-60);
    for (let z = -59; z <= 40; z++) {
      const detour = detourAt(z);
      expect(detour).toBeGreaterThanOrEqual(last);
      expect(detour - last).toBeLessThan(0.5);
      last = detour;
    }
    expect(Math.abs(detourAt(1e-4))).toBeLessThan(1e-6);
    expect(Math.abs(detourAt(-1e-4))).toBeLessThan(1e-6);
  });

  test('asked for alone is the first of all there are', () => {
    fc.assert(
      fc.property(fc.array(any.capsule, { maxLength: 6 }), any.point, any.point, (shapes, a, b) => {
        const obstacles = shapes.map((shape, i) => solid(shape, `${i}`));
        const finder = buildWayFinder([], obstacles, buildCaster([], obstacles));
        const [first = null] = finder.nearMisses(a, b, null, null, 700);
        const alone = finder.nearestMiss(a, b, null, null, 700);
        expect(alone === null).toBe(first === null);
        if (alone && first) expect(Math.abs(alone.detour - first.detour)).toBeLessThan(2e-9);
        const least = (below: number) => finder.leastDetour(a, b, null, null, 700, below);
        expect(least(Infinity)).toBe(first?.detour ?? null);
        if (!first) return;
        expect(least(first.detour * (1 + 1e-12))).toBe(first.detour);
        expect(least(first.detour)).toBeNull();
      }),
      { numRuns: 200, seed: 20270 },
    );
  });

  test('meets a capsule’s faces just outside it, however it lies', () => {
    fc.assert(
      fc.property(any.capsule, (shape) => {
        const [body] = solidBodies('solid', shape);
        if (!body) throw new Error('a capsule has no body');
        const core = sub(shape.to, shape.from);
        const square = dot(core, core);
        for (let c = 0; c < body.corners.length; c += 3) {
          const p: Vec3 = [0, 1, 2].map((k) => body.corners[c + k] as number) as unknown as Vec3;
          const t = square > 0 ? dot(sub(p, shape.from), core) / square : 0;
          const off = distance(p, along(shape.from, core, Math.max(0, Math.min(1, t))));
          expect(off).toBeGreaterThan(shape.radius * (1 - 1e-9));
          expect(off).toBeLessThan(shape.radius * 1.018);
        }
        for (let e = 0; 2 * e < body.edges.length; e++) {
          // Off the body is away from the capsule's middle line.
          const m = mix(...edgeOf(body, e), 0.5);
          const t = square > 0 ? dot(sub(m, shape.from), core) / square : 0;
          const away = sub(m, along(shape.from, core, Math.max(0, Math.min(1, t))));
          const o: Vec3 = [0, 1, 2].map((k) => body.outward[3 * e + k]) as unknown as Vec3;
          expect(dot(o, away)).toBeGreaterThan(0);
        }
      }),
      { numRuns: 60, seed: 20271 },
    );
  });

  test('is the same from either end', () => {
    fc.assert(
      fc.property(fc.array(any.capsule, { maxLength: 4 }), any.point, any.point, (shapes, a, b) => {
        const obstacles = shapes.map((shape, i) => solid(shape, `${i}`));
        const there = misses(a, b, obstacles, 700);
        const back = misses(b, a, obstacles, 700);
        expect(back.map(({ id }) => id)).toEqual(there.map(({ id }) => id));
        back.forEach(({ detour }, i) => {
          expect(Math.abs(detour - (there[i]?.detour ?? Infinity))).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 60, seed: 20270 },
    );
  });

  test('needs a line with a length and a wave with one', () => {
    expect(misses([0, 0, 20], [0, 0, 20], [solid(shelf)], 400)).toEqual([]);
    expect(misses([-400, 0, 20], [400, 0, 20], [solid(shelf)], 0)).toEqual([]);
  });
});

describe('the nearest edge', () => {
  const found = new Float64Array(6);
  const ends = fc.tuple(any.point, any.point);

  test('is the shortest way over it that a fine search finds', () => {
    let met = 0;
    fc.assert(
      fc.property(ends, ends, any.real(100, 6000), ([a, b], [p, q], wavelength) => {
        const zone = zoneRound(a, b, wavelength);
        if (!zone) return;
        const tree = buildEdgeTree([...p, ...q]) as EdgeTree;
        let least = Infinity;
        let place = p;
        for (let i = 0; i <= 2000; i++) {
          const at = mix(p, q, i / 2000);
          const detour = detourOver(a, at, b);
          if (detour < least) [least, place] = [detour, at];
        }
        const isNear = nearestEdge(zone, tree, Infinity, found);
        if (!isNear) return;
        met += 1;
        expect(found[0] as number).toBeLessThan(least + 1e-9);
        expect(distance(place, [found[3], found[4], found[5]] as never)).toBeLessThan(5);
        expect(isInZone(a, b, [found[3], found[4], found[5]] as never, wavelength)).toBe(true);
      }),
      { numRuns: 400, seed: 20269 },
    );
    expect(met).toBeGreaterThan(40);
  });

  test('of many is the one that asking each of them gives', () => {
    let met = 0;
    const bent: Shape[] = [
      { shape: 'ring', center: [0, 0, 0], axis: [1, 0.3, 0.2], diameter: 360, thickness: 30 },
      { shape: 'capsule', from: [-90, -200, 0], to: [60, 200, 90], radius: 80 },
    ];
    fc.assert(
      fc.property(
        fc.tuple(any.real(-700, -300), any.real(-300, 300), any.real(-300, 300)),
        fc.tuple(any.real(300, 700), any.real(-300, 300), any.real(-300, 300)),
        any.real(20, 6000),
        (a, b, wavelength) => {
          for (const shape of bent) {
            const [miss] = misses(a, b, [solid(shape)], wavelength);
            const zone = zoneRound(a, b, wavelength);
            if (!zone) return;
            let least = Infinity;
            for (const body of solidBodies('solid', shape))
              for (let e = 0; 2 * e < body.edges.length; e++) {
                const tree = buildEdgeTree(edgeOf(body, e).flat()) as EdgeTree;
                if (nearestEdge(zone, tree, Infinity, found))
                  least = Math.min(least, found[0] as number);
              }
            expect(miss?.detour ?? Infinity).toBe(least);
            if (miss) met += 1;
          }
        },
      ),
      { numRuns: 100, seed: 20271 },
    );
    expect(met).toBeGreaterThan(60);
  });
});
