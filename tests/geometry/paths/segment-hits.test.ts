/** Exact meetings of a line with a solid, by hand and against walking along the line. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoxShape,
  type CapsuleShape,
  direction,
  distance,
  dot,
  mix,
  type RingShape,
  sub,
  type Vec3,
} from '../../../src/geometry';
import {
  boundsOf,
  boxAxes,
  segmentBox,
  segmentCapsule,
  segmentRing,
  segmentTriangle,
  turn,
} from '../../../src/geometry/paths/segment-hits';
import * as any from '../arbitraries';

/** How far outside the solid a point is, by definitions independent of the code tested, mm. */
function outside(shape: BoxShape | CapsuleShape | RingShape, p: Vec3): number {
  if (shape.shape === 'box') {
    const axes = boxAxes(shape);
    const m = sub(p, shape.center);
    const over = [0, 1, 2].map(
      (k) => Math.abs(dot(m, axes[k] as Vec3)) - (shape.size[k] as number) / 2,
    );
    return Math.max(...over);
  }
  if (shape.shape === 'capsule') {
    const core = sub(shape.to, shape.from);
    const sq = dot(core, core);
    const t = sq > 0 ? Math.min(1, Math.max(0, dot(sub(p, shape.from), core) / sq)) : 0;
    return distance(p, mix(shape.from, shape.to, t)) - shape.radius;
  }
  const axis = direction(shape.axis) as Vec3;
  const m = sub(p, shape.center);
  const h = dot(m, axis);
  const flat: Vec3 = [m[0] - h * axis[0], m[1] - h * axis[1], m[2] - h * axis[2]];
  return Math.hypot(Math.hypot(...flat) - shape.diameter / 2, h) - shape.thickness / 2;
}

const meet = (shape: BoxShape | CapsuleShape | RingShape, a: Vec3, b: Vec3): number | null =>
  shape.shape === 'box'
    ? segmentBox(a, b, shape)
    : shape.shape === 'capsule'
      ? segmentCapsule(a, b, shape)
      : segmentRing(a, b, shape);

const STEPS = 4000;

describe.each([
  ['a turned box', any.box],
  ['a capsule', any.capsule],
  ['a ring', any.ring],
] as const)('%s', (_, solids) => {
  test('is met where walking along the line in small steps first gets inside it', () => {
    fc.assert(
      fc.property(solids as fc.Arbitrary<BoxShape>, any.point, any.point, (shape, a, b) => {
        const reach = distance(a, b);
        const met = meet(shape, a, b);
        let first: number | null = null;
        for (let i = 0; i <= STEPS && first === null; i++)
          if (outside(shape, mix(a, b, i / STEPS)) <= 0) first = (i / STEPS) * reach;
        // Walking may step over a corner it should have met, but never finds what is not there.
        if (first !== null) {
          expect(met).not.toBeNull();
          expect(met as number).toBeLessThanOrEqual(first + 1e-6);
        }
        if (met !== null) {
          const at = mix(a, b, reach > 0 ? met / reach : 0);
          expect(outside(shape, at)).toBeLessThan(1e-3);
          if (met > 0) expect(Math.abs(outside(shape, at))).toBeLessThan(1e-3);
          if (first !== null && first - met > (2 * reach) / STEPS) {
            // Met earlier than walked into: then it must be a graze thinner than a step.
            const next = mix(a, b, Math.min(1, (met + reach / STEPS) / reach));
            expect(outside(shape, next)).toBeGreaterThan(-1);
          }
        }
      }),
      { numRuns: 300, seed: 4133 },
    );
  });

  test('is met on the way there exactly when it is met on the way back', () => {
    fc.assert(
      fc.property(solids as fc.Arbitrary<BoxShape>, any.point, any.point, (shape, a, b) => {
        expect(meet(shape, a, b) === null).toBe(meet(shape, b, a) === null);
      }),
      { numRuns: 500, seed: 812 },
    );
  });

  test('lies within its bounds', () => {
    fc.assert(
      fc.property(solids as fc.Arbitrary<BoxShape>, any.point, any.point, (shape, a, b) => {
        const met = meet(shape, a, b);
        if (met === null) return;
        const at = mix(a, b, met / Math.max(distance(a, b), 1e-9));
        const [low, high] = boundsOf(shape);
        for (const k of [0, 1, 2] as const) {
          expect(at[k]).toBeGreaterThan(low[k] - 1e-3);
          expect(at[k]).toBeLessThan(high[k] + 1e-3);
        }
      }),
      { numRuns: 300, seed: 99 },
    );
  });
});

describe('by hand', () => {
  const unit: BoxShape = { shape: 'box', center: [0, 0, 0], size: [200, 200, 200] };

  test('a line towards a box meets its near face', () => {
    expect(segmentBox([-500, 0, 0], [500, 0, 0], unit)).toBeCloseTo(400, 9);
  });

  test('a line that ends short of the box, or passes beside it, does not meet it', () => {
    expect(segmentBox([-500, 0, 0], [-101, 0, 0], unit)).toBeNull();
    expect(segmentBox([-500, 101, 0], [500, 101, 0], unit)).toBeNull();
  });

  test('a line that begins inside meets it at once', () => {
    expect(segmentBox([0, 0, 0], [500, 0, 0], unit)).toBe(0);
    expect(
      segmentCapsule([0, 0, 0], [500, 0, 0], {
        shape: 'capsule',
        from: [0, 0, -50],
        to: [0, 0, 50],
        radius: 10,
      }),
    ).toBe(0);
  });

  test('a box turned 45° about Z is met at its edge', () => {
    const met = segmentBox([-500, 0, 0], [500, 0, 0], { ...unit, turnDeg: [0, 0, 45] });
    expect(Math.abs((met ?? 0) - (500 - 100 * Math.SQRT2))).toBeLessThan(1e-9);
  });

  test('turns go about X, then Y, then Z, right-handed', () => {
    const turned = turn([0, 1, 0], [90, 90, 0]);
    // Y to Z about X; Z to X about Y.
    expect(distance(turned, [1, 0, 0])).toBeLessThan(1e-12);
    expect(distance(turn([1, 0, 0], [0, 0, 90]), [0, 1, 0])).toBeLessThan(1e-12);
  });

  test('a capsule is met on its side and on its round end', () => {
    const capsule: CapsuleShape = {
      shape: 'capsule',
      from: [0, -100, 0],
      to: [0, 100, 0],
      radius: 30,
    };
    expect(segmentCapsule([-500, 0, 0], [500, 0, 0], capsule)).toBeCloseTo(470, 9);
    expect(segmentCapsule([0, -500, 0], [0, 500, 0], capsule)).toBeCloseTo(370, 9);
  });

  test('a capsule of no length is a ball', () => {
    const ball: CapsuleShape = { shape: 'capsule', from: [0, 0, 0], to: [0, 0, 0], radius: 30 };
    expect(segmentCapsule([-500, 0, 0], [500, 0, 0], ball)).toBeCloseTo(470, 9);
  });

  test('a line through the middle of a steering wheel is free; through its rim it is not', () => {
    const wheel: RingShape = {
      shape: 'ring',
      center: [0, 0, 0],
      axis: [1, 0, 0],
      diameter: 350,
      thickness: 30,
    };
    expect(segmentRing([-500, 0, 0], [500, 0, 0], wheel)).toBeNull();
    expect(segmentRing([-500, 175, 0], [500, 175, 0], wheel)).toBeCloseTo(485, 4);
    expect(segmentRing([-500, 0, 191], [500, 0, 191], wheel)).toBeNull();
  });

  test('a ring whose axis has no direction is in nobody’s way', () => {
    const odd: RingShape = {
      shape: 'ring',
      center: [0, 0, 0],
      axis: [0, 0, 0],
      diameter: 350,
      thickness: 30,
    };
    expect(segmentRing([-500, 175, 0], [500, 175, 0], odd)).toBeNull();
  });

  test('a triangle is met inside its edges and not beyond them', () => {
    const [p, q, r]: [Vec3, Vec3, Vec3] = [
      [0, -100, -100],
      [0, 100, -100],
      [0, 0, 100],
    ];
    expect(segmentTriangle([-50, 0, 0], [50, 0, 0], p, q, r)).toBeCloseTo(50, 9);
    expect(segmentTriangle([-50, 80, 50], [50, 80, 50], p, q, r)).toBeNull();
    expect(segmentTriangle([-50, 0, 0], [-1, 0, 0], p, q, r)).toBeNull();
  });
});
