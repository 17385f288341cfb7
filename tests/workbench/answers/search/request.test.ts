import { describe, expect, it } from 'vitest';
import type { SearchRequest, StageRequest } from '../../../../src/geometry';
import { prepareSearch } from '../../../../src/geometry';
import { demoPlan } from '../../../../src/plan/demo';
import { readSearchRequest } from '../../../../src/plan/schema';
import { formatLength } from '../../../../src/plan/units';
import { buildRequest } from '../../../../src/workbench/answers/search/build-request';
import {
  NEW_DRAFT,
  type SearchDraft,
  scopeOf,
  searchPairs,
  stagePairs,
  usualSeats,
  WHOLE_STAGE,
} from '../../../../src/workbench/answers/search/draft';
import { panelCouples } from '../../../../src/workbench/answers/search/panel-couples';
import { requestText } from '../../../../src/workbench/answers/search/request-json';
import { requestSentence } from '../../../../src/workbench/answers/search/request-words';
import { groundOf } from './rig';

const ground = groundOf();
const built = (change: Partial<SearchDraft> = {}, scope = 'tweeter', on = ground) => {
  const answer = buildRequest({ ...NEW_DRAFT, ...change }, scope, on);
  if (!answer.ok) throw new Error(answer.problem);
  return answer.request;
};
const single = (change?: Partial<SearchDraft>, scope?: string) =>
  built(change, scope) as SearchRequest;
const sentence = (change?: Partial<SearchDraft>, scope?: string) =>
  requestSentence(built(change, scope), {
    cabin: ground.cabin,
    length: (mm) => formatLength(mm, 'mm'),
  });

describe('a search nobody filled in', () => {
  it('asks for mirrored spots at the listener the delays are for, on the panels usual for the pair', () => {
    expect(single()).toEqual({
      option: 'a',
      pair: 'tweeter',
      mirrored: true,
      seats: [{ id: 'front-left', weight: 1 }],
      panels: [
        'kick-left',
        'dash-top-left',
        'mirror-corner-left',
        'dash-face-left',
        'pillar-left',
        'door-upper-left',
      ],
      step: 20,
      require: { fits: true, free: false },
      want: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
      answers: 5,
      apart: 200,
    });
  });

  it('stays ahead of the listener and off the middle of the dash for each front pair', () => {
    const head = ground.cabin.seats.find(({ id }) => id === 'front-left')?.head[0] ?? 0;
    const couples = panelCouples(ground.cabin.panels);
    for (const { pair } of searchPairs(ground.option))
      for (const id of single({}, pair).panels ?? []) {
        const couple = couples.find((one) => one.id === id);
        expect(couple?.central, id).toBe(false);
        expect(couple?.x, id).toBeLessThan(head);
      }
  });

  it('also looks where the pair stands now, though few would mount it there', () => {
    const plan = demoPlan();
    const [first, ...rest] = plan.options;
    if (!first) throw new Error('no option');
    const speakers = first.speakers.map((one) =>
      one.pair === 'tweeter'
        ? { ...one, mount: { panel: `c-pillar-${one.side}`, u: 0.5, v: 0.5 } }
        : one,
    );
    const moved = groundOf({ ...plan, options: [{ ...first, speakers }, ...rest] });
    expect((built({}, 'tweeter', moved) as SearchRequest).panels).toContain('c-pillar-left');
  });

  it('is accepted by the engine as it is', () => {
    for (const { pair } of searchPairs(ground.option))
      expect(prepareSearch(ground.plan, single({ step: 60 }, pair)).ok, pair).toBe(true);
  });

  it('takes the listeners of a compromise with their weights', () => {
    const { plan, cabin } = ground;
    const several = { ...plan, alignment: { ...plan.alignment, by: 'seats' as const } };
    expect(usualSeats(several, cabin)).toEqual([
      { id: 'front-left', weight: 2 },
      { id: 'front-right', weight: 1 },
    ]);
  });
});

describe('what is filled in', () => {
  it('comes out as the aim, limits and weights of the request', () => {
    const request = single({
      aim: 'seat:front-right',
      withinDeg: 20,
      free: true,
      maxOffAxisDeg: 45,
      mirrored: false,
      step: 35,
    });
    expect(request).toMatchObject({
      aim: { kind: 'seat', seat: 'front-right', withinDeg: 20 },
      require: { fits: true, free: true, maxOffAxisDeg: 45 },
      mirrored: false,
      step: 35,
    });
    expect(single({ aim: 'between' }).aim).toEqual({ kind: 'between' });
    expect(single({ aim: 'normal', withinDeg: 20 }).aim).toEqual({ kind: 'normal' });
    expect(single()).not.toHaveProperty('aim');
  });

  it('asks for all pairs of the front stage together, each on its own panels', () => {
    const request = built({ panels: { midrange: ['kick-left'] } }, WHOLE_STAGE) as StageRequest;
    expect(request.pairs.map(({ pair }) => pair)).toEqual(['tweeter', 'midrange', 'midbass']);
    expect(request.pairs[1]?.panels).toEqual(['kick-left']);
    expect(request.pairs[2]?.panels).toContain('door-lower-left');
    expect(request.want).toEqual({ pathSpread: 0.5 });
    expect(request).not.toHaveProperty('pair');
  });

  it('is answered with a sentence where it asks for nothing', () => {
    const problem = (change: Partial<SearchDraft>) => {
      const answer = buildRequest({ ...NEW_DRAFT, ...change }, 'tweeter', ground);
      return answer.ok ? null : answer.problem;
    };
    expect(problem({ panels: { tweeter: [] } })).toBe('Tick at least one panel.');
    expect(problem({ panels: { tweeter: ['gone'] } })).toBe('Tick at least one panel.');
    const want = { difference: 0, offAxisDeg: 0, obstructionDb: 0, firstReflectionTime: 0 };
    expect(problem({ want })).toBe('Give at least one aim a weight above 0.');
    expect(problem({})).toBeNull();
  });

  it('means the first pair where the one chosen is not in this option', () => {
    const pairs = searchPairs(ground.option);
    expect(scopeOf(NEW_DRAFT, pairs)).toBe('tweeter');
    expect(scopeOf({ ...NEW_DRAFT, scope: 'midbass' }, pairs)).toBe('midbass');
    expect(scopeOf({ ...NEW_DRAFT, scope: 'gone' }, pairs)).toBe('tweeter');
    expect(scopeOf({ ...NEW_DRAFT, scope: WHOLE_STAGE }, pairs)).toBe(WHOLE_STAGE);
    expect(scopeOf({ ...NEW_DRAFT, scope: WHOLE_STAGE }, pairs.slice(0, 1))).toBe('tweeter');
    expect(stagePairs([{ pair: 'rear', role: 'rear-fill', standing: [] }])).toEqual([]);
  });
});

describe('the request as JSON', () => {
  it.each([
    ['as it is at first', {}, 'tweeter'],
    [
      'with everything filled in',
      {
        aim: 'between',
        withinDeg: 15,
        free: true,
        maxOffAxisDeg: 50,
        seats: [
          { id: 'front-left', weight: 2 },
          { id: 'front-right', weight: 1 },
        ],
      },
      'midrange',
    ],
    ['for the whole stage', { aim: 'normal' }, WHOLE_STAGE],
  ] as const)('is what the command line reads, word for word: %s', (_, change, scope) => {
    const request = built(change as Partial<SearchDraft>, scope);
    expect(readSearchRequest(requestText(request))).toEqual({ ok: true, request, warnings: [] });
  });
});

describe('the request in words', () => {
  it('says where, how aimed, for whom, how finely and what must hold', () => {
    expect(sentence()).toBe(
      'Mirrored spots on the kick panel, dash top, mirror corner and 3 more, aimed as they are, ' +
        'heard at the front left seat, on a 20 mm grid. They must fit and stay out of keep-clear zones.',
    );
    expect(
      sentence({
        panels: { tweeter: ['pillar-left', 'dash-top-left'] },
        aim: 'seat:front-left',
        withinDeg: 20,
        free: true,
        fits: false,
        maxOffAxisDeg: 40,
        mirrored: false,
      }),
    ).toBe(
      'Left and right each on its own on the dash top and A-pillar, aimed at the front left seat, ' +
        'turned from the panel’s normal by 20° at most, heard at the front left seat, on a 20 mm ' +
        'grid. They must stay out of keep-clear zones, have a free line to every listener and have ' +
        'the listeners within 40° of their axis.',
    );
  });

  it('names listeners with their weights where these differ', () => {
    const seats = [
      { id: 'front-left', weight: 2 },
      { id: 'front-right', weight: 1 },
    ];
    expect(sentence({ seats })).toContain(
      'the front left seat (weight 2) and the front right seat (weight 1)',
    );
  });
});
