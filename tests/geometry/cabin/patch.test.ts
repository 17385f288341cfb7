import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Patch } from '../../../src/geometry/cabin/model';
import {
  bilinearPatch,
  nearestOnPatch,
  patchNormal,
  patchPartials,
  pointOnPatch,
  tessellate,
} from '../../../src/geometry/cabin/patch';
import { cross, distance, dot, length, sub, type Vec3 } from '../../../src/geometry/vector';

const square = bilinearPatch(
  [
    [0, 0, 0],
    [100, 0, 0],
    [100, 200, 0],
    [0, 200, 0],
  ],
  1,
);

/** A quarter-ish arch: straight in u, curved in v. */
const arch: Patch = {
  control: [
    [0, 0, 0],
    [50, 0, 0],
    [100, 0, 0],
    [0, 0, 100],
    [50, 0, 100],
    [100, 0, 100],
    [0, 100, 100],
    [50, 100, 100],
    [100, 100, 100],
  ],
  facing: 1,
};

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const anyPatch = fc
  .tuple(
    fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 9, maxLength: 9 }),
    fc.constantFrom(1 as const, -1 as const),
  )
  .map(([control, facing]): Patch => ({ control, facing }));
const unit = fc.double({ min: 0, max: 1, noNaN: true });

describe('patch', () => {
  it('passes through its four corners', () => {
    expect(pointOnPatch(arch, 0, 0)).toEqual([0, 0, 0]);
    expect(pointOnPatch(arch, 1, 0)).toEqual([100, 0, 0]);
    expect(pointOnPatch(arch, 1, 1)).toEqual([100, 100, 100]);
    expect(pointOnPatch(arch, 0, 1)).toEqual([0, 100, 100]);
  });

  it('lies where a quadratic curve through (0,0) bent by (0,100) to (100,100) has its middle', () => {
    // By hand: a quarter of each end and half of the bend: y = 25, z = 75.
    expect(pointOnPatch(arch, 0.5, 0.5)).toEqual([50, 25, 75]);
  });

  it('is the plain mean of its corners in the middle when it is given by corners', () => {
    const p = bilinearPatch(
      [
        [0, 0, 0],
        [10, 0, 4],
        [12, 20, 8],
        [2, 24, 0],
      ],
      1,
    );
    expect(distance(pointOnPatch(p, 0.5, 0.5), [6, 11, 3])).toBeLessThan(1e-12);
    // A quarter of the way: by hand (1−u)(1−v)A + u(1−v)B + uvC + (1−u)vD.
    const by = (k: 0 | 1 | 2) =>
      [0, 10, 12, 2, 0, 0, 20, 24, 0, 4, 8, 0]
        .slice(4 * k, 4 * k + 4)
        .reduce((s, c, i) => s + c * ([0.1875, 0.0625, 0.1875, 0.5625][i] as number), 0);
    expect(distance(pointOnPatch(p, 0.25, 0.75), [by(0), by(1), by(2)])).toBeLessThan(1e-12);
  });

  it('has the slopes its neighbouring points say it has', () => {
    fc.assert(
      fc.property(anyPatch, unit, unit, (patch, u, v) => {
        const h = 1e-5;
        const { du, dv } = patchPartials(patch, u, v);
        const by = (a: Vec3, b: Vec3): Vec3 => [
          (b[0] - a[0]) / (2 * h),
          (b[1] - a[1]) / (2 * h),
          (b[2] - a[2]) / (2 * h),
        ];
        const nu = by(pointOnPatch(patch, u - h, v), pointOnPatch(patch, u + h, v));
        const nv = by(pointOnPatch(patch, u, v - h), pointOnPatch(patch, u, v + h));
        expect(distance(du, nu)).toBeLessThan(1e-3);
        expect(distance(dv, nv)).toBeLessThan(1e-3);
      }),
    );
  });

  it('turns its normal to the side it faces', () => {
    expect(patchNormal(square, 0.3, 0.6)).toEqual([0, 0, 1]);
    expect(patchNormal({ ...square, facing: -1 }, 0.3, 0.6)[2]).toBe(-1);
    const n = patchNormal(arch, 0.5, 0);
    // At its foot the arch rises straight up along z, so x × z = −y.
    expect(distance(n, [0, -1, 0])).toBeLessThan(1e-12);
  });

  it('has a finite unit normal even where an edge is drawn together into a point', () => {
    const tip = bilinearPatch(
      [
        [0, 0, 0],
        [100, 0, 0],
        [50, 80, 0],
        [50, 80, 0],
      ],
      1,
    );
    expect(distance(patchNormal(tip, 0.5, 1), [0, 0, 1])).toBeLessThan(1e-9);
    const nothing = bilinearPatch(
      [
        [5, 5, 5],
        [5, 5, 5],
        [5, 5, 5],
        [5, 5, 5],
      ],
      1,
    );
    expect(patchNormal(nothing, 0.2, 0.2)).toEqual([0, 0, 1]);
  });

  it('is cut into triangles that face the cabin and cover it', () => {
    for (const facing of [1, -1] as const) {
      const mesh = tessellate({ ...square, facing }, 3, 5);
      expect(mesh.vertices).toHaveLength(24);
      expect(mesh.uv).toHaveLength(24);
      expect(mesh.triangles).toHaveLength(30);
      let area = 0;
      for (const [a, b, c] of mesh.triangles) {
        const [p, q, r] = [mesh.vertices[a], mesh.vertices[b], mesh.vertices[c]] as Vec3[];
        const n = cross(sub(q as Vec3, p as Vec3), sub(r as Vec3, p as Vec3));
        expect(n[2] * facing).toBeGreaterThan(0);
        area += length(n) / 2;
      }
      expect(Math.abs(area - 20000)).toBeLessThan(1e-6);
    }
    expect(() => tessellate(square, 0, 2)).toThrow(/at least 1, got 0 and 2/);
  });

  it('finds the place a point on it came from', () => {
    for (const [u, v] of [
      [0.1, 0.9],
      [0.5, 0.5],
      [0, 1],
      [0.73, 0.02],
    ] as const) {
      const found = nearestOnPatch(arch, pointOnPatch(arch, u, v));
      expect(found.distance).toBeLessThan(1e-6);
      expect(Math.abs(found.u - u)).toBeLessThan(1e-6);
      expect(Math.abs(found.v - v)).toBeLessThan(1e-6);
    }
  });

  it('never finds a place farther off than the best of a fine grid', () => {
    fc.assert(
      fc.property(anyPatch, fc.tuple(coordinate, coordinate, coordinate), (patch, point) => {
        const found = nearestOnPatch(patch, point);
        expect(found.u).toBeGreaterThanOrEqual(0);
        expect(found.u).toBeLessThanOrEqual(1);
        expect(found.v).toBeGreaterThanOrEqual(0);
        expect(found.v).toBeLessThanOrEqual(1);
        const there = pointOnPatch(patch, found.u, found.v);
        expect(Math.abs(distance(there, point) - found.distance)).toBeLessThan(1e-9);
        let best = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 30; i++) {
          for (let j = 0; j <= 30; j++) {
            best = Math.min(best, distance(pointOnPatch(patch, i / 30, j / 30), point));
          }
        }
        // Wild random patches fold over themselves and may hide a second dip; a panel does not.
        expect(found.distance).toBeLessThan(best + 12);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('stands square on the surface at the nearest place inside its edges', () => {
    const point: Vec3 = [40, 90, 10];
    const { u, v } = nearestOnPatch(arch, point);
    const { du, dv } = patchPartials(arch, u, v);
    const r = sub(pointOnPatch(arch, u, v), point);
    expect(u > 0 && u < 1 && v > 0 && v < 1).toBe(true);
    expect(Math.abs(dot(r, du))).toBeLessThan(1e-5);
    expect(Math.abs(dot(r, dv))).toBeLessThan(1e-5);
  });
});
