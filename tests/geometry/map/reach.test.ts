import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ringShape, usualRing } from '../../../src/geometry';
import { reachOf } from '../../../src/geometry/map/beside';

const body = { flange: 84, cutout: 75, depth: 42 };
const speaker = { id: 'a', role: 'midrange', body } as const;
const part = fc.noBias(fc.integer({ min: 0, max: 1e6 })).map((k) => k / 1e6);

test('a speaker reaches as far as the edge of its back', () => {
  expect(reachOf(speaker)).toBeCloseTo(Math.hypot(42, 37.5), 9);
  expect(reachOf({ ...speaker, ring: { seat: 'sunk', outer: 1 } }, 0)).toBeCloseTo(
    Math.hypot(46, 37.5),
    9,
  );
  expect(reachOf({ id: 'a', role: 'midrange' })).toBe(0);
});

test('no ring, however wedged, reaches farther than is told', () => {
  let made = 0;
  let closest = 0;
  fc.assert(
    fc.property(part, part, part, part, (wide, off, tilt, about) => {
      const ring = { outer: 90 + 90 * wide };
      const standoff = 100 * off;
      const [t, p] = [1.4 * tilt, 2 * Math.PI * about];
      const input = usualRing(body, ring);
      const shape = ringShape(input, {
        position: [0, 0, 0],
        normal: [0, 0, 1],
        axis: [Math.sin(t) * Math.cos(p), Math.sin(t) * Math.sin(p), Math.cos(t)],
        standoff,
      });
      if (!shape.ok) return;
      const far = Math.hypot(shape.ring.sections.thickOuter, input.outer / 2);
      const reach = reachOf({ ...speaker, ring }, standoff);
      expect(far).toBeLessThanOrEqual(reach);
      made += 1;
      closest = Math.max(closest, far / reach);
    }),
    { numRuns: 2000, seed: 5 },
  );
  expect(made).toBeGreaterThan(500);
  // Nor is it told much farther than the farthest.
  expect(closest).toBeGreaterThan(0.95);
});
