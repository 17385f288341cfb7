import { describe, expect, test } from 'vitest';
import {
  evaluatePlan,
  type FoundStage,
  fitOf,
  type MakeFitter,
  type PlanInput,
  type StageRequest,
  searchStage,
} from '../../../src/geometry';
import { stagesOf } from '../compare/boards';
import { carPlan, noFitter, searched, smallRequest, taken } from './stages';

const plan = carPlan();
const request = (change: Partial<StageRequest> = {}): StageRequest => ({
  option: 'a',
  pairs: ['midrange', 'tweeter'].map((pair) => ({
    pair,
    panels: ['dash-top-left', 'pillar-left', 'door-upper-left'],
    step: 120,
    require: { fits: false },
  })),
  seats: [{ id: 'front-left', weight: 1 }],
  answers: 2,
  apart: 100,
  ...change,
});

/** @param makeFitter `null`: the engine's own */
function stageOf(asked: StageRequest, makeFitter: MakeFitter | null = noFitter) {
  const found = searchStage(plan, asked, makeFitter ?? undefined);
  if (!found.ok) throw new Error(`${found.error.path}: ${found.error.message}`);
  return found.answer;
}

function put(of: PlanInput, { spots }: FoundStage): PlanInput {
  return spots.reduce((so, spot) => taken(so, spot.pair, spot), of);
}

/** Speakers of the plan that stand in each other's place, in words. */
function metIn(of: PlanInput): string[] {
  const [stage] = stagesOf(of);
  if (!stage) throw new Error('no answer');
  const subject = { ...stage, placed: stage.result.placed };
  return stage.option.speakers.flatMap(({ id }) =>
    fitOf(subject, id)
      .filter(({ kind }) => kind === 'speaker')
      .map(({ sentence }) => `${id}: ${sentence}`),
  );
}

describe('several pairs searched together', () => {
  test('no combination of the pairs’ own grids is better', () => {
    const answer = stageOf(request());
    const [mids, highs] = ['midrange', 'tweeter'].map((pair) =>
      (
        searched(plan, { ...smallRequest(), ...request().pairs[0], pair, all: true }, noFitter)
          .all ?? []
      ).filter((spot) => spot.feasible),
    );
    const seatPaths = (pair: string, spot: Parameters<typeof taken>[2]) => {
      const evaluated = evaluatePlan(taken(plan, pair, spot));
      if (!evaluated.ok) throw new Error('no answer');
      const seat = evaluated.options[0]?.seats.find(({ id }) => id === 'front-left');
      return (['left', 'right'] as const).map(
        (side) => seat?.arrivals.find(({ speaker }) => speaker === `${pair}-${side}`)?.path ?? 0,
      ) as [number, number];
    };
    const known = (pair: string, spots: typeof mids) =>
      (spots ?? []).map(({ score, ...spot }) => ({
        score,
        paths: seatPaths(pair, { ...spot, score }),
      }));
    const [a, b] = [known('midrange', mids), known('tweeter', highs)];
    let best = Infinity;
    for (const mid of a)
      for (const high of b) {
        const spread = Math.max(
          Math.abs(mid.paths[0] - high.paths[0]),
          Math.abs(mid.paths[1] - high.paths[1]),
        );
        best = Math.min(best, mid.score + high.score + (0.5 * spread) / 100);
      }
    expect(answer.tried).toBe(a.length * b.length);
    expect(answer.complete).toBe(true);
    expect(answer.answers[0]?.score).toBeLessThanOrEqual(best + 1e-9);
    expect(answer.answers[0]?.score).toBeGreaterThan(best * 0.7);
  });

  test('tells the path spread that evaluation gives', () => {
    for (const stage of stageOf(request()).answers) {
      const evaluated = evaluatePlan(put(plan, stage));
      if (!evaluated.ok) throw new Error('no answer');
      const seat = evaluated.options[0]?.seats.find(({ id }) => id === 'front-left');
      const path = (id: string) => seat?.arrivals.find(({ speaker }) => speaker === id)?.path ?? 0;
      const spread = Math.max(
        ...['left', 'right'].map((s) => Math.abs(path(`midrange-${s}`) - path(`tweeter-${s}`))),
      );
      expect(stage.measures.pathSpread).toBe(spread);
    }
  });

  test('puts no two speakers into each other', () => {
    const pairs = request().pairs.map((pair) => ({ ...pair, step: 40, require: { fits: true } }));
    const { answers, front } = stageOf(request({ pairs, apart: 60 }), null);
    expect(answers.length).toBeGreaterThan(0);
    expect(front.length).toBeGreaterThan(2);
    for (const { spots } of answers)
      for (const spot of spots) expect(spot).toMatchObject({ feasible: true, why: [] });
    for (const stage of [...answers, ...front]) expect(metIn(put(plan, stage))).toEqual([]);
  });

  test('nor a speaker that must fit into one that need not', () => {
    const [mids, highs] = request().pairs;
    if (!mids || !highs) throw new Error('two pairs');
    const pairs = [
      { ...mids, step: 40, require: { fits: false } },
      { ...highs, step: 40, require: { fits: true } },
    ];
    const { answers, front } = stageOf(request({ pairs, apart: 60 }), null);
    expect(front.length).toBeGreaterThan(2);
    for (const stage of [...answers, ...front])
      expect(metIn(put(plan, stage)).filter((met) => /tweeter/.test(met))).toEqual([]);
  });

  test('has no answer, and says it looked at all, where the only spots are one and the same', () => {
    const pairs = request().pairs.map((pair) => ({
      ...pair,
      panels: ['rear-door-left'],
      step: 5000,
      require: { fits: true },
    }));
    for (const { pair, ...alone } of pairs)
      expect(searched(plan, { option: 'a', pair, ...alone, all: true }).feasible).toBe(1);
    expect(stageOf(request({ pairs }), null)).toMatchObject({
      tried: 1,
      complete: true,
      answers: [],
      front: [],
    });
  });

  test('the front holds none that another of it beats, and begins with the best of all', () => {
    const { front, frontOf, tried, answers } = stageOf(
      request({
        seats: [
          { id: 'front-left', weight: 2 },
          { id: 'front-right', weight: 1 },
        ],
      }),
    );
    // All combinations were looked at, though of a large front only some are told.
    expect(frontOf).toMatchObject({ combinations: tried, spacing: 0 });
    expect(front.length).toBeGreaterThan(2);
    const rows = front.map(({ penalties }) => Object.values(penalties));
    for (const one of rows)
      for (const other of rows)
        expect(
          one.every((x, k) => x <= (other[k] as number)) &&
            one.some((x, k) => x < (other[k] as number)),
        ).toBe(false);
    front.forEach(({ score, penalties, measures, spots }, n) => {
      expect(score).toBeGreaterThanOrEqual(front[Math.max(0, n - 1)]?.score ?? Infinity);
      const sum = Object.values(penalties).reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - score)).toBeLessThan(1e-9);
      expect(measures.offAxisDeg).toBe(
        Math.max(...spots.map((spot) => spot.measures.offAxisDeg ?? Infinity)),
      );
      const own = spots.reduce((all, spot) => all + spot.score, 0);
      expect(Math.abs(own + penalties.pathSpread - score)).toBeLessThan(1e-9);
    });
    // Refined from there.
    expect(answers[0]?.score).toBeLessThanOrEqual(front[0]?.score ?? 0);
  });

  test('each answer has half of its pairs or more clearly elsewhere than every better one', () => {
    const apart = 150;
    const { answers } = stageOf(request({ answers: 4, apart }));
    expect(answers.length).toBe(4);
    const places = answers.map((stage) => {
      const evaluated = evaluatePlan(put(plan, stage));
      if (!evaluated.ok) throw new Error('no answer');
      const at = (id: string) =>
        evaluated.options[0]?.placed.find(({ speaker }) => speaker === id)?.position ?? [0, 0, 0];
      return ['midrange', 'tweeter'].map((pair) => at(`${pair}-left`));
    });
    places.forEach((here, n) => {
      for (const there of places.slice(0, n)) {
        const far = here.filter(
          ([x, y, z], p) =>
            Math.hypot(
              x - (there[p]?.[0] ?? 0),
              y - (there[p]?.[1] ?? 0),
              z - (there[p]?.[2] ?? 0),
            ) >= apart,
        );
        expect(far.length).toBeGreaterThanOrEqual(1);
      }
    });
  });

  test('a heavier spread is never wider', () => {
    const spread = (pathSpread: number) =>
      stageOf(request({ want: { pathSpread }, answers: 1 })).answers[0]?.measures.pathSpread ?? 0;
    expect(spread(20)).toBeLessThanOrEqual(spread(0) + 1e-9);
  });

  test('refuses a pair named twice', () => {
    const [pair] = request().pairs;
    if (!pair) throw new Error('no pair');
    expect(searchStage(plan, request({ pairs: [pair, pair] }))).toMatchObject({
      ok: false,
      error: { path: 'pairs[1].pair' },
    });
  });
});
