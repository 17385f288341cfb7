import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import type { CrossoverInput, OffAxisResponse, SpeakerInput } from '../../src/geometry';
import * as edits from '../../src/plan/edits';
import { checkNames } from '../../src/plan/schema/check-plan';
import type { Plan } from '../../src/plan/types';
import { createPlanStore } from '../../src/store/plan-store';
import { smallPlan } from '../store/fixtures';

const changed = (plan: Plan, ...recipes: edits.PlanRecipe[]): Plan =>
  recipes.reduce((so, recipe) => produce(so, recipe), plan);

const speaker = (plan: Plan, id: string): SpeakerInput => {
  const found = plan.options[0]?.speakers.find((s) => s.id === id);
  if (!found) throw new Error(`there is no speaker ${id}`);
  return found;
};

/** The small plan with tweeters and midbasses beside its mids. */
const threeWay = (): Plan =>
  changed(smallPlan(), edits.addPair('a', 'tweeter', 25), edits.addPair('a', 'midbass', 165));

const LR4 = { family: 'linkwitz-riley', order: 4, frequencyHz: 3000 } as const;
const BW3 = { family: 'butterworth', order: 3, frequencyHz: 250 } as const;

const crossovers = (plan: Plan): readonly CrossoverInput[] | undefined =>
  plan.options[0]?.crossovers;

/** Two crossovers: midbass to midrange, midrange to tweeter. */
const crossed = (): Plan =>
  changed(
    threeWay(),
    edits.setCrossover('a', 'midbass', 'midrange', BW3),
    edits.setCrossover('a', 'midrange', 'tweeter', LR4),
  );

const RESPONSES: readonly OffAxisResponse[] = [
  { offAxisDeg: 0, frequencyHz: [20, 1000, 20_000], levelDb: [80, 80, 80] },
  { offAxisDeg: 30, frequencyHz: [20, 1000, 20_000], levelDb: [80, 79, 70] },
];

describe('crossovers', () => {
  test('one is listed, changed in its place, and taken out again', () => {
    expect(crossovers(crossed())).toEqual([
      { below: 'midbass', above: 'midrange', ...BW3 },
      { below: 'midrange', above: 'tweeter', ...LR4 },
    ]);
    const higher = changed(
      crossed(),
      edits.setCrossover('a', 'midbass', 'midrange', { ...BW3, frequencyHz: 300 }),
    );
    expect(crossovers(higher)?.map(({ frequencyHz }) => frequencyHz)).toEqual([300, 3000]);
    const none = changed(
      higher,
      edits.setCrossover('a', 'midbass', 'midrange', null),
      edits.setCrossover('a', 'midrange', 'tweeter', null),
    );
    expect(none).toEqual(threeWay());
  });

  test('two pairs have one crossover, whichever way round it was said before', () => {
    const turned = changed(crossed(), edits.setCrossover('a', 'tweeter', 'midrange', LR4));
    expect(crossovers(turned)?.[1]).toEqual({ below: 'tweeter', above: 'midrange', ...LR4 });
    expect(crossovers(turned)).toHaveLength(2);
  });

  test('with oneself, a pair or an option there is not, nothing changes', () => {
    const plan = crossed();
    for (const recipe of [
      edits.setCrossover('a', 'midrange', 'midrange', LR4),
      edits.setCrossover('a', 'midrange', 'horn', LR4),
      edits.setCrossover('a', 'horn', 'midrange', null),
      edits.setCrossover('x', 'midrange', 'tweeter', null),
      edits.setCrossover('a', 'midbass', 'tweeter', null),
      edits.setCrossover('a', 'midrange', 'tweeter', LR4),
    ])
      expect(changed(plan, recipe)).toEqual(plan);
  });

  test('of a pair that is removed go with it, and stay while one of its speakers does', () => {
    const half = changed(crossed(), edits.removeSpeaker('a', 'tweeter-left', false));
    expect(crossovers(half)).toHaveLength(2);
    const none = changed(half, edits.removeSpeaker('a', 'tweeter-right', false));
    expect(crossovers(none)).toEqual([{ below: 'midbass', above: 'midrange', ...BW3 }]);
    const gone = changed(none, edits.removeSpeaker('a', 'midrange-left', true));
    expect(gone.options[0]).not.toHaveProperty('crossovers');
  });

  test('follow a pair whose role, and with it its name, changes', () => {
    const plan = changed(
      crossed(),
      edits.changeSpeaker('a', 'midrange-left', { role: 'wideband' }),
    );
    expect(crossovers(plan)?.map(({ below, above }) => [below, above])).toEqual([
      ['midbass', 'wideband'],
      ['wideband', 'tweeter'],
    ]);
  });

  test('are copied with an option', () => {
    const plan = changed(crossed(), edits.copyOption('a'));
    expect(plan.options[1]?.crossovers).toEqual(crossovers(plan));
  });
});

describe('responses and polarity', () => {
  test('go for both of a tied pair, and null takes them away from both', () => {
    const set = changed(
      smallPlan(),
      edits.setResponses('a', 'midrange-right', RESPONSES),
      edits.setPolarity('a', 'midrange-left', true),
    );
    for (const id of ['midrange-left', 'midrange-right'])
      expect(speaker(set, id)).toMatchObject({ responses: RESPONSES, inverted: true });
    expect(speaker(set, 'subwoofer').inverted).toBeUndefined();
    const gone = changed(
      set,
      edits.setResponses('a', 'midrange-left', null),
      edits.setPolarity('a', 'midrange-right', null),
    );
    expect(gone).toEqual(smallPlan());
    expect(speaker(gone, 'midrange-left')).not.toHaveProperty('responses');
  });

  test('go for one of an untied pair, or of none', () => {
    const plan = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.setPolarity('a', 'midrange-left', true),
      edits.setResponses('a', 'midrange-left', RESPONSES),
      edits.setPolarity('a', 'subwoofer', false),
    );
    expect(speaker(plan, 'midrange-left')).toMatchObject({ inverted: true, responses: RESPONSES });
    expect(speaker(plan, 'midrange-right')).not.toHaveProperty('inverted');
    expect(speaker(plan, 'midrange-right')).not.toHaveProperty('responses');
    expect(speaker(plan, 'subwoofer').inverted).toBe(false);
  });

  test('of a speaker there is not change nothing; no responses are none', () => {
    const plan = smallPlan();
    expect(changed(plan, edits.setPolarity('a', 'nobody', true))).toBe(plan);
    expect(changed(plan, edits.setResponses('x', 'midrange-left', RESPONSES))).toBe(plan);
    expect(changed(plan, edits.setResponses('a', 'midrange-left', []))).toBe(plan);
  });
});

describe('pairing', () => {
  const pairs = (plan: Plan) =>
    plan.options[0]?.speakers.map(({ id, pair, side }) => `${id}: ${pair ?? 'none'} ${side ?? ''}`);

  test('who changes sides changes them with the twin', () => {
    const plan = changed(smallPlan(), edits.setPairing('a', 'midrange-left', { side: 'right' }));
    expect(speaker(plan, 'midrange-left').side).toBe('right');
    expect(speaker(plan, 'midrange-right').side).toBe('left');
    expect(speaker(plan, 'midrange-left').mount).toEqual(
      speaker(smallPlan(), 'midrange-left').mount,
    );
    expect(changed(plan, edits.setPairing('a', 'midrange-left', { side: 'left' }))).toEqual(
      smallPlan(),
    );
  });

  test('a speaker that joins gets the side that is free', () => {
    const half = changed(smallPlan(), edits.removeSpeaker('a', 'midrange-left', false));
    const plan = changed(half, edits.setPairing('a', 'subwoofer', { pair: 'midrange' }));
    expect(speaker(plan, 'subwoofer')).toMatchObject({ pair: 'midrange', side: 'left' });
  });

  test('a speaker that takes a place that is taken puts the other out of the pair', () => {
    const plan = changed(
      smallPlan(),
      edits.setPairing('a', 'subwoofer', { pair: 'midrange', side: 'right' }),
    );
    expect(pairs(plan)).toEqual([
      'midrange-left: midrange left',
      'midrange-right: none right',
      'subwoofer: midrange right',
    ]);
  });

  test('a new pair starts on the side its first speaker stands on', () => {
    const right = changed(smallPlan(), edits.placeSpeakerAt('a', 'subwoofer', [2000, 400, 200]));
    const plan = changed(right, edits.setPairing('a', 'subwoofer', { pair: 'bass' }));
    expect(speaker(plan, 'subwoofer')).toMatchObject({ pair: 'bass', side: 'right' });
  });

  test('out of the pair the side stays; without a side there is no pair', () => {
    const out = changed(smallPlan(), edits.setPairing('a', 'midrange-left', { pair: null }));
    expect(pairs(out)?.[0]).toBe('midrange-left: none left');
    expect(speaker(out, 'midrange-left')).not.toHaveProperty('pair');
    const none = changed(smallPlan(), edits.setPairing('a', 'midrange-left', { side: null }));
    expect(pairs(none)?.[0]).toBe('midrange-left: none ');
    const alone = changed(smallPlan(), edits.setPairing('a', 'subwoofer', { side: 'left' }));
    expect(pairs(alone)?.[2]).toBe('subwoofer: none left');
  });

  test('what was said of a pair goes along with its last speaker, or is forgotten', () => {
    const untied = changed(crossed(), edits.tiePair('a', 'tweeter', false));
    const half = changed(untied, edits.removeSpeaker('a', 'tweeter-right', false));
    const renamed = changed(half, edits.setPairing('a', 'tweeter-left', { pair: 'super' }));
    expect(crossovers(renamed)?.[1]?.above).toBe('super');
    expect(renamed.options[0]?.untied).toEqual(['super']);
    const gone = changed(half, edits.setPairing('a', 'tweeter-left', { pair: null }));
    expect(crossovers(gone)).toHaveLength(1);
    expect(gone.options[0]).not.toHaveProperty('untied');
    // Into a pair that is there already: that one keeps its own.
    const joined = changed(
      half,
      edits.setPairing('a', 'tweeter-left', { pair: 'midbass', side: 'left' }),
    );
    expect(crossovers(joined)).toEqual([{ below: 'midbass', above: 'midrange', ...BW3 }]);
    expect(joined.options[0]).not.toHaveProperty('untied');
  });

  test('said as it is already, or of nobody, it changes nothing', () => {
    const plan = smallPlan();
    for (const recipe of [
      edits.setPairing('a', 'nobody', { pair: 'midrange' }),
      edits.setPairing('a', 'midrange-left', {}),
      edits.setPairing('a', 'midrange-left', { side: 'left', pair: 'midrange' }),
      edits.setPairing('a', 'subwoofer', { pair: null }),
    ])
      expect(changed(plan, recipe)).toBe(plan);
  });
});

describe('an alignment over several seats', () => {
  const SEATS = [
    { id: 'front-left', weight: 2 },
    { id: 'front-right', weight: 1 },
  ];
  const both = (): Plan =>
    changed(smallPlan(), edits.setSeatWeights(SEATS), edits.setAlignment({ by: 'seats' }));

  test('is set and taken back', () => {
    expect(both().alignment).toEqual({ ...smallPlan().alignment, by: 'seats', seats: SEATS });
    expect(changed(both(), edits.setSeatWeights([]))).toEqual(smallPlan());
    const one = changed(both(), edits.setAlignment({ by: 'seat' }));
    expect(one.alignment).toMatchObject({ by: 'seat', seats: SEATS });
  });

  test('a seat without weight does not count, one said twice counts as said last', () => {
    const plan = changed(
      both(),
      edits.setSeatWeights([
        { id: 'front-left', weight: 2 },
        { id: 'front-right', weight: 0 },
        { id: 'front-left', weight: 5 },
      ]),
    );
    expect(plan.alignment.seats).toEqual([{ id: 'front-left', weight: 5 }]);
    expect(changed(both(), edits.setSeatWeights(SEATS))).toEqual(both());
  });

  test('forgets a seat that goes, and with the last one itself', () => {
    const left = changed(both(), edits.setSeats(['front-left']));
    expect(left.alignment).toMatchObject({ by: 'seats', seats: [SEATS[0]] });
    const other = changed(
      both(),
      edits.setSeatWeights([{ id: 'front-right', weight: 1 }]),
      edits.setSeats(['front-left']),
    );
    expect(other.alignment).toEqual(smallPlan().alignment);
  });

  test('changes sides with the wheel, where the seats are the car’s own', () => {
    const car: Plan = { ...both(), cabin: { template: 'estate', wheelSide: 'left' }, seats: [] };
    const right = changed(car, edits.setWheelSide('right'));
    expect(right.alignment.seats?.map(({ id, weight }) => [id, weight])).toEqual([
      ['front-right', 2],
      ['front-left', 1],
    ]);
    expect(changed(right, edits.setWheelSide('left'))).toEqual(car);
    // Seats placed by hand stay where they are, and so does what is said of them.
    expect(changed(both(), edits.setWheelSide('right')).alignment).toEqual(both().alignment);
  });
});

describe('whatever is said of pairs', () => {
  const anyOf = <T>(...items: T[]) => fc.constantFrom(...items);
  const pairName = anyOf('tweeter', 'midrange', 'midbass', 'bass', 'wideband');
  const speakerName = anyOf(
    ...['tweeter', 'midrange', 'midbass'].flatMap((p) => [`${p}-left`, `${p}-right`]),
    'subwoofer',
  );
  const recipe: fc.Arbitrary<edits.PlanRecipe> = fc.oneof(
    fc
      .tuple(pairName, pairName, anyOf<edits.CrossoverFields | null>(LR4, BW3, null))
      .map(([below, above, fields]) => edits.setCrossover('a', below, above, fields)),
    fc
      .tuple(
        speakerName,
        fc.record(
          {
            side: anyOf<'left' | 'right' | null>('left', 'right', null),
            pair: fc.option(pairName),
          },
          { requiredKeys: [] },
        ),
      )
      .map(([id, fields]) => edits.setPairing('a', id, fields)),
    fc
      .tuple(speakerName, anyOf(true, false, null))
      .map(([id, inverted]) => edits.setPolarity('a', id, inverted)),
    fc
      .tuple(speakerName, anyOf(RESPONSES, null))
      .map(([id, responses]) => edits.setResponses('a', id, responses)),
    fc.tuple(pairName, fc.boolean()).map(([pair, tied]) => edits.tiePair('a', pair, tied)),
    fc
      .tuple(speakerName, anyOf('tweeter' as const, 'wideband' as const, 'midrange' as const))
      .map(([id, role]) => edits.changeSpeaker('a', id, { role })),
    fc.tuple(speakerName, fc.boolean()).map(([id, both]) => edits.removeSpeaker('a', id, both)),
    fc
      .tuple(anyOf('front-left', 'front-right'), fc.nat(3))
      .map(([id, weight]) => edits.setSeatWeights([{ id, weight }])),
    anyOf(edits.setSeats(['front-left']), edits.setAlignment({ by: 'seats' })),
  );
  const recipes = fc.array(recipe, { minLength: 1, maxLength: 25 });

  test('names lead somewhere, and a pair has at most one left and one right', () => {
    fc.assert(
      fc.property(recipes, (steps) => {
        const plan = changed(crossed(), ...steps);
        expect(checkNames(plan)).toEqual([]);
        const option = plan.options[0];
        const names = new Set(option?.speakers.map(({ pair }) => pair));
        const said = [
          ...(option?.untied ?? []),
          ...(option?.crossovers ?? []).flatMap(({ below, above }) => [below, above]),
        ];
        expect(said.filter((pair) => !names.has(pair))).toEqual([]);
        const hands = (option?.crossovers ?? []).map(({ below, above }) =>
          [below, above].sort().join(' '),
        );
        expect(new Set(hands).size).toBe(hands.length);
      }),
    );
  });

  test('all undone is the plan it was, all redone the same end', () => {
    fc.assert(
      fc.property(recipes, (steps) => {
        const start = crossed();
        const store = createPlanStore(structuredClone(start));
        for (const step of steps) store.edit('edit', step);
        const end = structuredClone(store.getState().plan);
        const count = store.getState().past.length;
        for (let i = 0; i < count; i++) store.undo();
        expect(store.getState().plan).toEqual(start);
        for (let i = 0; i < count; i++) store.redo();
        expect(store.getState().plan).toEqual(end);
      }),
    );
  });
});
