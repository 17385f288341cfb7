import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type DimensionRank,
  evaluatePlan,
  type PlanInput,
  pairsOf,
  type RankProgress,
  rankDimensions,
  rankDimensionsInSteps,
  TAPE_UNCERTAINTY,
  TEMPLATE_SPREAD,
  TEMPLATES,
} from '../../../src/geometry';
import { buildSurfaces } from '../../../src/geometry/cabin/build-surfaces';
import { demoPlan } from '../../../src/plan/demo';

function ranksOf(plan: PlanInput, option?: string): DimensionRank[] {
  const answer = rankDimensions(plan, { option });
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.ranks;
}

const rankOf = (ranks: DimensionRank[], id: string): DimensionRank => {
  const rank = ranks.find(({ dimension }) => dimension === id);
  if (!rank) throw new Error(`${id} is not ranked`);
  return rank;
};

const withDimension = (plan: PlanInput, id: string, value: number): PlanInput => ({
  ...plan,
  cabin: { ...plan.cabin, dimensions: { ...plan.cabin.dimensions, [id]: value } },
});

/** Largest change of a straight difference at the front seats, by evaluating twice over. */
function changeByEvaluating(plan: PlanInput, id: string, value: number, doubt: number): number {
  const differences = (one: PlanInput) => {
    const answer = evaluatePlan(one);
    if (!answer.ok) throw new Error(answer.error.message);
    return (answer.options[0]?.seats ?? [])
      .filter((seat) => seat.id.startsWith('front-'))
      .flatMap(({ arrivals }) => {
        const direct = (id: string) => arrivals.find(({ speaker }) => speaker === id)?.direct ?? 0;
        return pairsOf(one.options[0]?.speakers ?? []).map(
          ({ left, right }) => direct(left ?? '') - direct(right ?? ''),
        );
      });
  };
  const here = differences(plan);
  const changes = [-doubt, doubt].flatMap((by) =>
    differences(withDimension(plan, id, value + by)).map((there, i) =>
      Math.abs(there - (here[i] ?? 0)),
    ),
  );
  return Math.max(...changes);
}

describe('which dimensions are worth measuring', () => {
  const plan = demoPlan();
  const ranks = ranksOf(plan);

  test('all the cabin’s dimensions are ranked, most telling first', () => {
    expect(ranks.length).toBeGreaterThan(40);
    expect(new Set(ranks.map(({ dimension }) => dimension)).size).toBe(ranks.length);
    const effects = ranks.map((rank) =>
      Math.max(rank.path?.change ?? 0, rank.difference?.change ?? 0),
    );
    expect(effects).toEqual([...effects].sort((a, b) => b - a));
    expect(effects[0]).toBeGreaterThan(5);
  });

  test.each(['seatOffset', 'seatReach', 'cowlWidth', 'hipRoom'])(
    'the change reported for %s is the one two evaluations give',
    (id) => {
      const answer = evaluatePlan(plan);
      const value = answer.ok ? answer.cabin.dimensions[id] : undefined;
      const change = changeByEvaluating(plan, id, value ?? Number.NaN, TEMPLATE_SPREAD.mm);
      expect(Math.abs((rankOf(ranks, id).difference?.change ?? -1) - change)).toBeLessThan(1e-9);
    },
  );

  test('no path moves farther than its speaker and the head together', () => {
    // Moving the front seats sideways moves their heads by the doubt and nothing else.
    const change = rankOf(ranks, 'seatOffset').path?.change ?? 0;
    expect(change).toBeGreaterThan(1);
    expect(change).toBeLessThanOrEqual(TEMPLATE_SPREAD.mm + 1e-9);
  });

  test('a measured dimension is doubted as a tape reading, so it matters less', () => {
    const answer = evaluatePlan(plan);
    const reach = answer.ok ? (answer.cabin.dimensions.seatReach ?? 0) : 0;
    const measured = rankOf(ranksOf(withDimension(plan, 'seatReach', reach)), 'seatReach');
    const guessed = rankOf(ranks, 'seatReach');
    expect(measured).toMatchObject({ measured: true, uncertainty: TAPE_UNCERTAINTY.mm });
    expect(guessed).toMatchObject({ measured: false, uncertainty: TEMPLATE_SPREAD.mm });
    expect(measured.path?.change ?? 9e9).toBeLessThan(guessed.path?.change ?? 0);
  });

  test('angles are doubted in degrees', () => {
    expect(rankOf(ranks, 'torsoAngle').uncertainty).toBe(TEMPLATE_SPREAD.deg);
  });

  test('what lies behind the front seats moves next to nothing at them', () => {
    expect(rankOf(ranks, 'secondRowDistance').difference?.change).toBeLessThan(0.1);
  });

  test('the option asked for is the one ranked', () => {
    expect(ranksOf(plan, 'b')).not.toEqual(ranks);
    expect(ranksOf(plan, 'gone')).toEqual(ranks);
  });

  test('the plan is left as it was', () => {
    const before = structuredClone(plan);
    rankDimensions(plan);
    expect(plan).toEqual(before);
  });

  test('step by step it tells how far it is and ends with the same answer', () => {
    const steps = rankDimensionsInSteps(plan);
    const told: RankProgress[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) told.push(step.value);
    expect(step.value).toEqual({ ok: true, ranks });
    expect(told.at(-1)).toEqual({ done: ranks.length, total: ranks.length });
  });
});

describe('the surfaces tried', () => {
  test.each(TEMPLATES.map(({ id }) => id))('%s: are those of the whole cabin', (template) => {
    for (const wheelSide of ['left', 'right'] as const) {
      const cabin: PlanInput['cabin'] = {
        template,
        wheelSide,
        dimensions: { seatReach: 812 },
        panels: [
          {
            id: 'screen',
            corners: [
              [0, -500, 700],
              [0, 500, 700],
              [500, 500, 1000],
              [500, -500, 1000],
            ],
          },
          {
            id: 'shelf',
            corners: [
              [900, -500, 200],
              [900, 500, 200],
              [999, 500, 200],
              [999, -500, 200],
            ],
          },
        ],
      };
      const whole = buildCabin({ cabin, seats: [], obstacles: [], keepClear: [] });
      const surfaces = buildSurfaces({ cabin, seats: [] });
      if (!whole.ok || !surfaces.ok) throw new Error('refused');
      expect([...surfaces.panels.values()]).toEqual(whole.cabin.panels);
      expect(surfaces.seats).toEqual(whole.cabin.seats);
    }
  });
});

describe('where there is nothing to rank', () => {
  test('no cabin, no dimensions', () => {
    expect(
      rankDimensions({
        ...demoPlan(),
        cabin: { template: 'none', wheelSide: 'left' },
        seats: [{ id: 'front-left', head: [0, 0, 0] }],
        options: [{ id: 'a', speakers: [{ id: 's', role: 'tweeter', position: [-1000, 0, 0] }] }],
      }),
    ).toEqual({ ok: true, ranks: [] });
  });

  test('no option, no ranks; no speakers, no changes', () => {
    expect(rankDimensions({ ...demoPlan(), options: [] })).toEqual({ ok: true, ranks: [] });
    const ranks = ranksOf({ ...demoPlan(), options: [{ id: 'a', speakers: [] }] });
    for (const { path, difference } of ranks) expect([path, difference]).toEqual([null, null]);
  });

  test('a plan the engine refuses is refused here with the same words', () => {
    const plan = { ...demoPlan(), cabin: { template: 'tractor', wheelSide: 'left' as const } };
    const direct = evaluatePlan(plan);
    expect(rankDimensions(plan)).toEqual(direct.ok ? null : { ok: false, error: direct.error });
  });
});
