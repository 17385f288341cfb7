import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../../src/geometry';
import type { Body } from '../../../../src/geometry/paths/way-round/body';
import { pullTaut } from '../../../../src/geometry/paths/way-round/pull-taut';
import { type Bend, stringLength } from '../../../../src/geometry/paths/way-round/string';
import { mix } from '../../../../src/geometry/vector';
import * as any from '../../arbitraries';

/** A string over the middles of these edges. */
function bendsOver(edges: readonly (readonly [Vec3, Vec3])[]): Bend[] {
  const body: Body = {
    id: 'edges',
    corners: Float64Array.from(edges.flat(2)),
    edges: Int32Array.from(edges.flatMap((_, i) => [2 * i, 2 * i + 1])),
    outward: new Float64Array(3 * edges.length),
    tree: () => null,
    faces: () => null,
    closed: false,
    bounds: new Float64Array(7),
  };
  return edges.map(([p, q], edge) => ({ body, edge, part: 0.5, point: mix(p, q, 0.5) }));
}

describe('a string pulled taut over edges', () => {
  const near = (x: number) =>
    fc.tuple(any.real(x - 30, x + 30), any.real(-200, 200), any.real(-200, 200));
  const edges = fc
    .integer({ min: 1, max: 12 })
    .chain((n) =>
      fc.tuple(
        ...Array.from({ length: n }, (_, i) =>
          fc.tuple(near((800 * (i + 1)) / (n + 1) - 400), near((800 * (i + 1)) / (n + 1) - 400)),
        ),
      ),
    ) as fc.Arbitrary<[Vec3, Vec3][]>;

  test('gets no shorter by moving any bend along its edge, alone or with the others', () => {
    fc.assert(
      fc.property(fc.noBias(edges), near(-500), near(500), (over, a, b) => {
        const taut = pullTaut(a, bendsOver(over), b);
        const length = stringLength(a, taut, b);
        for (const step of [0.01, -0.01, 0.1, -0.1])
          for (let one = -1; one < taut.length; one++) {
            const moved = taut.map((bend, i) => {
              const [p, q] = over[i] as [Vec3, Vec3];
              const part = Math.min(1, Math.max(0, bend.part + (one < 0 || i === one ? step : 0)));
              return { ...bend, part, point: mix(p, q, part) };
            });
            expect(stringLength(a, moved, b)).toBeGreaterThan(length - 1e-6);
          }
      }),
      { numRuns: 150, seed: 20273 },
    );
  });

  test('lies on the straight line where all the edges cross it', () => {
    const over = Array.from({ length: 9 }, (_, i): [Vec3, Vec3] => {
      const t = (Math.PI * i) / 9;
      const [y, z] = [100 * Math.cos(t), 100 * Math.sin(t)];
      return [
        [80 * i - 320, -y, -z],
        [80 * i - 320, 2 * y, 2 * z],
      ];
    });
    const taut = pullTaut([-400, 0, 0], bendsOver(over), [400, 0, 0]);
    expect(Math.abs(stringLength([-400, 0, 0], taut, [400, 0, 0]) - 800)).toBeLessThan(1e-9);
  });

  test('round many faces it is as short as the unrolled strip', () => {
    // Edges along Y round a half circle: unrolled, the string is straight.
    const n = 40;
    const over = Array.from({ length: n + 1 }, (_, i): [Vec3, Vec3] => {
      const t = Math.PI - (Math.PI * i) / n;
      const [x, z] = [100 * Math.cos(t), 100 * Math.sin(t)];
      return [
        [x, -900, z],
        [x, 900, z],
      ];
    });
    const taut = pullTaut([-100, -400, -50], bendsOver(over), [100, 300, -80]);
    const across = n * 200 * Math.sin(Math.PI / (2 * n)) + 50 + 80;
    expect(
      Math.abs(stringLength([-100, -400, -50], taut, [100, 300, -80]) - Math.hypot(across, 700)),
    ).toBeLessThan(1e-6);
  });
});
