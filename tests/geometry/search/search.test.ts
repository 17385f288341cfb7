import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type FoundSpot,
  finishSearchInSteps,
  type GridHeard,
  hearGridInSteps,
  joinShares,
  type PlanInput,
  penalty,
  placeSpeaker,
  pointOnPatch,
  prepareSearch,
  SPOT_AIMS,
  searchSpots,
  type Vec3,
} from '../../../src/geometry';
import { carPlan, costsOf, evaluated, noFitter, searched, smallRequest } from './stages';

const WANT = { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 };

const keyOf = ({ panel, u, v, partner }: FoundSpot) =>
  JSON.stringify([panel, u, v, partner.panel, partner.u, partner.v]);

function lastOf<P, T>(steps: Generator<P, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const cabinOf = (plan: PlanInput) => {
  const built = buildCabin(plan);
  if (!built.ok) throw new Error(built.error.message);
  return built.cabin;
};

/** Where the left and the right speaker of a spot on a panel stand, without their stand-off. */
function pointsOf(plan: PlanInput, spot: FoundSpot): [Vec3, Vec3] {
  const panels = new Map(cabinOf(plan).panels.map((panel) => [panel.id, panel]));
  const place = ({ panel, u, v, standoff }: FoundSpot['partner']): Vec3 => {
    const placed = placeSpeaker(
      { id: 'x', role: 'midrange', mount: { panel, u, v, standoff } },
      panels,
      new Map(),
    );
    if (!placed.ok) throw new Error(placed.error.message);
    return placed.placed.position;
  };
  return [place(spot), place(spot.partner)];
}

const far = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('a search against brute force over its own grid', () => {
  const plan = carPlan();
  const request = smallRequest({
    want: WANT,
    require: { fits: false, free: true, maxOffAxisDeg: 70 },
    aim: { kind: 'normal' },
    seats: [
      { id: 'front-left', weight: 1 },
      { id: 'front-right', weight: 1 },
    ],
  });
  const both = ['front-left', 'front-right'];
  const answer = searched(plan, request, noFitter);
  const all = answer.all ?? [];

  const gap = (a: FoundSpot, b: FoundSpot) => far(pointsOf(plan, a)[0], pointsOf(plan, b)[0]);

  test('tries every spot of the grid once and tells all of them', () => {
    expect(answer.tried).toBe(all.length);
    expect(new Set(all.map(keyOf)).size).toBe(all.length);
    expect(all.length).toBeGreaterThan(60);
    const panels = new Set(all.map(({ panel }) => panel));
    expect([...panels].sort()).toEqual(['dash-top-center', 'dash-top-left', 'pillar-left']);
  });

  test('gives exactly the numbers evaluation gives for speakers at that spot', () => {
    for (const spot of [...all, ...answer.answers])
      expect(spot.measures).toEqual(evaluated(plan, 'midrange', spot, both).measures);
  });

  test('calls feasible exactly what meets every demand', () => {
    let some = 0;
    for (const spot of all) {
      const { arrivals } = evaluated(plan, 'midrange', spot, both);
      const meets = arrivals.every(
        ({ line, offAxisDeg }) => line !== 'blocked' && (offAxisDeg ?? 999) <= 70,
      );
      expect(spot.feasible).toBe(meets);
      expect(spot.why.length > 0).toBe(!meets);
      if (meets) some += 1;
    }
    expect(answer.feasible).toBe(some);
    expect(some).toBeGreaterThan(5);
    expect(some).toBeLessThan(all.length);
  });

  test('the front is all feasible spots that no other one beats', () => {
    const feasible = all.filter((spot) => spot.feasible);
    const isBeaten = (spot: FoundSpot) =>
      feasible.some((other) => {
        const [mine, theirs] = [costsOf(spot), costsOf(other)];
        return (
          theirs.every((cost, k) => cost <= (mine[k] as number)) &&
          theirs.some((cost, k) => cost < (mine[k] as number))
        );
      });
    const naive = feasible.filter((spot) => !isBeaten(spot));
    expect(answer.front.map(keyOf).sort()).toEqual(naive.map(keyOf).sort());
    expect(naive.length).toBeGreaterThan(2);
    expect(naive.length).toBeLessThan(feasible.length);
  });

  test('the score is the weighted sum of the penalties of the measures', () => {
    for (const spot of all) {
      const sum = SPOT_AIMS.reduce((s, aim) => s + WANT[aim] * penalty(aim, spot.measures[aim]), 0);
      expect(Math.abs(spot.score - sum)).toBeLessThan(1e-12);
    }
  });

  test('no spot of the grid is better than the best answer, and the answers lie apart', () => {
    const best = Math.min(...all.filter((spot) => spot.feasible).map(({ score }) => score));
    const { answers } = answer;
    const greedy: FoundSpot[] = [];
    for (const spot of all.filter((s) => s.feasible).sort((a, b) => a.score - b.score))
      if (greedy.length < 3 && greedy.every((other) => gap(spot, other) >= 120)) greedy.push(spot);
    expect(answers.length).toBe(greedy.length);
    expect(answers.length).toBeGreaterThan(1);
    expect((answers[0] as FoundSpot).score).toBeLessThanOrEqual(best);
    answers.forEach((a, i) => {
      expect(a.feasible).toBe(true);
      for (const b of answers.slice(0, i)) {
        expect(b.score).toBeLessThanOrEqual(a.score);
        expect(gap(a, b)).toBeGreaterThanOrEqual(120);
      }
    });
  });

  test('refining brings the best answer below the best spot of the grid', () => {
    const best = Math.min(...all.filter((spot) => spot.feasible).map(({ score }) => score));
    expect((answer.answers[0] as FoundSpot).score).toBeLessThan(best - 1e-4);
  });

  test('a finer grid of the same panels hardly beats the refined answer', () => {
    const fine = searched(plan, { ...request, step: 25, all: false, answers: 1 }, noFitter);
    const grid = fine.front[0] as FoundSpot;
    expect((answer.answers[0] as FoundSpot).score).toBeLessThan(grid.score * 1.02);
  });

  test('all numbers survive JSON as they are: none is NaN or infinite', () => {
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });
});

describe('left and right searched independently', () => {
  const plan = carPlan();
  const request = smallRequest({
    mirrored: false,
    panels: ['dash-top-left', 'dash-top-right'],
    step: 130,
    require: { fits: false },
    aim: { kind: 'between', seats: ['front-left', 'front-right'] },
  });
  const answer = searched(plan, request, noFitter);
  const all = answer.all ?? [];

  test('tries every left spot with every right one', () => {
    const lefts = new Set(all.map(({ panel, u, v }) => `${panel} ${u} ${v}`));
    const rights = new Set(all.map(({ partner: { panel, u, v } }) => `${panel} ${u} ${v}`));
    expect(answer.tried).toBe(lefts.size * rights.size);
    expect(all.length).toBe(answer.tried);
  });

  test('gives the numbers of evaluation, and finds a smaller difference than mirrored spots can', () => {
    for (const spot of all.filter((_, n) => n % 7 === 0))
      expect(spot.measures).toEqual(evaluated(plan, 'midrange', spot).measures);
    const mirrored = searched(plan, { ...request, mirrored: true }, noFitter);
    const least = (spots: readonly FoundSpot[]) =>
      Math.min(...spots.filter((s) => s.feasible).map(({ measures }) => measures.difference ?? 0));
    expect(least(all)).toBeLessThan(least(mirrored.all ?? []));
  });
});

describe('what holds for every search', () => {
  const plan = carPlan();
  const bestOf = (change: Parameters<typeof smallRequest>[0], of = plan) =>
    searched(of, smallRequest({ all: false, ...change })).front[0]?.score ?? Infinity;

  test('tightening a constraint never improves the best score', () => {
    let last = bestOf({ aim: { kind: 'normal' } });
    for (const maxOffAxisDeg of [80, 60, 45, 35]) {
      const next = bestOf({ aim: { kind: 'normal' }, require: { fits: false, maxOffAxisDeg } });
      expect(next).toBeGreaterThanOrEqual(last);
      last = next;
    }
    const free = bestOf({ require: { fits: false, free: true } });
    expect(free).toBeGreaterThanOrEqual(bestOf({}));
    expect(bestOf({ require: { fits: true, free: true } })).toBeGreaterThanOrEqual(free);
  });

  test('a mirrored car gives the mirrored answers', () => {
    const here = searched(plan, smallRequest({ answers: 2 }));
    const there = searched(
      carPlan('right'),
      smallRequest({ answers: 2, seats: [{ id: 'front-right', weight: 1 }] }),
    );
    expect(there.tried).toBe(here.tried);
    expect(there.feasible).toBe(here.feasible);
    expect(there.front.length).toBe(here.front.length);
    const close = (a: FoundSpot, b: FoundSpot) => {
      expect(b.panel).toBe(a.panel);
      expect(Math.abs(a.score - b.score)).toBeLessThan(1e-6);
      expect(Math.abs((a.measures.difference ?? 0) - (b.measures.difference ?? 0))).toBeLessThan(
        1e-5,
      );
    };
    here.front.forEach((spot, n) => {
      close(spot, there.front[n] as FoundSpot);
    });
    here.answers.forEach((spot, n) => {
      close(spot, there.answers[n] as FoundSpot);
    });
  });

  test('adding an obstacle never frees a line', () => {
    const request = smallRequest({ require: { fits: false, free: true } });
    const before = searched(plan, request).all ?? [];
    const blocked = searched(
      {
        ...plan,
        obstacles: [
          { id: 'parcel', shape: 'box', center: [500, -250, 800], size: [120, 200, 150] },
        ],
      },
      request,
    ).all;
    let lost = 0;
    before.forEach((spot, n) => {
      const now = blocked?.[n] as FoundSpot;
      if (!spot.feasible) expect(now.feasible).toBe(false);
      else if (!now.feasible) {
        lost += 1;
        expect(now.why.join()).toContain('parcel');
      }
    });
    expect(lost).toBeGreaterThan(0);
  });

  test('the front is by the measures told, whatever the seats and the aims weigh; with like seats the best of all is on it, and it is always the first answer', () => {
    const [weight, want] = [fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 4 })];
    let unlike = 0;
    fc.assert(
      fc.property(weight, weight, want, want, (left, right, offAxisDeg, obstructionDb) => {
        const { front, all, feasible, answers } = searched(
          plan,
          smallRequest({
            mirrored: false,
            panels: ['dash-top-left', 'dash-top-right'],
            step: 140,
            aim: { kind: 'normal' },
            seats: [
              { id: 'front-left', weight: left },
              { id: 'front-right', weight: right },
            ],
            want: { difference: 1, offAxisDeg, obstructionDb },
            answers: 1,
          }),
          noFitter,
        );
        const spots = (all ?? []).filter((spot) => spot.feasible);
        const wanted = [true, offAxisDeg > 0, obstructionDb > 0, false];
        const costs = (spot: FoundSpot) => costsOf(spot).filter((_, k) => wanted[k]);
        const beats = (one: number[], other: number[]) =>
          one.every((x, k) => x <= (other[k] as number)) &&
          one.some((x, k) => x < (other[k] as number));
        const naive = spots.filter(
          (spot) => !spots.some((other) => beats(costs(other), costs(spot))),
        );
        expect(front.map(keyOf).sort()).toEqual(naive.map(keyOf).sort());
        const best = Math.min(...spots.map(({ score }) => score));
        if (left === right) expect(front[0]?.score).toBe(best);
        else if (front[0]?.score !== best) unlike += 1;
        // Refined from the best of the grid, so no worse than it.
        expect(answers[0]?.score).toBeLessThanOrEqual(best);
        expect(front.length).toBeLessThanOrEqual(feasible);
      }),
      { numRuns: 12, seed: 4 },
    );
    expect(unlike).toBeGreaterThan(0);
  });

  test('the penalties of a spot add up to its score', () => {
    const seats = [
      { id: 'front-left', weight: 3 },
      { id: 'front-right', weight: 2 },
    ];
    for (const { penalties, score } of searched(plan, smallRequest({ seats })).all ?? []) {
      const sum = Object.values(penalties).reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - score)).toBeLessThan(1e-12);
    }
  });

  test('weights of one size change nothing, and a heavier seat pulls the answer to itself', () => {
    const seats = (left: number, right: number) => [
      { id: 'front-left', weight: left },
      { id: 'front-right', weight: right },
    ];
    const aim = { kind: 'normal' } as const;
    const one = searched(plan, smallRequest({ aim, seats: seats(1, 1) }));
    expect(searched(plan, smallRequest({ aim, seats: seats(7, 7) }))).toEqual(one);
    const heavy = searched(plan, smallRequest({ aim, seats: seats(10, 1) }));
    const alone = searched(plan, smallRequest({ aim, seats: [{ id: 'front-left', weight: 1 }] }));
    expect(heavy.answers[0]?.score).toBeLessThanOrEqual(one.answers[0]?.score as number);
    expect(heavy.answers[0]?.score).toBeGreaterThanOrEqual(
      (alone.answers[0]?.score as number) - 1e-3,
    );
  });

  test('a keep-clear zone holds even where a fit is not required', () => {
    const target = searched(plan, smallRequest()).answers[0] as FoundSpot;
    const panel = cabinOf(plan).panels.find(({ id }) => id === target.panel);
    if (!panel) throw new Error('no panel');
    const center = pointOnPatch(panel.patch, target.u, target.v);
    const closed = searched(
      {
        ...plan,
        keepClear: [
          { id: 'mine', reason: 'wires', shape: 'box', center, size: [160, 160, 160] as const },
        ],
      },
      smallRequest(),
    );
    const inside = (closed.all ?? []).filter(({ why }) => why.join().includes('mine'));
    expect(inside.length).toBeGreaterThan(0);
    expect(inside.every(({ feasible }) => !feasible)).toBe(true);
    for (const spot of closed.answers)
      expect(far(pointsOf(plan, spot)[0], center)).toBeGreaterThan(40);
  });

  test('shares of the grid put together are the whole grid, however many there are', () => {
    for (const change of [{}, { mirrored: false, step: 160 }]) {
      const prepared = prepareSearch(plan, smallRequest(change));
      if (!prepared.ok) throw new Error(prepared.error.message);
      const { ready } = prepared;
      const whole = lastOf(finishSearchInSteps(ready, lastOf(hearGridInSteps(ready))));
      const shares: GridHeard[] = [0, 1, 2].map((index) =>
        lastOf(hearGridInSteps(ready, { index, of: 3 })),
      );
      expect(lastOf(finishSearchInSteps(ready, joinShares(shares)))).toEqual(whole);
    }
  });

  test('says how far it is, up to the end', () => {
    const prepared = prepareSearch(plan, smallRequest());
    if (!prepared.ok) throw new Error(prepared.error.message);
    const steps = [...hearGridInSteps(prepared.ready)];
    expect(steps.map(({ done }) => done)).toEqual(steps.map((_, n) => n + 1));
    expect(steps.at(-1)?.done).toBe(steps.at(-1)?.total);
  });
});

describe('a request the plan cannot answer', () => {
  const plan = carPlan();
  test.each([
    [{ option: 'z' }, 'option', 'there is no option "z" in this plan'],
    [{ pair: 'z' }, 'pair', 'there is no pair "z" in the option "a"'],
    [{ panels: ['z'] }, 'panels[0]', 'there is no panel "z" in this cabin'],
    [{ panels: ['kick-left', 'screen'] }, 'panels[1]', 'nothing can be mounted on the windscreen'],
    [{ seats: [{ id: 'z', weight: 1 }] }, 'seats[0].id', 'there is no seat "z" in this plan'],
    [{ aim: { kind: 'seat', seat: 'z' } }, 'aim.seat', 'there is no seat "z" in this plan'],
    [{ want: { difference: 0 } }, 'want', 'must hold at least one aim with a weight above 0'],
  ] as const)('%j is refused with its place', (change, path, message) => {
    expect(searchSpots(plan, smallRequest(change))).toEqual({
      ok: false,
      error: { path, message },
    });
  });

  test('more than anyone can wait for is refused with what to do', () => {
    const found = searchSpots(plan, smallRequest({ mirrored: false, step: 3 }));
    expect(found).toMatchObject({ ok: false, error: { path: 'step' } });
  });

  test('a search that finds nothing says so with empty lists', () => {
    const answer = searched(
      plan,
      smallRequest({ require: { maxOffAxisDeg: 0 }, aim: { kind: 'normal' } }),
    );
    expect(answer).toMatchObject({ feasible: 0, front: [], answers: [] });
    expect(answer.all?.every(({ why }) => why.length > 0)).toBe(true);
  });
});
