import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  MOST_WEDGE_DEG,
  meshVolume,
  type RingInput,
  type RingPlace,
  ringFrame,
  screwPlaces,
  type Vec3,
  type WedgeRing,
  wedgeRing,
} from '../../../src/geometry';
import { along, cross, distance, dot, length, scale, sub } from '../../../src/geometry/vector';
import { real } from '../arbitraries';

const INPUT: RingInput = {
  outer: 120,
  bore: 92,
  leastThickness: 4,
  rimRadius: 3.2,
  seat: { kind: 'proud' },
};

/** A speaker on a level panel, leaning rearward. */
const leaning = (deg: number, standoff: number): RingPlace => {
  const a = (deg * Math.PI) / 180;
  return {
    position: [0, 0, standoff],
    axis: [Math.sin(a), 0, Math.cos(a)],
    normal: [0, 0, 1],
    standoff,
  };
};

function made(input: RingInput, place: RingPlace): WedgeRing {
  const answer = wedgeRing(input, place);
  if (!answer.ok) throw new Error(answer.message);
  return answer.ring;
}

describe('a mounting ring', () => {
  test('without a wedge is alike all round, its volume a cylinder less its bore and its rim', () => {
    const { sections, wedgeDeg, thickSide, volume } = made(
      { ...INPUT, rimRadius: 0 },
      leaning(0, 10),
    );
    expect(wedgeDeg).toBe(0);
    expect(thickSide).toBeNull();
    for (const at of ['thinOuter', 'thinBore', 'middle', 'thickBore', 'thickOuter'] as const)
      expect(sections[at]).toBeCloseTo(10, 12);
    expect(sections.boreShift).toBe(0);
    expect(volume).toBeCloseTo(Math.PI * (60 ** 2 - 46 ** 2) * 10, 6);
  });

  test('by hand: 20° with 30 mm of stand-off', () => {
    const { sections, thickSide } = made(INPUT, leaning(20, 30));
    const [c, s] = [Math.cos(Math.PI / 9), Math.sin(Math.PI / 9)];
    expect(sections.middle).toBeCloseTo(30 / c, 9);
    expect(sections.thinOuter).toBeCloseTo((30 - 60 * s) / c, 9);
    expect(sections.thickOuter).toBeCloseTo((30 + 60 * s) / c, 9);
    // Across the whole ring it rises by the wedge's own tangent.
    expect((sections.thickOuter - sections.thinOuter) / 120).toBeCloseTo(Math.tan(Math.PI / 9), 12);
    expect(sections.backBore).toEqual([92 / c, 92]);
    expect(sections.boreShift).toBeCloseTo(30 * Math.tan(Math.PI / 9), 9);
    // It leans rearward, so it is thick toward the front.
    expect(thickSide?.[0]).toBeCloseTo(-1, 12);
  });

  test('says how much stand-off its thinnest place wants, and stands with exactly that', () => {
    const answer = wedgeRing(INPUT, leaning(20, 12));
    expect(answer.ok).toBe(false);
    if (answer.ok || answer.standoffNeeded === null) return;
    expect(answer.message).toContain('12.3 mm more stand-off is wanted');
    const { sections } = made(INPUT, leaning(20, answer.standoffNeeded));
    expect(sections.thinOuter).toBeCloseTo(4, 9);
  });

  test('stands with what its sentence tells, and told to the tenth it could not be less', () => {
    const seats: RingInput['seat'][] = [{ kind: 'proud' }, { kind: 'sunk', recess: 108, depth: 5 }];
    for (const seat of seats)
      for (let deg = 1; deg <= 44; deg += 1.3)
        for (const standoff of [0, 1.23, 2.5]) {
          const input = { ...INPUT, seat };
          const answer = wedgeRing(input, leaning(deg, standoff));
          if (answer.ok) continue;
          const [more, told] = [...answer.message.matchAll(/([\d.]+) mm/g)].map(([, mm]) =>
            Number(mm),
          ) as [number, number];
          expect(wedgeRing(input, leaning(deg, told)).ok).toBe(true);
          expect(wedgeRing(input, leaning(deg, standoff + more)).ok).toBe(true);
          expect(wedgeRing(input, leaning(deg, told - 0.1)).ok).toBe(false);
          expect(wedgeRing(input, leaning(deg, standoff + more - 0.1)).ok).toBe(false);
        }
  });

  test('a recess leaves the least thickness under the flange', () => {
    const sunk: RingInput = { ...INPUT, seat: { kind: 'sunk', recess: 108, depth: 5 } };
    const answer = wedgeRing(sunk, leaning(10, 2));
    if (answer.ok || answer.standoffNeeded === null) throw new Error('expected a refusal');
    const place = leaning(10, answer.standoffNeeded);
    const { sections } = made(sunk, place);
    const slope = Math.tan(Math.PI / 18);
    expect(sections.middle - 54 * slope - 5).toBeCloseTo(4, 9);
  });

  test('one that looks far out of its panel is over the limit, and said to be', () => {
    expect(made(INPUT, leaning(MOST_WEDGE_DEG - 0.1, 60)).overLimit).toBe(false);
    expect(made(INPUT, leaning(MOST_WEDGE_DEG + 0.1, 60)).overLimit).toBe(true);
  });

  test.each([
    [{ bore: 120 }, 'no smaller than'],
    [{ rimRadius: 20 }, 'no room on a land 14 mm wide'],
    [{ outer: Number.NaN }, 'outside diameter must be more than 0'],
    [{ seat: { kind: 'sunk', recess: 130, depth: 4 } }, 'between the bore and the outside'],
  ] as const)('numbers that cannot be together are refused: %j', (change, words) => {
    const answer = wedgeRing({ ...INPUT, ...change } as RingInput, leaning(10, 40));
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.message).toContain(words);
  });

  test('a speaker that looks along its panel has no ring', () => {
    expect(wedgeRing(INPUT, leaning(89, 40)).ok).toBe(false);
  });
});

const ring = fc.record({
  outer: real(60, 240),
  share: real(0.5, 0.9),
  least: real(2, 8),
  rim: fc.oneof(fc.constant(0), fc.constant(1)),
  sunk: fc.boolean(),
  deg: real(0, 45),
  spare: real(0, 20),
});

describe('the mesh of a ring', () => {
  /** Stand-off: what is needed and some more. */
  const one = ({
    outer,
    share,
    least,
    rim,
    sunk,
    deg,
    spare,
  }: Record<string, number | boolean>) => {
    const bore = (outer as number) * (share as number);
    const land = ((outer as number) - bore) / 2;
    const input: RingInput = {
      outer: outer as number,
      bore,
      leastThickness: least as number,
      rimRadius: (rim as number) * Math.min(2, land / 3),
      seat: sunk ? { kind: 'sunk', recess: bore + land, depth: 3 } : { kind: 'proud' },
    };
    const asked = wedgeRing(input, leaning(deg as number, 0));
    const standoff = (asked.ok ? 0 : (asked.standoffNeeded as number)) + (spare as number);
    return { input, place: leaning(deg as number, standoff) };
  };

  test('is closed: every edge belongs to two triangles that run along it in opposite ways', () => {
    fc.assert(
      fc.property(ring, (r) => {
        const { input, place } = one(r);
        const { triangles } = made(input, place).mesh;
        const edges = new Map<string, number>();
        for (const [a, b, c] of triangles)
          for (const [i, j] of [
            [a, b],
            [b, c],
            [c, a],
          ]) {
            const key = `${i} ${j}`;
            edges.set(key, (edges.get(key) ?? 0) + 1);
          }
        const open = [...edges].filter(([key, times]) => {
          const [i, j] = key.split(' ');
          return times !== 1 || edges.get(`${j} ${i}`) !== 1;
        });
        expect(open).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  test('has the volume of the closed form, to what its facets leave out', () => {
    fc.assert(
      fc.property(ring, (r) => {
        const { input, place } = one(r);
        const { mesh, volume } = made(input, place);
        const facets = (144 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 144);
        // Every section is turned by the same facets, the rim's own arc is cut by eight.
        expect(Math.abs(meshVolume(mesh) / (volume * facets) - 1)).toBeLessThan(1e-3);
        expect(meshVolume(mesh)).toBeGreaterThan(0);
      }),
      { numRuns: 25 },
    );
  });

  test('has its back in the panel and its front square to the axis, in the car', () => {
    fc.assert(
      fc.property(ring, (r) => {
        const { input, place } = one(r);
        const { mesh } = made(input, place);
        const { x, y, z } = ringFrame(place);
        const inCar = (p: Vec3): Vec3 =>
          along(along(along(place.position, x, p[0]), y, p[1]), z, p[2]);
        const heights = mesh.vertices.map((p) => dot(inCar(p), place.normal));
        // The panel is the plane z = 0 here: nothing reaches below it, and the back lies in it.
        expect(Math.min(...heights)).toBeCloseTo(0, 4);
        expect(heights.filter((h) => Math.abs(h) < 1e-4)).toHaveLength(288);
        expect(Math.max(...mesh.vertices.map(([, , h]) => h))).toBe(0);
      }),
      { numRuns: 25 },
    );
  });

  test('its frame is right-handed, and thick where it says', () => {
    const place = leaning(25, 40);
    const { x, y, z } = ringFrame(place);
    expect(distance(cross(x, y), z)).toBeLessThan(1e-12);
    expect(length(x)).toBeCloseTo(1, 12);
    const { thickSide } = made(INPUT, place);
    // The thick side along the panel is the frame's X laid down on it.
    const laid = sub(x, scale(place.normal, dot(x, place.normal)));
    expect(dot(laid, thickSide as Vec3)).toBeCloseTo(length(laid), 12);
  });
});

test('screws lie evenly on their circle, none on the thin or the thick line', () => {
  const places = screwPlaces({ ...INPUT, screws: { circle: 106, count: 4 } });
  expect(places).toHaveLength(4);
  // Of four, each midway between the two lines: 53 / √2 along both.
  const [near, far] = [-53 * Math.SQRT1_2, 53 * Math.SQRT1_2];
  const byHand = [
    [far, far],
    [near, far],
    [near, near],
    [far, near],
  ] as const;
  for (const [n, [a, b]] of byHand.entries()) {
    expect(places[n]?.[0]).toBeCloseTo(a, 12);
    expect(places[n]?.[1]).toBeCloseTo(b, 12);
  }
  expect(screwPlaces(INPUT)).toEqual([]);
});
