import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import {
  type Arrival,
  evaluatePlan,
  type FoundSpot,
  type PlanInput,
  type SearchRequest,
  searchSpots,
  searchStage,
} from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import {
  foundTitle,
  nextOptionId,
  ordinal,
  type PlanRecipe,
  type TakenSpot,
  takeSpot,
  takeStage,
} from '../../src/plan/edits';
import { readPlan, writePlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';

const changed = (plan: Plan, recipe: PlanRecipe): Plan => produce(plan, recipe);

const plan = demoPlan();

const REQUEST: SearchRequest = {
  option: 'a',
  pair: 'tweeter',
  panels: ['dash-top-left', 'mirror-corner-left'],
  step: 90,
  seats: [{ id: 'front-left', weight: 1 }],
  require: { fits: false },
  answers: 3,
};

function answers(change: Partial<SearchRequest>): FoundSpot[] {
  const found = searchSpots(plan, { ...REQUEST, ...change });
  if (!found.ok) throw new Error(`${found.error.path}: ${found.error.message}`);
  expect(found.answer.answers.length).toBeGreaterThan(1);
  return found.answer.answers;
}

/** What evaluation says of a pair at the driver's seat: worst of the two, as a search tells it. */
function heard(of: PlanInput, option: string, pair: string) {
  const result = evaluatePlan(of);
  if (!result.ok) throw new Error(result.error.message);
  const seat = result.options
    .find(({ id }) => id === option)
    ?.seats.find((s) => s.id === 'front-left');
  const arrivals = (seat?.arrivals ?? []).filter(({ speaker }) => speaker.startsWith(pair));
  expect(arrivals).toHaveLength(2);
  const times = arrivals.flatMap(({ reflections: [first] }: Arrival) =>
    first ? [first.extraTime] : [],
  );
  return {
    difference: Math.abs(seat?.pairs.find((one) => one.pair === pair)?.difference ?? Number.NaN),
    offAxisDeg: Math.max(...arrivals.map(({ offAxisDeg }) => offAxisDeg ?? Number.NaN)),
    firstReflectionTime: times.length > 0 ? Math.min(...times) : null,
    paths: arrivals.map(({ path }) => path),
  };
}

describe('an answer of the search taken as an option', () => {
  test.each([
    ['each speaker’s own aim', {}],
    ['a seat', { aim: { kind: 'seat', seat: 'front-right' } }],
    ['between the seats', { aim: { kind: 'between', seats: ['front-left', 'front-right'] } }],
    ['a seat, by a wedge of 15°', { aim: { kind: 'seat', seat: 'front-left', withinDeg: 15 } }],
    ['the panel’s normal', { aim: { kind: 'normal' }, standoff: 12 }],
    ['a direction', { aim: { kind: 'direction', direction: [1, 0.4, 0.3] } }],
    [
      'a seat, left and right apart',
      { mirrored: false, step: 140, aim: { kind: 'seat', seat: 'front-left', withinDeg: 25 } },
    ],
  ] as const)('aimed at %s, evaluation gives the very numbers the search told', (_, change) => {
    for (const [n, spot] of answers(change).entries()) {
      const taken = changed(plan, takeSpot('a', 'tweeter', spot, n + 1));
      const { paths: __, ...measures } = heard(taken, nextOptionId(plan), 'tweeter');
      const { obstructionDb: ___, ...told } = spot.measures;
      expect(measures).toEqual(told);
    }
  });

  test('stands right after the one searched, named in words, all else as it was', () => {
    const [best] = answers({});
    const taken = changed(plan, takeSpot('a', 'tweeter', best as FoundSpot, 1));
    expect(taken.options.map(({ id }) => id)).toEqual(['a', 'c', 'b']);
    const [from, option] = taken.options;
    expect(from).toEqual(plan.options[0]);
    expect(option?.title).toMatch(/^Tweeters on the (dash top|mirror corners), 1st of the search$/);
    const others = (of: Plan['options'][number] | undefined) =>
      of?.speakers.filter(({ pair }) => pair !== 'tweeter');
    expect(others(option)).toEqual(others(from));
    expect(option?.crossovers).toEqual(from?.crossovers);
    expect(option?.untied).toBeUndefined();
  });

  test('is untied where left and right were searched apart, and only there', () => {
    const [best] = answers({ mirrored: false, step: 140 });
    const apart = changed(plan, takeSpot('a', 'tweeter', best as FoundSpot));
    expect(apart.options[1]?.untied).toEqual(['tweeter']);
    const across: TakenSpot = {
      panel: 'dash-top-center',
      u: 0.3,
      v: 0.5,
      standoff: 4,
      partner: { panel: 'dash-top-center', u: 0.7, v: 0.5, standoff: 4 },
    };
    expect(changed(plan, takeSpot('a', 'tweeter', across)).options[1]?.untied).toBeUndefined();
  });

  test('can be saved and read again as it is', () => {
    const [best] = answers({ aim: { kind: 'seat', seat: 'front-left', withinDeg: 10 } });
    const taken = changed(plan, takeSpot('a', 'tweeter', best as FoundSpot, 1));
    expect(readPlan(writePlan(taken))).toMatchObject({ ok: true, plan: taken });
  });

  test('changes nothing where option or pair are gone', () => {
    const [best] = answers({});
    expect(changed(plan, takeSpot('z', 'tweeter', best as FoundSpot))).toBe(plan);
    expect(changed(plan, takeSpot('a', 'z', best as FoundSpot))).toBe(plan);
  });

  test('of several pairs moves them all, to the path spread the search told', () => {
    const pairs = ['tweeter', 'midrange'].map((pair) => ({
      pair,
      panels: ['dash-top-left', 'pillar-left'],
      step: 130,
      aim: { kind: 'seat', seat: 'front-left' } as const,
      require: { fits: false },
    }));
    const found = searchStage(plan, { option: 'b', pairs, answers: 2, seats: REQUEST.seats });
    if (!found.ok) throw new Error(found.error.message);
    const [first, second] = found.answer.answers;
    if (!first || !second) throw new Error('no answers');
    const taken = changed(plan, takeStage('b', second, 2));
    const option = taken.options[2];
    expect(option?.title).toMatch(/^Tweeters on the .*, mids on the .*, 2nd of the search$/);
    const [highs, mids] = pairs.map(({ pair }) => heard(taken, 'c', pair).paths);
    const spread = Math.max(
      ...[0, 1].map((k) => Math.abs((highs?.[k] as number) - (mids?.[k] as number))),
    );
    expect(second.measures.pathSpread).toBe(spread);
  });
});

describe('the title of what was found', () => {
  const among = plan.options[0]?.speakers ?? [];
  const spot = (panel: string, partner: string): TakenSpot & { pair: string } => ({
    pair: 'midrange',
    panel,
    u: 0.5,
    v: 0.5,
    standoff: 0,
    partner: { panel: partner, u: 0.5, v: 0.5, standoff: 0 },
  });

  test.each([
    ['dash-top-left', 'dash-top-right', 'Mids on the dash top'],
    ['dash-top-center', 'dash-top-center', 'Mids on the dash top, centre'],
    ['pillar-left', 'pillar-right', 'Mids on the A-pillars'],
    ['kick-left', 'kick-right', 'Mids on the kick panels'],
    ['kick-left', 'dash-top-right', 'Mids on the left kick panel and the right dash top'],
  ])('%s with %s', (panel, partner, title) => {
    expect(foundTitle(among, [spot(panel, partner)])).toBe(title);
  });

  test('counts as one does aloud', () => {
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual(
      '1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 101st 111th'.split(' '),
    );
  });
});
