import { describe, expect, it } from 'vitest';
import {
  type KeepClearZone,
  type PlacedSpeaker,
  type Shape,
  type Vec3,
  zonesAtSpot,
} from '../../../src/geometry';
import { isInside, solidOf } from '../../../src/geometry/fit/solid';

const insideShape = (shape: Shape, point: Vec3): boolean => {
  const solid = solidOf(shape);
  return solid !== null && isInside(solid, point);
};

const cube: Shape = {
  shape: 'mesh',
  vertices: [0, 1, 2, 3, 4, 5, 6, 7].map(
    (n): Vec3 => [n & 1 ? 50 : -50, n & 2 ? 50 : -50, n & 4 ? 50 : -50],
  ),
  triangles: [
    [0, 1, 3],
    [0, 3, 2],
    [4, 7, 5],
    [4, 6, 7],
    [0, 5, 1],
    [0, 4, 5],
    [2, 3, 7],
    [2, 7, 6],
    [0, 2, 6],
    [0, 6, 4],
    [1, 5, 7],
    [1, 7, 3],
  ],
};

describe('inside a keep-clear zone', () => {
  it('is told for a box that is turned about all three axes', () => {
    // A thin plate turned a quarter about Z: long along Y now.
    const plate: Shape = {
      shape: 'box',
      center: [100, 0, 0],
      size: [200, 10, 10],
      turnDeg: [0, 0, 90],
    };
    expect(insideShape(plate, [100, 90, 0])).toBe(true);
    expect(insideShape(plate, [190, 0, 0])).toBe(false);
    const turned: Shape = { ...plate, turnDeg: [30, -40, 75] };
    // The middle of the plate's long end, worked out by hand from the three turns.
    const end = [0.1983, 0.7399, 0.6428].map((k, i) => k * 98 + (i === 0 ? 100 : 0));
    expect(insideShape(turned, end as unknown as Vec3)).toBe(true);
    expect(insideShape(turned, [198, 0, 0])).toBe(false);
  });

  it('is told for a capsule up to its rounded ends', () => {
    const capsule: Shape = { shape: 'capsule', from: [0, 0, 0], to: [100, 0, 0], radius: 20 };
    expect(insideShape(capsule, [119, 0, 0])).toBe(true);
    expect(insideShape(capsule, [119, 10, 0])).toBe(false);
    expect(insideShape(capsule, [50, 0, 19.9])).toBe(true);
  });

  it('is told for the tube of a ring, not for the hole in it', () => {
    const ring: Shape = {
      shape: 'ring',
      center: [0, 0, 0],
      axis: [0, 0, 2],
      diameter: 340,
      thickness: 32,
    };
    expect(insideShape(ring, [170, 0, 10])).toBe(true);
    expect(insideShape(ring, [0, 0, 0])).toBe(false);
    expect(insideShape(ring, [0, 190, 0])).toBe(false);
  });

  it('is told for a closed mesh just as for the box it outlines', () => {
    const box: Shape = { shape: 'box', center: [0, 0, 0], size: [100, 100, 100] };
    for (let i = 0; i < 200; i++) {
      const point: Vec3 = [((i * 37) % 140) - 70, ((i * 53) % 140) - 70, ((i * 71) % 140) - 70];
      if (point.some((c) => Math.abs(Math.abs(c) - 50) < 1)) continue;
      expect(insideShape(cube, point), String(point)).toBe(insideShape(box, point));
    }
  });
});

describe('a speaker at its spot', () => {
  const zone: KeepClearZone = {
    id: 'knee-airbag-left',
    name: 'left knee airbag',
    reason: 'airbag',
    shape: { shape: 'box', center: [0, 0, -60], size: [100, 100, 40] },
    given: false,
  };
  const placed: PlacedSpeaker = {
    speaker: 'midrange-left',
    position: [0, 0, 0],
    axis: [0, 0, 1],
    normal: [0, 0, 1],
  };

  it('reaches into a zone behind its panel when its body is deep enough', () => {
    const deep = { flange: 80, cutout: 70, depth: 50 };
    expect(zonesAtSpot([zone], placed, deep)).toEqual([zone]);
    expect(zonesAtSpot([zone], placed, { ...deep, depth: 30 })).toEqual([]);
  });

  it('is tried by its point alone while its body is not known', () => {
    expect(zonesAtSpot([zone], placed, undefined)).toEqual([]);
    expect(zonesAtSpot([zone], { ...placed, position: [0, 0, -60] }, undefined)).toEqual([zone]);
  });

  it('reaches into a zone beside it by its flange', () => {
    const beside: KeepClearZone = {
      ...zone,
      shape: { shape: 'box', center: [60, 0, 0], size: [50, 50, 10] },
    };
    expect(zonesAtSpot([beside], placed, { flange: 80, cutout: 60, depth: 20 })).toEqual([beside]);
    expect(zonesAtSpot([beside], placed, { flange: 60, cutout: 55, depth: 20 })).toEqual([]);
  });
});
