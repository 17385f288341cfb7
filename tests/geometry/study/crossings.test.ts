import { describe, expect, test } from 'vitest';
import type { CrossoverInput, OptionInput } from '../../../src/geometry';
import { crossingProblem, crossingsOf } from '../../../src/geometry/study';
import { MIDBASS, MIDRANGE, pairAt, poles, TWEETER } from './stages';

const option = (more: Partial<OptionInput> = {}): OptionInput => ({
  id: 'a',
  speakers: [
    ...pairAt(TWEETER, [700, 650, 900]),
    ...pairAt(MIDBASS, [500, 700, 300]),
    ...pairAt(MIDRANGE, [500, 600, 500]),
  ],
  ...more,
});
const over = (
  below: string,
  above: string,
  frequencyHz: number,
  more: Partial<CrossoverInput> = {},
): CrossoverInput => ({ below, above, family: 'linkwitz-riley', order: 4, frequencyHz, ...more });
const words = (one: OptionInput) =>
  crossingsOf(one).map(({ crossover: { below, above, frequencyHz }, proposed }) => [
    below,
    above,
    Math.round(frequencyHz),
    proposed,
  ]);

describe('hand-overs', () => {
  test('are proposed where the bands of two pairs meet, from low to high', () => {
    expect(words(option())).toEqual([
      ['midbass', 'midrange', 300, true],
      ['midrange', 'tweeter', 2500, true],
    ]);
    expect(crossingsOf(option())[0]?.crossover).toMatchObject({
      family: 'linkwitz-riley',
      order: 4,
    });
  });

  test('stand at the geometric mean of both ends where bands overlap or leave a small gap', () => {
    const speakers = [
      ...pairAt({ ...MIDRANGE, bandHz: [300, 4000] }, [500, 600, 500]),
      ...pairAt({ ...TWEETER, bandHz: [2560, 20000] }, [700, 650, 900]),
      ...pairAt({ ...MIDBASS, bandHz: [60, 200] }, [500, 700, 300]),
    ];
    expect(words({ id: 'a', speakers })).toEqual([
      ['midbass', 'midrange', Math.round(Math.sqrt(200 * 300)), true],
      ['midrange', 'tweeter', 3200, true],
    ]);
  });

  test('that are listed stand in for the proposed ones, whichever way round', () => {
    const crossovers = [over('midrange', 'tweeter', 3150, { order: 8 })];
    expect(words(option({ crossovers }))).toEqual([
      ['midbass', 'midrange', 300, true],
      ['midrange', 'tweeter', 3150, false],
    ]);
    const swapped = [over('tweeter', 'midrange', 3150)];
    expect(words(option({ crossovers: swapped }))).toHaveLength(2);
  });

  test('are not proposed across a wide gap, inside another band, or beside the front stage', () => {
    const [wide, inside] = [
      [...pairAt(MIDBASS, [500, 700, 300]), ...pairAt(TWEETER, [700, 650, 900])],
      [
        ...pairAt({ ...MIDBASS, bandHz: [60, 20000] }, [500, 700, 300]),
        ...pairAt({ ...MIDRANGE, bandHz: [300, 3000] }, [500, 600, 500]),
      ],
    ];
    const rear = [
      ...pairAt(MIDBASS, [500, 700, 300]),
      ...pairAt({ ...MIDRANGE, role: 'rear-fill' }, [2500, 600, 500]),
    ];
    for (const speakers of [wide, inside, rear, []])
      expect(crossingsOf({ id: 'a', speakers })).toEqual([]);
  });

  test('need a band; half a pair is enough', () => {
    const speakers = option().speakers;
    const bare = speakers.map((speaker) =>
      speaker.role === 'midrange' ? { ...speaker, bandHz: undefined } : speaker,
    );
    expect(crossingsOf({ id: 'a', speakers: bare })).toEqual([]);
    const half = speakers.filter(({ id }) => id !== 'midrange-right');
    expect(words({ id: 'a', speakers: half })).toEqual(words(option()));
  });

  test('have a problem when a pair hands over to itself or the filter cannot be', () => {
    expect(crossingProblem(over('a', 'b', 300))).toBe(null);
    expect(crossingProblem(over('a', 'a', 300))).toContain('itself');
    expect(crossingProblem(over('a', 'b', 300, { order: 3 }))).toContain('even');
  });
});

describe('poles', () => {
  test('stay as they are with slopes of 24 dB per octave', () => {
    expect(Object.values(poles(option()))).toEqual([false, false, false, false, false, false]);
  });

  test('swap at every hand-over of 12 dB per octave, counted from below', () => {
    const crossovers = [
      over('midbass', 'midrange', 300, { order: 2 }),
      over('midrange', 'tweeter', 2500, { order: 2 }),
    ];
    expect(poles(option({ crossovers }))).toEqual({
      'tweeter-left': false,
      'tweeter-right': false,
      'midbass-left': false,
      'midbass-right': false,
      'midrange-left': true,
      'midrange-right': true,
    });
    const lower = [over('midbass', 'midrange', 300, { order: 2 })];
    expect(poles(option({ crossovers: lower }))).toMatchObject({
      'midrange-left': true,
      'tweeter-left': true,
    });
  });

  test('are the plan’s own where it names them, for that speaker alone', () => {
    const speakers = option().speakers.map((speaker) =>
      speaker.id === 'tweeter-right' ? { ...speaker, inverted: true } : speaker,
    );
    const told = poles(option({ speakers }));
    expect(told['tweeter-right']).toBe(true);
    expect(Object.values(told).filter(Boolean)).toHaveLength(1);
    const straight = option().speakers.map((speaker) =>
      speaker.id === 'midrange-left' ? { ...speaker, inverted: false } : speaker,
    );
    const crossovers = [over('midbass', 'midrange', 300, { order: 2 })];
    expect(poles(option({ speakers: straight, crossovers }))).toMatchObject({
      'midrange-left': false,
      'midrange-right': true,
    });
  });

  test('do not mind a filter that cannot be, or pairs that go round in a ring', () => {
    const crossovers = [
      over('midbass', 'midrange', 300, { order: 2 }),
      over('midrange', 'midbass', 400, { order: 2 }),
      over('midrange', 'tweeter', 2500, { order: 9 }),
    ];
    expect(poles(option({ crossovers }))).toMatchObject({ 'midrange-left': true });
  });
});
