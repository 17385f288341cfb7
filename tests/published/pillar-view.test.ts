/**
 * The view past a front pillar after UN Regulation No. 125: eyes 65 apart, each 104 from the point
 * the head turns about, P1 (35, −20, 627) and P2 (63, 47, 627) from the R point, sections 2° up and
 * 5° down. From memory: that the line P1–P2 crosses Y = 0 at 43.36, the regulation's own point
 * between them, is the check that the numbers belong together.
 */
import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type CabinModel,
  PILLAR_VIEW_CAUTION,
  type PillarView,
  pillarViews,
  type SpeakerInput,
  TEMPLATES,
  type Vec3,
} from '../../src/geometry';
import {
  P_POINTS,
  P_TO_EYES,
  seatBackCorrection,
  travelCorrection,
} from '../../src/geometry/fit/eye-points';
import { obstructionAngle, type Plan } from '../../src/geometry/fit/obstruction-angle';
import { placedIn } from '../geometry/fit/boards';

const deg = (rad: number) => (rad * 180) / Math.PI;

describe('the eyes', () => {
  test('104, 104 and 65 make a triangle 98.79 high with a half angle of 18.21°', () => {
    expect(Math.abs(P_TO_EYES - 98.79)).toBeLessThan(0.005);
    expect(Math.abs(deg(Math.asin(32.5 / 104)) - 18.21)).toBeLessThan(0.005);
  });

  test('the line from P1 to P2 crosses the middle of the seat at 43.36', () => {
    const [x1, y1] = P_POINTS.driver;
    const [x2, y2] = P_POINTS.passenger;
    expect(Math.abs(x1 + ((x2 - x1) * -y1) / (y2 - y1) - P_POINTS.middle[0])).toBeLessThan(0.005);
  });

  test('need no correction at 25° and short rails', () => {
    expect(seatBackCorrection(25)).toEqual({ x: 0, z: 0 });
    expect(travelCorrection(108)).toBe(0);
    expect(travelCorrection(240)).toBe(-48);
    // A straighter back brings the eyes forward and up.
    expect(seatBackCorrection(22).x).toBeLessThan(0);
    expect(seatBackCorrection(22).z).toBeGreaterThan(0);
  });
});

/** The construction by turning the head until it is right, and school geometry from there. */
function byTurning(p: Plan, outer: Plan, inner: Plan): number {
  const eyes = (turn: number) => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const middle = [p[0] - 98.79 * c, p[1] + 98.79 * s] as const;
    return {
      left: [middle[0] - 32.5 * s, middle[1] - 32.5 * c] as Plan,
      right: [middle[0] + 32.5 * s, middle[1] + 32.5 * c] as Plan,
    };
  };
  const square = (turn: number) => {
    const { left, right } = eyes(turn);
    return (
      (right[0] - left[0]) * (outer[0] - left[0]) + (right[1] - left[1]) * (outer[1] - left[1])
    );
  };
  let [low, high] = [-1.5, 0.8];
  const sign = Math.sign(square(low));
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (Math.sign(square(middle)) === sign) low = middle;
    else high = middle;
  }
  const { left, right } = eyes(low);
  const along = [outer[0] - left[0], outer[1] - left[1]] as const;
  const to = [inner[0] - right[0], inner[1] - right[1]] as const;
  const cross = along[0] * to[1] - along[1] * to[0];
  return -deg(Math.atan2(cross, along[0] * to[0] + along[1] * to[1]));
}

describe('the angle in plan', () => {
  test('of a post straight ahead, by hand: its width less the eyes’, seen from the eye', () => {
    // Both edges 1000 before P, the outer one 32.5 left of it: the head looks straight ahead.
    const angle = (width: number) =>
      obstructionAngle([0, 0], [[-1000, -32.5]], [[-1000, width - 32.5]])?.angleDeg;
    // atan((165 − 65) / (1000 − 98.79)) = 6.332°.
    expect(Math.abs((angle(165) ?? 0) - 6.332)).toBeLessThan(0.001);
    // A post as wide as the eyes are apart hides nothing from both.
    expect(angle(65)).toBeCloseTo(0, 9);
    expect(angle(40)).toBe(0);
  });

  test.each([
    [
      [700, -385],
      [-20, -690],
      [-30, -585],
    ],
    [
      [800, -400],
      [100, -700],
      [20, -610],
    ],
    [
      [0, 0],
      [-600, -300],
      [-700, -150],
    ],
  ] as [Plan, Plan, Plan][])('agrees with turning the head by trial: P %j', (p, outer, inner) => {
    const found = obstructionAngle(p, [outer], [inner]);
    expect(found).not.toBeNull();
    expect(Math.abs((found?.angleDeg ?? 0) - byTurning(p, outer, inner))).toBeLessThan(0.001);
    const { left, right } = found?.eyes ?? { left: p, right: p };
    for (const eye of [left, right])
      expect(Math.abs(Math.hypot(eye[0] - p[0], eye[1] - p[1]) - 104)).toBeLessThan(1e-9);
    expect(Math.abs(Math.hypot(left[0] - right[0], left[1] - right[1]) - 65)).toBeLessThan(1e-9);
  });
});

const carOf = (
  wheelSide: 'left' | 'right',
  template = 'compact-hatch',
  panels: { id: string; corners: readonly [Vec3, Vec3, Vec3, Vec3] }[] = [],
): CabinModel => {
  const answer = buildCabin({ cabin: { template, wheelSide, panels } });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin;
};
const viewsOf = (cabin: CabinModel, ...speakers: SpeakerInput[]) => {
  const placed = placedIn(cabin, speakers);
  return pillarViews({ cabin, option: { id: 'a', speakers }, placed }) as [PillarView, PillarView];
};
const pod = (side: 'left' | 'right', v: number, flange = 84, standoff = 30): SpeakerInput => ({
  id: `mid-${side}`,
  role: 'midrange',
  side,
  mount: { panel: `pillar-${side}`, u: 0.5, v, standoff },
  body: { flange, cutout: flange - 10, depth: 42 },
});

describe('the pillars of a car', () => {
  test('an upright board for a pillar gives the angle worked out by hand', () => {
    // Upright from sill to roof, so every section is alike: outer edge (100, −700), inner (20, −610).
    const board = {
      id: 'pillar-left',
      corners: [
        [20, -610, 0],
        [100, -700, 0],
        [100, -700, 1400],
        [20, -610, 1400],
      ] as const,
    };
    const cabin = carOf('left', 'compact-hatch', [board]);
    // R (850, −365), 24° (−8.8 forward), rails of 240 (−48), P1 (35, −20).
    const p: Plan = [850 - 8.8 - 48 + 35, -385];
    const [left] = viewsOf(cabin);
    expect(left.beforeDeg).not.toBeNull();
    expect(Math.abs((left.beforeDeg ?? 0) - byTurning(p, [100, -700], [20, -610]))).toBeLessThan(
      0.01,
    );
    expect(left.driver).toBe(true);
  });

  test.each(TEMPLATES.map(({ id }) => id))(
    '%s: both hide something, the one at the wheel more than nothing',
    (id) => {
      const views = viewsOf(carOf('left', id));
      for (const { beforeDeg, afterDeg, addedDeg, reason } of views) {
        expect(reason).toBeUndefined();
        expect(beforeDeg).toBeGreaterThanOrEqual(0);
        expect(beforeDeg).toBeLessThan(15);
        expect(afterDeg).toBe(beforeDeg);
        expect(addedDeg).toBe(0);
      }
    },
  );

  test('a pod at eye height adds to the angle, the more the wider it is; a low one adds nothing', () => {
    const cabin = carOf('left');
    const added = (speaker: SpeakerInput) => viewsOf(cabin, speaker)[0].addedDeg ?? Number.NaN;
    const heights = [0, 0.2, 0.4, 0.6, 0.8, 1].map((v) => added(pod('left', v)));
    expect(Math.max(...heights)).toBeGreaterThan(0.5);
    expect(heights[0]).toBe(0);
    expect(heights.at(-1)).toBe(0);
    const at = [0.2, 0.4, 0.6, 0.8][heights.slice(1, 5).indexOf(Math.max(...heights))] ?? 0.4;
    let last = 0;
    for (const flange of [60, 90, 120, 150]) {
      const now = added(pod('left', at, flange));
      expect(now).toBeGreaterThanOrEqual(last);
      last = now;
    }
    // It stands on one pillar and leaves the other alone.
    expect(viewsOf(cabin, pod('left', at))[1].addedDeg).toBe(0);
  });

  test('a mirrored car gives the same angles on the other side', () => {
    const [left, right] = viewsOf(carOf('left'), pod('left', 0.4), pod('right', 0.4));
    const [there, here] = viewsOf(carOf('right'), pod('left', 0.4), pod('right', 0.4));
    for (const [a, b] of [
      [left, here],
      [right, there],
    ] as const) {
      expect(b.driver).toBe(a.driver);
      expect(Math.abs((a.beforeDeg ?? 0) - (b.beforeDeg ?? 1))).toBeLessThan(1e-9);
      expect(Math.abs((a.afterDeg ?? 0) - (b.afterDeg ?? 1))).toBeLessThan(1e-9);
    }
  });

  test('a speaker without a body counts as nothing and is named', () => {
    const { body: _, ...bare } = pod('left', 0.4);
    const [left] = viewsOf(carOf('left'), bare);
    expect(left).toMatchObject({ speakers: ['mid-left'], unknown: ['mid-left'], addedDeg: 0 });
  });

  test('without a body style there is a reason instead of an angle', () => {
    const answer = buildCabin({ cabin: { template: 'none', wheelSide: 'left' } });
    if (!answer.ok) throw new Error(answer.error.message);
    for (const view of viewsOf(answer.cabin)) {
      expect(view.beforeDeg).toBeNull();
      expect(view.reason).toMatch(/A-pillar/);
    }
  });

  test('it is never called type approval', () => {
    expect(PILLAR_VIEW_CAUTION).toMatch(/not type approval/);
  });
});
