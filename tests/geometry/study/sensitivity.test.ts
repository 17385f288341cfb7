import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  createEvaluator,
  evaluatePlan,
  type ObstacleInput,
  type PlanInput,
  type SpeakerInput,
  speedOfSound,
  TEMPLATES,
  type Vec3,
} from '../../../src/geometry';
import { bilinearPatch, pointOnPatch } from '../../../src/geometry/cabin/patch';
import {
  type AlongPanel,
  type Change,
  type PairSensitivity,
  SENSITIVITY_STEP,
  type SensitivityProgress,
  sensitivityInSteps,
  sensitivityOf,
} from '../../../src/geometry/study/sensitivity';
import { stepAlong } from '../../../src/geometry/study/step-along';
import { distance } from '../../../src/geometry/vector';
import { demoPlan } from '../../../src/plan/demo';
import { point, real } from '../arbitraries';
import { ASIDE, planOf, stageOf } from './stages';

const STEP = SENSITIVITY_STEP.mm;

/** Two boards across the car at X = 0: u runs outside in, 600 mm, v upward, 800 mm. */
const BOARDS: PlanInput['cabin'] = {
  template: 'none',
  wheelSide: 'left',
  panels: [-1, 1].map((side) => ({
    id: side < 0 ? 'board-left' : 'board-right',
    corners: [
      [0, side * 700, 0],
      [0, side * 100, 0],
      [0, side * 100, 800],
      [0, side * 700, 800],
    ],
  })),
};

function onBoards(u: number, v: number, more: { right?: Partial<SpeakerInput> } = {}) {
  const one = (side: 'left' | 'right'): SpeakerInput => ({
    id: `mid-${side}`,
    role: 'midrange',
    pair: 'mid',
    side,
    mount: { panel: `board-${side}`, u, v, standoff: 10 },
  });
  return [one('left'), { ...one('right'), ...more.right }];
}

/** Where a speaker on a board stands: 10 mm off it, towards the listeners. */
const spot = (side: -1 | 1, u: number, v: number): Vec3 => [10, side * (700 - 600 * u), 800 * v];

function boardPlan(
  u: number,
  v: number,
  head: Vec3 = ASIDE,
  more: Partial<PlanInput> = {},
  right: Partial<SpeakerInput> = {},
): PlanInput {
  return planOf(onBoards(u, v, { right }), {
    cabin: BOARDS,
    seats: [{ id: 'seat', head }],
    alignment: { seat: 'seat', sampleRateHz: 48000 },
    ...more,
  });
}

function only(plan: PlanInput, seat = 'seat', pair = 'mid'): PairSensitivity {
  const found = sensitivityOf(stageOf(plan), seat).find((one) => one.pair === pair);
  if (!found) throw new Error(`the pair ${pair} is not told of`);
  return found;
}

/** The step, both ways, that does more. */
function byHand(change: (step: number) => number): { difference: number; sign: number } {
  const [up, down] = [change(STEP), change(-STEP)];
  return Math.abs(down) > Math.abs(up) + 1e-9
    ? { difference: down, sign: -1 }
    : { difference: up, sign: 1 };
}

function expectChange(found: Change | null, wanted: { difference: number; sign?: number }) {
  expect(found).not.toBeNull();
  expect(Math.abs((found?.difference ?? 9e9) - wanted.difference)).toBeLessThan(1e-6);
  // Which way does more is a toss where both do as much.
  if (wanted.sign && Math.abs(wanted.difference) > 1e-6) expect(found?.sign).toBe(wanted.sign);
}

describe('on flat panels, by the lengths of straight lines', () => {
  const heads = fc.tuple(real(300, 2000), real(-900, 900), real(200, 1500));
  const inside = real(0.05, 0.95);

  test('a tied pair moves as mirror images; one speaker alone moves by itself', () => {
    fc.assert(
      fc.property(heads, inside, inside, (head, u, v) => {
        const found = only(boardPlan(u, v, head));
        const path = (side: -1 | 1, du = 0, dv = 0) =>
          distance(spot(side, u + du / 600, v + dv / 800), head);
        const here = path(-1) - path(1);
        expect(found.moves).toBe('mirrored');
        expectChange(
          found.alongU,
          byHand((mm) => path(-1, mm) - path(1, mm) - here),
        );
        expectChange(
          found.alongV,
          byHand((mm) => path(-1, 0, mm) - path(1, 0, mm) - here),
        );
        for (const [side, of] of [
          ['left', (du: number, dv: number) => path(-1, du, dv) - path(1)],
          ['right', (du: number, dv: number) => path(-1) - path(1, du, dv)],
        ] as const) {
          expectChange(
            found.alone[side].alongU,
            byHand((mm) => of(mm, 0) - here),
          );
          expectChange(
            found.alone[side].alongV,
            byHand((mm) => of(0, mm) - here),
          );
        }
        expect(found.reasons).toBeUndefined();
      }),
      { numRuns: 40 },
    );
  });

  test('the seat travels along X, and time follows length by the speed of sound', () => {
    fc.assert(
      fc.property(heads, inside, inside, ([x, y, z], u, v) => {
        const plan = boardPlan(u, v, [x, y, z]);
        const found = only(plan);
        const at = (mm: number) =>
          distance(spot(-1, u, v), [x + mm, y, z]) - distance(spot(1, u, v), [x + mm, y, z]);
        expectChange(
          found.seatTravel,
          byHand((mm) => at(mm) - at(0)),
        );
        const { speed } = speedOfSound(plan.air);
        for (const change of [found.alongU, found.alongV, found.seatTravel]) {
          const { difference = 9e9, differenceTime = 0 } = change ?? {};
          expect(Math.abs(differenceTime - difference / speed)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('in the middle a pair may move as it likes, but not one speaker alone', () => {
    const found = only(boardPlan(0.4, 0.5, [1500, 0, 900]));
    expect(Math.abs(found.alongU?.difference ?? 9)).toBeLessThan(1e-9);
    expect(Math.abs(found.seatTravel?.difference ?? 9)).toBeLessThan(1e-9);
    expect(Math.abs(found.alone.left.alongU?.difference ?? 0)).toBeGreaterThan(1);
    expect(Math.abs(found.alone.right.alongV?.difference ?? 0)).toBeGreaterThan(1);
  });

  // The gradient of a length is the unit vector along it; both spots stand 460 mm off the middle.
  test('the change of a step is close to ten times the slope', () => {
    const head: Vec3 = [1500, -370, 900];
    const found = only(boardPlan(0.4, 0.5, head));
    const [l, r]: [Vec3, Vec3] = [
      [10, -460, 400],
      [10, 460, 400],
    ];
    const slope = (l[1] - head[1]) / distance(l, head) + (r[1] - head[1]) / distance(r, head);
    // A tenth of a millimetre is the step's own bend: s²/2r.
    const difference = Math.abs(found.alongU?.difference ?? 9e9);
    expect(Math.abs(difference - Math.abs(STEP * slope))).toBeLessThan(0.1);
  });
});

describe('temperature', () => {
  test('changes the time of a difference, the cold more than the warm, and no length', () => {
    const plan = boardPlan(0.4, 0.5);
    const found = only(plan).temperature;
    const path = distance(spot(-1, 0.4, 0.5), ASIDE) - distance(spot(1, 0.4, 0.5), ASIDE);
    const at = (temperatureC: number) => speedOfSound({ ...plan.air, temperatureC }).speed;
    expect(found?.sign).toBe(-1);
    expect(found?.difference).toBe(0);
    expect(Math.abs((found?.differenceTime ?? 9) - (path / at(10) - path / at(20)))).toBeLessThan(
      1e-12,
    );
    // By hand, c ∝ √T: ten degrees less at 20 °C make every time 1.75 % longer.
    const share = (found?.differenceTime ?? 0) / (path / at(20));
    expect(Math.abs(share - (Math.sqrt(293.15 / 283.15) - 1))).toBeLessThan(2e-4);
  });
});

describe('what moves', () => {
  const untied = (plan: PlanInput): PlanInput => ({
    ...plan,
    options: plan.options.map((option) => ({ ...option, untied: ['mid'] })),
  });

  test('of an untied pair the left one alone', () => {
    const found = only(untied(boardPlan(0.4, 0.5)));
    expect(found.moves).toBe('left');
    expect({ alongU: found.alongU, alongV: found.alongV }).toEqual(found.alone.left);
    expect(found.alongU).not.toEqual(only(boardPlan(0.4, 0.5)).alongU);
  });

  test('where the right one stands free, the left one alone, and it says why the right one cannot', () => {
    const found = only(
      boardPlan(0.4, 0.5, ASIDE, {}, { mount: undefined, position: [100, 500, 500] }),
    );
    expect(found.moves).toBe('left');
    expect(found.alone.right).toEqual({ alongU: null, alongV: null });
    expect(found.reasons).toContain('right along u: "mid-right" stands free, on no panel');
    expect(found.seatTravel).not.toBeNull();
  });

  test('nothing along a panel where both stand free', () => {
    const plan = planOf(
      [-1, 1].map((side): SpeakerInput => {
        const name = side < 0 ? 'left' : 'right';
        return {
          id: name,
          role: 'midrange',
          pair: 'mid',
          side: name,
          position: [0, side * 400, 500],
        };
      }),
      { seats: [{ id: 'middle', head: ASIDE }] },
    );
    const found = only(plan, 'middle');
    expect([found.moves, found.alongU, found.alongV]).toEqual([null, null, null]);
    expect(found.reasons?.join()).toMatch(/"left" stands free/);
    expect(found.seatTravel).not.toBeNull();
    expect(found.temperature).not.toBeNull();
  });

  test('on one panel across the car the right one goes the other way', () => {
    const cabin: PlanInput['cabin'] = {
      template: 'none',
      wheelSide: 'left',
      panels: [
        {
          id: 'shelf',
          corners: [
            [0, -600, 600],
            [0, 600, 600],
            [300, 600, 600],
            [300, -600, 600],
          ],
        },
      ],
    };
    const right = { mount: { panel: 'shelf', u: 0.8, v: 0.5, standoff: 10 } };
    const [left, other] = onBoards(0.2, 0.5, { right }) as [SpeakerInput, SpeakerInput];
    const speakers = [{ ...left, mount: { ...right.mount, u: 0.2 } }, other];
    const found = only(
      planOf(speakers, {
        cabin,
        seats: [{ id: 'seat', head: ASIDE }],
        alignment: { sampleRateHz: 48000 },
      }),
    );
    expect(found.moves).toBe('mirrored');
    const at = (side: number, mm: number): number => distance([150, side * (360 - mm), 610], ASIDE);
    expectChange(
      found.alongU,
      byHand((mm) => at(-1, mm) - at(1, mm) - at(-1, 0) + at(1, 0)),
    );
  });
});

describe('edges', () => {
  test('near an edge only the way back is told, and why', () => {
    const found = only(boardPlan(0.99, 0.5));
    expect(found.alongU?.sign).toBe(-1);
    expect(found.alongU?.oneSided).toMatch(/within 10 mm of the edge u = 1/);
    expect(found.alongV?.oneSided).toBeUndefined();
    expect(found.reasons).toBeUndefined();
  });

  test('a strip narrower than both steps lets nothing move across it', () => {
    const strip = (side: number): [Vec3, Vec3, Vec3, Vec3] => [
      [0, side * 500, 0],
      [0, side * 482, 0],
      [0, side * 482, 800],
      [0, side * 500, 800],
    ];
    const panels = [
      { id: 'board-left', corners: strip(-1) },
      { id: 'board-right', corners: strip(1) },
    ];
    const found = only(boardPlan(0.5, 0.5, ASIDE, { cabin: { ...BOARDS, panels } }));
    expect(found.alongU).toBeNull();
    expect(found.alongV).not.toBeNull();
    expect(found.reasons).toContain('both along u: "mid-left" is within 10 mm of the edge u = 1');
  });

  test('a step is measured along the surface, whatever its curve', () => {
    const corner = fc.tuple(real(-900, 900), real(-900, 900), real(-900, 900));
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 9, maxLength: 9 }),
        real(0, 1),
        real(0, 1),
        fc.constantFrom('u' as const, 'v' as const),
        fc.constantFrom(10, -10, 100, -250),
        (control, u, v, along, mm) => {
          const patch = { control, facing: 1 as const };
          const place = (t: number): Vec3 =>
            along === 'u' ? pointOnPatch(patch, t, v) : pointOnPatch(patch, u, t);
          const long = (from: number, to: number): number => {
            let sum = 0;
            for (let k = 0; k < 4000; k++) {
              const [a, b] = [k / 4000, (k + 1) / 4000].map((t) => from + (to - from) * t);
              sum += distance(place(a ?? 0), place(b ?? 0));
            }
            return sum;
          };
          const from = along === 'u' ? u : v;
          const found = stepAlong(patch, { u, v }, along, mm);
          if (!found) {
            expect(long(from, mm > 0 ? 1 : 0)).toBeLessThan(Math.abs(mm) + 0.5);
            return;
          }
          expect(found[along === 'u' ? 'v' : 'u']).toBe(along === 'u' ? v : u);
          expect(Math.sign(found[along] - from)).toBe(Math.sign(mm));
          // Five points cannot follow a curve that turns back on itself to the last tenth.
          expect(Math.abs(long(from, found[along]) - Math.abs(mm))).toBeLessThan(0.5);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('on a flat panel a step is its part of the width', () => {
    const patch = bilinearPatch(
      [
        [0, 0, 0],
        [0, 600, 0],
        [0, 600, 800],
        [0, 0, 800],
      ],
      1,
    );
    const there = stepAlong(patch, { u: 0.5, v: 0.25 }, 'u', 10);
    expect(Math.abs((there?.u ?? 9) - (0.5 + 10 / 600))).toBeLessThan(1e-12);
    const back = stepAlong(patch, { u: 0.5, v: 0.25 }, 'v', -200);
    expect(Math.abs(back?.v ?? 9)).toBeLessThan(1e-12);
    expect(stepAlong(patch, { u: 0.5, v: 0.25 }, 'v', -200.1)).toBeNull();
  });
});

// One for the whole file: what has not moved is not worked out again.
const evaluate = createEvaluator();

/** The change two evaluations of whole plans give. */
function evaluatedChange(plan: PlanInput, changed: PlanInput, seat: string, pair: string): number {
  const [here, there] = [plan, changed].map((one) => {
    const answer = evaluate(one);
    if (!answer.ok) throw new Error(answer.error.message);
    const at = answer.options[0]?.seats.find(({ id }) => id === seat);
    return at?.pairs.find((found) => found.pair === pair)?.difference ?? Number.NaN;
  });
  return (there ?? 9e9) - (here ?? 0);
}

describe('in the way of a body', () => {
  const wall = (y: number): ObstacleInput => ({
    id: 'wall',
    shape: 'box',
    center: [700, y, 500],
    size: [40, 300, 900],
  });

  test('the change is that of the way round, both ways tried', () => {
    const plan = boardPlan(0.4, 0.5, [1500, -370, 600], { obstacles: [wall(-420)] });
    const answer = evaluatePlan(plan);
    expect(answer.ok && answer.options[0]?.seats[0]?.arrivals[0]?.line).toBe('blocked');
    const found = only(plan);
    expect(found.reasons).toBeUndefined();
    const obstacles = [wall(-420)];
    const moved = (mm: number): PlanInput =>
      boardPlan(0.4 + mm / 600, 0.5, [1500, -370, 600], { obstacles });
    expectChange(
      found.alongU,
      byHand((mm) => evaluatedChange(plan, moved(mm), 'seat', 'mid')),
    );
    const free = only(boardPlan(0.4, 0.5, [1500, -370, 600]));
    expect(
      Math.abs((found.alongU?.difference ?? 0) - (free.alongU?.difference ?? 0)),
    ).toBeGreaterThan(1);
  });

  test('a speaker inside a body has no way round, so nothing is told of it but the other one', () => {
    const box: ObstacleInput = {
      id: 'bag',
      shape: 'box',
      center: [0, -460, 400],
      size: [200, 200, 200],
    };
    const found = only(boardPlan(0.4, 0.5, ASIDE, { obstacles: [box] }));
    expect([found.alongU, found.alongV, found.seatTravel, found.temperature]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(found.reasons?.length).toBeGreaterThan(0);
    for (const reason of found.reasons ?? []) expect(reason).toMatch(/^[a-z ]+: \S/);
  });
});

describe('in a car', () => {
  const plan = demoPlan();
  const stage = stageOf(plan);

  test('seat travel is what sliding the seat on its rails changes', () => {
    const all = stage.cabin.seats.map(({ id }) => ({ id }));
    const found = sensitivityOf(stage, 'front-right');
    expect(found.map(({ pair }) => pair)).toEqual(['tweeter', 'midrange', 'midbass']);
    for (const { pair, seatTravel } of found) {
      const slid = (mm: number): PlanInput => ({
        ...plan,
        seats: all.map((seat) => (seat.id === 'front-right' ? { ...seat, slide: mm } : seat)),
      });
      expectChange(
        seatTravel,
        byHand((mm) => evaluatedChange(plan, slid(mm), 'front-right', pair)),
      );
    }
  });

  test('moves along a panel are what whole answers with moved speakers change', () => {
    const panels = new Map(stage.cabin.panels.map((panel) => [panel.id, panel.patch]));
    const first: PlanInput = { ...plan, options: [stage.option] };
    for (const { pair, alongU, alone } of sensitivityOf(stage, 'front-left')) {
      const moved = (mm: number, ...sides: string[]): PlanInput => {
        const speakers = stage.option.speakers.map((speaker): SpeakerInput => {
          const { mount, side = '' } = speaker;
          const patch = mount && panels.get(mount.panel);
          if (!patch || speaker.pair !== pair || !sides.includes(side)) return speaker;
          return { ...speaker, mount: { ...mount, ...stepAlong(patch, mount, 'u', mm) } };
        });
        return { ...plan, options: [{ ...stage.option, speakers }] };
      };
      for (const [change, ...sides] of [
        [alongU, 'left', 'right'],
        [alone.left.alongU, 'left'],
        [alone.right.alongU, 'right'],
      ] as const)
        expectChange(
          change,
          byHand((mm) => evaluatedChange(first, moved(mm, ...sides), 'front-left', pair)),
        );
    }
  });

  test('a bench does not slide, and a seat at the end of its rails slides one way', () => {
    const [bench] = sensitivityOf(stage, 'rear-left');
    expect(bench?.seatTravel).toBeNull();
    expect(bench?.reasons?.join()).toMatch(/seat travel: the seat "rear-left" does not slide/);
    const [, far] = stage.cabin.seats.find(({ id }) => id === 'front-left')?.slideRange ?? [0, 0];
    const back = { ...plan, seats: [{ id: 'front-left', slide: far }] };
    const [rear] = sensitivityOf(stageOf(back), 'front-left');
    expect(rear?.seatTravel).toMatchObject({ sign: -1 });
    expect(rear?.seatTravel?.oneSided).toMatch(/rear of its rails/);
  });

  test.each(TEMPLATES.filter((_, k) => k % 4 === 0).map(({ id }) => id))(
    '%s: the mirrored car has the mirrored sensitivity',
    (template) => {
      const car = (wheelSide: 'left' | 'right'): PlanInput => ({
        ...demoPlan(),
        cabin: { template, wheelSide },
        seats: [{ id: `front-${wheelSide}`, slide: -20 }],
        alignment: { sampleRateHz: 48000 },
      });
      const there = sensitivityOf(stageOf(car('right')), 'front-right');
      const near = (a: Change | null, b: Change | null | undefined) => {
        expect(a === null).toBe(!b);
        if (!a || !b) return;
        expect(Math.abs(a.difference + b.difference)).toBeLessThan(1e-6);
        expect(Math.abs(a.differenceTime + b.differenceTime)).toBeLessThan(1e-8);
        expect(a.sign).toBe(b.sign);
        expect(a.oneSided === undefined).toBe(b.oneSided === undefined);
      };
      const panel = (a: AlongPanel, b: AlongPanel | undefined) => {
        near(a.alongU, b?.alongU);
        near(a.alongV, b?.alongV);
      };
      for (const [k, here] of sensitivityOf(stageOf(car('left')), 'front-left').entries()) {
        panel(here, there[k]);
        panel(here.alone.left, there[k]?.alone.right);
        panel(here.alone.right, there[k]?.alone.left);
        near(here.seatTravel, there[k]?.seatTravel);
        near(here.temperature, there[k]?.temperature);
      }
    },
    30_000,
  );

  test('no change is larger than the step lets both paths change', () => {
    for (const seat of ['front-left', 'rear-right']) {
      for (const { alongU, alongV, alone, seatTravel } of sensitivityOf(stage, seat)) {
        for (const change of [alongU, alongV, seatTravel])
          expect(Math.abs(change?.difference ?? 0)).toBeLessThanOrEqual(2 * STEP + 1);
        for (const { alongU, alongV } of [alone.left, alone.right])
          for (const change of [alongU, alongV])
            expect(Math.abs(change?.difference ?? 0)).toBeLessThanOrEqual(STEP + 1);
      }
    }
  });

  test('step by step it tells how far it is, ends with the same answer and leaves the plan alone', () => {
    const before = structuredClone(stage.plan);
    const steps = sensitivityInSteps(stage, 'front-left');
    const told: SensitivityProgress[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) told.push(step.value);
    expect(told.map(({ done }) => done)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(told.at(-1)?.total).toBe(6);
    expect(step.value).toEqual(sensitivityOf(stage, 'front-left'));
    expect(stage.plan).toEqual(before);
  });
});

describe('where there is little to tell', () => {
  test('of a seat the plan does not have, nothing', () => {
    expect(sensitivityOf(stageOf(boardPlan(0.4, 0.5)), 'boot')).toEqual([]);
  });

  test('of half a pair, what is missing; of no pair, nothing', () => {
    const [left] = onBoards(0.4, 0.5) as [SpeakerInput];
    const half = boardPlan(0.4, 0.5);
    const [found] = sensitivityOf(
      stageOf({ ...half, options: [{ id: 'a', speakers: [left] }] }),
      'seat',
    );
    expect(found?.reasons).toEqual(['the right speaker of the pair "mid" is missing']);
    expect(found?.temperature).toBeNull();
    const { pair: _, side: __, ...alone } = left;
    const plan = { ...half, options: [{ id: 'a', speakers: [alone] }] };
    expect(sensitivityOf(stageOf(plan), 'seat')).toEqual([]);
  });

  test('a listener at the speaker, and points anywhere, give finite numbers or a reason', () => {
    fc.assert(
      fc.property(fc.oneof(point, fc.constant(spot(-1, 0.4, 0.5))), (head) => {
        const found = only(boardPlan(0.4, 0.5, head));
        const changes = [found.alongU, found.alongV, found.seatTravel, found.temperature];
        for (const change of changes) {
          if (!change) expect(found.reasons?.length).toBeGreaterThan(0);
          else
            for (const n of [change.difference, change.differenceTime])
              expect(Number.isFinite(n)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });
});
