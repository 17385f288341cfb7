import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { direction, distance, type Vec3 } from '../../../src/geometry';
import { areApart, type Body, roundBody } from '../../../src/geometry/fit/body';
import { meets } from '../../../src/geometry/fit/meets';
import { overlap } from '../../../src/geometry/fit/overlap';
import type { Solid } from '../../../src/geometry/fit/solid';
import { besideSpeaker, speakerSolid } from '../../../src/geometry/fit/speaker-solid';

const body = (at: Vec3, axis: Vec3, flange = 40, depth = 60): Body =>
  roundBody(at, axis, { flange, cutout: 0.8 * flange, depth });

/** The least distance between two axes, front to back, by trying places along both. */
function leastTried(one: Body, other: Body): number {
  const N = 60;
  const places = ({ at, axis, depth }: Body) =>
    Array.from({ length: N + 1 }, (_, i): Vec3 => {
      const s = (depth * i) / N;
      return [at[0] - s * axis[0], at[1] - s * axis[1], at[2] - s * axis[2]];
    });
  const theirs = places(other);
  return Math.min(...places(one).flatMap((p) => theirs.map((q) => distance(p, q))));
}

const near = fc.tuple(
  fc.double({ min: -120, max: 120, noNaN: true }),
  fc.double({ min: -120, max: 120, noNaN: true }),
  fc.double({ min: -120, max: 120, noNaN: true }),
);
const unit = near.map((v): Vec3 => direction(v) ?? [0, 0, 1]);

describe('two bodies are apart', () => {
  test('where their axes pass farther apart than both flanges reach: by hand', () => {
    const one = body([0, 0, 0], [1, 0, 0]);
    // Behind each other: the gap is from one's back to the other's front.
    expect(areApart(one, body([-139, 0, 0], [1, 0, 0]))).toBe(false);
    expect(areApart(one, body([-141, 0, 0], [1, 0, 0]))).toBe(true);
    // Crossing at right angles, past the middle of both.
    expect(areApart(one, body([-30, 30, 79], [0, 1, 0]))).toBe(false);
    expect(areApart(one, body([-30, 30, 81], [0, 1, 0]))).toBe(true);
    // Side by side, one of them a point.
    expect(areApart(one, body([-30, 41, 0], [0, 0, 1], 0, 0))).toBe(true);
  });

  test('a cut-out wider than its flange reaches farther than that', () => {
    const wide = (y: number): Body =>
      roundBody([0, y, 0], [1, 0, 0], { flange: 20, cutout: 40, depth: 60 });
    expect(areApart(wide(0), wide(60))).toBe(false);
    expect(areApart(wide(0), wide(79))).toBe(false);
    expect(areApart(wide(0), wide(81))).toBe(true);
    const beside = speakerSolid(wide(60)) as Solid;
    expect(meets(beside, wide(0))).toBe(true);
  });

  test('exactly where places tried along both axes say so, but for how densely they are tried', () => {
    const count = { apart: 0, near: 0 };
    fc.assert(
      fc.property(near, unit, unit, (at, p, q) => {
        const [one, other] = [body([0, 0, 0], p, 30, 90), body(at, q, 20, 50)];
        const least = leastTried(one, other);
        // A step along both axes is 2.4 mm at most, and another 0.2 mm is kept for rounding.
        if (least < 50) expect(areApart(one, other)).toBe(false);
        if (least > 53) expect(areApart(one, other)).toBe(true);
        count[areApart(one, other) ? 'apart' : 'near'] += 1;
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(count.apart).toBeGreaterThan(50);
    expect(count.near).toBeGreaterThan(50);
  });

  test('never where their solids meet', () => {
    let met = 0;
    fc.assert(
      fc.property(near, unit, unit, (at, p, q) => {
        const [one, other] = [body([0, 0, 0], p), body(at, q)];
        const solid = speakerSolid(other);
        if (!solid || !meets(solid, one)) return;
        met += 1;
        expect(areApart(one, other)).toBe(false);
      }),
      { numRuns: 400, seed: 8 },
    );
    expect(met).toBeGreaterThan(50);
  });
});

// Evenly spread: where faces lie in one plane rounding decides.
const part = fc.noBias(fc.integer({ min: -80e6, max: 80e6 })).map((x) => x / 1e6);
const askew = fc.tuple(part, part, part);
const anyway = askew.map((v): Vec3 => direction(v) ?? [0, 0, 1]);

test('a speaker seen from where another stands is met as it is in the car, by as much', () => {
  const count = { met: 0, clear: 0 };
  fc.assert(
    fc.property(askew, anyway, anyway, (at, p, q) => {
      const [one, other] = [
        body([30, -4, 11], p, 35, 60),
        body([30 + at[0], at[1] - 4, 11 + at[2]], q, 25, 70),
      ];
      const solid = speakerSolid(other) as Solid;
      const seen = besideSpeaker(other, one);
      expect(seen.solid && meets(seen.solid, seen.body)).toBe(meets(solid, one));
      if (!meets(solid, one)) {
        count.clear += 1;
        return;
      }
      count.met += 1;
      const [there, here] = [overlap(seen.solid as Solid, seen.body), overlap(solid, one)];
      if (here === null) expect(there).toBeNull();
      else expect(there).toBeCloseTo(here, 6);
    }),
    { numRuns: 400, seed: 9 },
  );
  expect(count.met).toBeGreaterThan(50);
  expect(count.clear).toBeGreaterThan(50);
});
