/** A place by tape readings: worked examples, a simulated surveyor, blunders, too few. */
import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type DistanceReading,
  distance,
  nextReadings,
  type PositionFix,
  positionFix,
  type Vec3,
} from '../../../src/geometry';
import { sphereHolding } from '../../../src/geometry/survey/sphere-holding';
import { normalFrom, seeded } from '../measure/synthetic';

const reading = (id: string, anchor: Vec3, read: number, sd = 3): DistanceReading => ({
  id,
  anchor,
  distance: read,
  sd,
});

/** Three anchors on the floor and one above; the place is (400, 300, 500). */
const FLOOR = [
  reading('heel', [0, 0, 0], 707.10678, 2),
  reading('sill', [1000, 0, 0], 836.66003, 2),
  reading('rail', [300, 800, 0], 714.14284, 2),
];
const ROOF = reading('roof', [500, 400, 900], 424.26407, 2);

function fixed(readings: readonly DistanceReading[], near: Vec3 = [380, 320, 450]): PositionFix {
  const answer = positionFix(readings, near);
  if (!answer.ok) throw new Error(answer.why);
  return answer.fix;
}

const near = (a: Vec3 | null, b: Vec3, mm: number) => {
  if (!a) throw new Error('no place');
  expect(distance(a, b)).toBeLessThan(mm);
};

describe('a place by readings', () => {
  test('from three points is one of two mirror images, the nearer to the plan, and the other is told', () => {
    const fix = fixed(FLOOR);
    near(fix.position, [400, 300, 500], 1e-3);
    near(fix.mirror, [400, 300, -500], 1e-3);
    near(fixed(FLOOR, [400, 300, -2]).position, [400, 300, -500], 1e-3);
  });

  test('a fourth point off their plane settles it, with the standard deviations worked out by hand', () => {
    const fix = fixed([...FLOOR, ROOF]);
    near(fix.position, [400, 300, 500], 1e-3);
    expect(fix.mirror).toBeNull();
    // (JᵀJ)⁻¹ · 4 mm² of these four directions.
    for (const [k, sd] of [2.155, 2.212, 1.394].entries())
      expect(Math.abs((fix.sd[k] as number) - sd)).toBeLessThan(1e-3);
    expect(fix).toMatchObject({ blunders: [], suspects: [] });
  });

  test('moves and turns with its anchors', () => {
    const turn = ([x, y, z]: Vec3): Vec3 => [z + 100, x - 40, y + 7];
    const fix = fixed(
      [...FLOOR, ROOF].map((one) => ({ ...one, anchor: turn(one.anchor) })),
      turn([380, 320, 450]),
    );
    near(fix.position, turn([400, 300, 500]), 1e-3);
  });

  test('taken a thousand times with ±3 mm lies within the error told in 95 of 100', () => {
    const normal = normalFrom(seeded(41));
    const anchors: Vec3[] = [
      [0, 0, 0],
      [1000, 0, 0],
      [300, 800, 0],
      [500, 400, 900],
      [-200, 700, 600],
    ];
    const place: Vec3 = [400, 300, 500];
    let inside = 0;
    let told = 0;
    for (let run = 0; run < 1000; run++) {
      const fix = fixed(
        anchors.map((anchor, i) => reading(`${i}`, anchor, distance(anchor, place) + 3 * normal())),
      );
      told = fix.within95;
      if (distance(fix.position, place) <= fix.within95) inside++;
    }
    // Binomial, 1,000 of 0.95: sd 6.9; and one in a thousand is thrown out by chance.
    expect(inside).toBeGreaterThan(928);
    expect(inside).toBeLessThan(972);
    expect(told).toBeLessThan(12);
  });

  test('of fewer than three, along a line, or in line with the place is refused with its reason', () => {
    expect(positionFix(FLOOR.slice(0, 2), [0, 0, 0])).toEqual({ ok: false, why: 'few' });
    const line = [0, 300, 900].map((x) => reading(`${x}`, [x, 0, 0], 500));
    expect(positionFix(line, [400, 300, 100])).toEqual({ ok: false, why: 'line' });
    const flat: Vec3 = [400, 300, 0];
    const inPlane = FLOOR.map((one) => ({ ...one, distance: distance(one.anchor, flat) }));
    expect(positionFix(inPlane, flat)).toEqual({ ok: false, why: 'weak' });
    expect(() => positionFix([reading('x', [0, 0, 0], 0)], [0, 0, 0])).toThrow(/"x", got 0 and 3/);
  });
});

describe('readings that contradict one another (fault 30)', () => {
  const place: Vec3 = [400, 300, 500];
  const anchors: [string, Vec3][] = [
    ['heel', [0, 0, 0]],
    ['sill', [1000, 0, 0]],
    ['rail', [300, 800, 0]],
    ['roof', [500, 400, 900]],
    ['wheel', [-200, 700, 600]],
    ['pillar', [-300, -200, 700]],
    ['belt', [700, -300, 400]],
    ['shelf', [1100, 900, 650]],
  ];
  const all = (wrong: Readonly<Record<string, number>>, count = 6) => {
    const normal = normalFrom(seeded(7));
    return anchors
      .slice(0, count)
      .map(([id, anchor]) =>
        reading(id, anchor, distance(anchor, place) + 2 * normal() + (wrong[id] ?? 0)),
      );
  };

  test.each(['heel', 'rail', 'roof', 'pillar'])(
    'the blunder at the %s is named with how far off it is',
    (id) => {
      for (const off of [-60, 45, 100, 1000].filter((one) => id !== 'roof' || one > -400)) {
        const fix = fixed(all({ [id]: off }));
        expect(fix.blunders.map((one) => one.id)).toEqual([id]);
        expect(Math.abs((fix.blunders[0]?.off ?? 0) - off)).toBeLessThan(15);
        near(fix.position, place, 12);
        expect(fix.suspects).toEqual([]);
      }
    },
  );

  test('two of eight are both named, the farther off first', () => {
    const fix = fixed(all({ sill: 80, wheel: -200 }, 8));
    expect(fix.blunders.map((one) => one.id)).toEqual(['wheel', 'sill']);
    near(fix.position, place, 12);
  });

  test('of four it cannot be told which is wrong, so none is left out', () => {
    const fix = fixed(all({ rail: 250 }, 4));
    expect(fix.blunders).toEqual([]);
    expect(fix.suspects).toHaveLength(4);
  });

  test('of five two wrong ones cannot be told, so none is named alone', () => {
    const fix = fixed(all({ rail: 90, wheel: -120 }, 5));
    expect(fix.blunders).toEqual([]);
    expect(fix.suspects.length).toBeGreaterThan(1);
  });

  test('honest readings name nobody', () => {
    expect(fixed(all({}))).toMatchObject({ blunders: [], suspects: [] });
  });
});

describe('which to take next', () => {
  const answer = buildCabin({ cabin: { template: 'estate', wheelSide: 'left' } });
  if (!answer.ok) throw new Error(answer.error.message);
  const { references, seats } = answer.cabin;
  const head = seats[0]?.head as Vec3;

  test('three points fix a head that has none, better than most other three', () => {
    const chosen = nextReadings(head, [], references, 3, { sd: 3 });
    expect(chosen).toHaveLength(3);
    const error = (points: readonly { point: Vec3 }[]) => {
      const fix = positionFix(
        points.map(({ point }, i) => reading(`${i}`, point, distance(point, head))),
        head,
      );
      return fix.ok ? fix.fix.within95 : Number.POSITIVE_INFINITY;
    };
    const reachable = references.filter(({ point }) => distance(point, head) > 120);
    const random = seeded(3);
    const any = () => reachable[Math.floor(random() * reachable.length)] as { point: Vec3 };
    const others = Array.from({ length: 200 }, () => error([any(), any(), any()]));
    const better = others.filter((one) => one < error(chosen)).length;
    expect(better / others.length).toBeLessThan(0.1);
  });

  test('a mirror image is told apart by the point whose distances differ most', () => {
    const fix = fixed(FLOOR);
    const [best] = nextReadings(
      fix.position,
      FLOOR,
      [
        { id: 'flat', name: 'flat', point: [900, 900, 0] },
        { id: 'low', name: 'low', point: [500, 400, 150] },
        { id: 'high', name: 'high', point: [500, 400, 900] },
      ],
      1,
      { sd: 3, mirror: fix.mirror },
    );
    expect(best?.id).toBe('high');
  });

  test('points already taken are not asked for again', () => {
    const all = nextReadings(head, [], references, 99, { sd: 3 });
    const [first] = all;
    if (!first) throw new Error('no points');
    const rest = nextReadings(head, [{ anchor: first.point, sd: 3 }], references, 99, { sd: 3 });
    expect(rest.map(({ id }) => id)).not.toContain(first.id);
    expect(rest).toHaveLength(all.length - 1);
  });
});

test('spheres hold what they say: equal deviations by χ² of three, a line by the normal', () => {
  // Abramowitz and Stegun, table 26.8: χ² of 3 at 95 % is 7.81473; two-sided normal 1.95996.
  expect(Math.abs(sphereHolding(0.95, [2, 2, 2]) - 2 * Math.sqrt(7.81473))).toBeLessThan(0.003);
  expect(Math.abs(sphereHolding(0.95, [5, 1e-6, 1e-6]) - 5 * 1.95996)).toBeLessThan(0.03);
  expect(Math.abs(sphereHolding(0.95, [3, 3, 1e-6]) - 3 * Math.sqrt(5.99146))).toBeLessThan(0.01);
});
