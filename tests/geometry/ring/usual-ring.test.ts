import { describe, expect, test } from 'vitest';
import {
  LEAST_THICKNESS,
  RIM_RADIUS,
  type RingInput,
  type RingPlace,
  ringSection,
  ringShape,
  type SpeakerRing,
  usualRing,
} from '../../../src/geometry';
import { bodyFor, GENERIC_BODIES } from '../../../src/plan/bodies';

const level = (standoff: number): RingPlace => ({
  position: [0, 0, standoff],
  axis: [0, 0, 1],
  normal: [0, 0, 1],
  standoff,
});

function formOf(input: RingInput, place: RingPlace) {
  const answer = ringShape(input, place);
  if (!answer.ok) throw new Error(answer.message);
  return answer.ring;
}

describe('the usual ring', () => {
  test.each(
    GENERIC_BODIES.flatMap((body) =>
      (['proud', 'sunk'] as const).map((s) => [body.name, body, s] as const),
    ),
  )('%s: can be made as it comes, %#', (_, generic, seat) => {
    const body = bodyFor(generic);
    const input = usualRing(body, { seat });
    expect(input.bore).toBe(body.cutout);
    expect(input.outer).toBeGreaterThan(body.flange);
    expect(input.rimRadius).toBe(3.2);
    expect(RIM_RADIUS).toBe(3.2);
    expect(input.leastThickness).toBe(LEAST_THICKNESS);
    expect(ringShape(input, level(12)).ok).toBe(true);
    // The flange lies on flat land, inside the rim.
    expect(input.outer / 2 - input.rimRadius).toBeGreaterThanOrEqual(body.flange / 2);
  });

  test.each([
    [75, 76, 75.5],
    [75, 84, 79.5],
    [75, 85, 80],
    // Half a millimetre is too coarse here.
    [41, 41.2, 41.1],
    [40.8, 41, 40.9],
  ])(
    'bored %d under a flange of %d its screws stand on %d, between the two',
    (cutout, flange, circle) => {
      for (const seat of ['proud', 'sunk'] as const) {
        const input = usualRing({ flange, cutout, depth: 20 }, { seat });
        expect(input.screws?.circle).toBeCloseTo(circle, 9);
        expect(ringShape(input, level(12)).ok).toBe(true);
      }
    },
  );

  test('what the plan says of it goes before what follows from the body', () => {
    const said: SpeakerRing = {
      outer: 130,
      bore: 77,
      leastThickness: 6,
      rimRadius: 5,
      seat: 'sunk',
      flangeThickness: 5.5,
      screwCircle: 80,
      screws: 6,
    };
    expect(usualRing({ flange: 84, cutout: 75, depth: 42 }, said)).toEqual({
      outer: 130,
      bore: 77,
      leastThickness: 6,
      rimRadius: 5,
      seat: { kind: 'sunk', recess: 85, depth: 5.5 },
      screws: { circle: 80, count: 6 },
    });
  });

  test.each([
    [{ screwCircle: 74 }, 'does not lie on the face under the flange'],
    [{ screwCircle: 90 }, 'does not lie on the face under the flange'],
    [{ screws: 2.5 }, 'there must be 2 to 24 screws'],
  ] as const)('screws that would miss it are refused: %j', (change, words) => {
    const input = usualRing({ flange: 84, cutout: 75, depth: 42 }, change);
    const answer = ringShape(input, level(12));
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.message).toContain(words);
  });
});

describe('the ring’s section as it is drawn', () => {
  const input = usualRing({ flange: 84, cutout: 75, depth: 42 }, { seat: 'sunk', outer: 110 });
  const a = Math.PI / 9;
  const place: RingPlace = {
    position: [0, 0, 40],
    axis: [Math.sin(a), 0, Math.cos(a)],
    normal: [0, 0, 1],
    standoff: 40,
  };
  const form = formOf(input, place);
  const drawn = ringSection(input, form);
  const gap = (p: readonly [number, number], q: readonly [number, number]) =>
    Math.hypot(p[0] - q[0], p[1] - q[1]);

  test('lies on the panel, its front where the speaker stands', () => {
    for (const wall of drawn.walls) {
      expect(Math.min(...wall.map(([, y]) => y))).toBeCloseTo(0, 9);
      expect(wall.filter(([, y]) => Math.abs(y) < 1e-9)).toHaveLength(2);
    }
    expect(drawn.axis[1][0]).toBeCloseTo(0, 9);
    expect(drawn.axis[1][1]).toBeCloseTo(40, 9);
    expect(drawn.axis[0][0]).toBeCloseTo(form.sections.boreShift, 9);
    expect(drawn.axis[0][1]).toBeCloseTo(0, 9);
  });

  test('has the lengths the table tells', () => {
    expect(gap(...drawn.front)).toBeCloseTo(110, 9);
    expect(gap(...drawn.bore)).toBeCloseTo(75, 9);
    expect(gap(...drawn.thin)).toBeCloseTo(form.sections.thinOuter, 9);
    expect(gap(...drawn.thick)).toBeCloseTo(form.sections.thickOuter, 9);
    expect(gap(...drawn.back)).toBeCloseTo(form.sections.backOuter[0], 9);
    expect(gap(...(drawn.screws as [[number, number], [number, number]]))).toBeCloseTo(79.5, 9);
  });

  test('between normal and axis lies the wedge', () => {
    const [[fx, fy], [tx, ty]] = [drawn.axis[1], drawn.axis[2]];
    // The thick side is where the speaker leans away from.
    expect((Math.atan2(-(tx - fx), ty - fy) * 180) / Math.PI).toBeCloseTo(20, 9);
  });
});
