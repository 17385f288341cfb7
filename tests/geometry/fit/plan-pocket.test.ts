/** Pockets of a plan on flat boards, whose volumes are school geometry; and on a template's panels. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type CabinModel,
  depthForLitres,
  fitOf,
  flatPanel,
  type OptionInput,
  type Panel,
  type Point2,
  planPocket,
  pocketInput,
  type SealedPocket,
  type SpeakerInput,
} from '../../../src/geometry';
import { pocketMisfits } from '../../../src/geometry/fit/pocket-misfits';
import { board, cabinOf, mid, placedIn, planOf } from './boards';

const BODY = { flange: 160, cutout: 140, depth: 60 };
const cabin = cabinOf(planOf({ panels: [board(600)] }, []));
const panel = cabin.panels[0] as Panel;

/** 300 by 300 mm in the middle of the board: 0.25 to 0.75 of 600 mm. */
const pocket = (more: Partial<SealedPocket> = {}): SealedPocket => ({
  id: 'p',
  panel: 'board',
  outline: [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.75, 0.75],
    [0.25, 0.75],
  ],
  depth: 100,
  speakers: ['mid'],
  ...more,
});
const option = (one: SealedPocket, ...speakers: SpeakerInput[]): OptionInput => ({
  id: 'a',
  speakers,
  pockets: [one],
});
const misfitsIn = (car: CabinModel, one: SealedPocket, ...speakers: SpeakerInput[]): string[] =>
  pocketMisfits({ cabin: car, option: option(one, ...speakers) }, one);
const net = (one: SealedPocket, ...speakers: SpeakerInput[]): number => {
  const answer = planPocket({ cabin, option: option(one, ...speakers) }, one);
  if (!answer.ok) throw new Error(answer.message);
  return answer.pocket.netLitres;
};
const CYLINDER = (Math.PI / 4) * 0.14 ** 2 * 1000;

describe('a pocket of the plan', () => {
  test('holds its box less walls and the speaker’s cylinder inside', () => {
    expect(Math.abs(net(pocket(), mid(BODY)) - (9 - CYLINDER * 0.06))).toBeLessThan(1e-6);
    // Walls of 10 mm: 280 × 280 × 80 mm, and 50 mm of the speaker behind the front one.
    const walled = net(pocket({ wall: 10 }), mid(BODY));
    expect(Math.abs(walled - (6.272 - CYLINDER * 0.05))).toBeLessThan(1e-6);
  });

  test('before the panel its front stands off by its depth, and so does the speaker', () => {
    const mount = { panel: 'board', u: 0.5, v: 0.5, standoff: 100 };
    const before = net(pocket({ lies: 'before' }), mid(BODY, { mount }));
    expect(Math.abs(before - (9 - CYLINDER * 0.06))).toBeLessThan(1e-6);
  });

  test('with a speaker without a body is empty', () => {
    const { body: _, ...bare } = mid(BODY);
    expect(Math.abs(net(pocket(), bare) - 9)).toBeLessThan(1e-6);
  });
});

describe('the depth for a wanted volume', () => {
  const input = pocketInput({ speakers: [mid(BODY)] }, pocket({ wall: 6 }));

  const mount = { panel: 'board', u: 0.5, v: 0.5, standoff: 120 };

  test.each([
    ['behind the panel', pocket({ wall: 6 }), mid(BODY)],
    ['before it', pocket({ lies: 'before', depth: 120, wall: 12 }), mid(BODY, { mount })],
  ])('gives a pocket %s that volume, whatever is wanted', (_, one, speaker) => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 100, noNaN: true }), (litres) => {
        const answer = depthForLitres(panel, pocketInput({ speakers: [speaker] }, one), litres);
        if (!answer.ok) throw new Error(answer.message);
        // The depth alone is changed: the speaker stands off the panel as before.
        expect(Math.abs(net({ ...one, depth: answer.depth }, speaker) - litres)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('by hand: a box of 300 by 300 mm without walls or speaker holds 4.5 litres at 50 mm', () => {
    const answer = depthForLitres(panel, pocketInput({ speakers: [] }, pocket()), 4.5);
    expect(answer.ok && Math.abs(answer.depth - 50)).toBeLessThan(1e-4);
  });

  test('is refused in a sentence where no depth has it', () => {
    expect(depthForLitres(panel, input, 1000)).toEqual({
      ok: false,
      message: 'even 2000 mm deep it would hold less than that',
    });
    expect(depthForLitres(panel, input, 0).ok).toBe(false);
    expect(depthForLitres(panel, { ...input, wall: 400 }, 3).ok).toBe(false);
  });
});

describe('a panel laid flat', () => {
  test('a board keeps its lengths, seen from the cabin, from its lower left end', () => {
    const flat = flatPanel(panel);
    expect(flat.size.map((n) => Math.round(n * 1e6) / 1e6)).toEqual([600, 600]);
    // It looks rearward: whoever looks at it looks forward, and the car's right is on the right.
    expect(flat.right.map((n) => n + 0)).toEqual([0, 1, 0]);
    expect(flat.up.map((n) => n + 0)).toEqual([0, 0, 1]);
    expect(flat.toFlat([0.25, 0.5]).map((n) => Math.round(n))).toEqual([150, 300]);
  });

  test('left and right panels of a car are drawn as mirror images', () => {
    const answer = buildCabin({ cabin: { template: 'estate', wheelSide: 'left' } });
    if (!answer.ok) throw new Error(answer.error.message);
    for (const kind of ['kick', 'door-lower', 'pillar']) {
      const [left, right] = ['left', 'right'].map((side) =>
        flatPanel(answer.cabin.panels.find(({ id }) => id === `${kind}-${side}`) as Panel),
      ) as [ReturnType<typeof flatPanel>, ReturnType<typeof flatPanel>];
      for (const spot of [
        [0.2, 0.3],
        [0.9, 0.1],
      ] as const) {
        const [a, b] = [left.toFlat(spot), right.toFlat(spot)];
        expect(Math.abs(a[0] - (right.size[0] - b[0])), kind).toBeLessThan(1e-6);
        expect(Math.abs(a[1] - b[1]), kind).toBeLessThan(1e-6);
      }
    }
  });

  test('every place of every mountable panel is found again', () => {
    const answer = buildCabin({ cabin: { template: 'estate', wheelSide: 'right' } });
    if (!answer.ok) throw new Error(answer.error.message);
    const flats = answer.cabin.panels.filter(({ mountable }) => mountable).map(flatPanel);
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    let misses = 0;
    for (const [u, v] of fc.sample(fc.tuple(part, part), { numRuns: 40, seed: 7 }))
      for (const flat of flats) {
        const at = flat.toFlat([u, v]);
        const again = flat.toFlat(flat.fromFlat(at));
        if (Math.hypot(again[0] - at[0], again[1] - at[1]) > 1e-3) misses++;
      }
    expect(misses).toBe(0);
  });

  test('a place beside the panel is the nearest on its edge', () => {
    const flat = flatPanel(panel);
    for (const [at, want] of [
      [
        [-50, 150],
        [0, 0.25],
      ],
      [
        [700, 700],
        [1, 1],
      ],
      [
        [300, -1e4],
        [0.5, 0],
      ],
    ] as const) {
      const spot = flat.fromFlat(at as Point2);
      expect(Math.abs(spot[0] - want[0]) + Math.abs(spot[1] - want[1])).toBeLessThan(1e-6);
    }
  });
});

describe('what does not fit a pocket', () => {
  const misfits = (one: SealedPocket, ...speakers: SpeakerInput[]) =>
    misfitsIn(cabin, one, ...speakers);

  test('nothing, where all is well', () => {
    expect(misfits(pocket(), mid(BODY))).toEqual([]);
  });

  test('a speaker elsewhere, beside the outline, or over its walls', () => {
    const at = (u: number) => mid(BODY, { mount: { panel: 'board', u, v: 0.5 } });
    expect(misfits(pocket(), mid(BODY, { mount: undefined, position: [0, 0, 0] }))).toEqual([
      '"mid" does not stand on "board"',
    ]);
    expect(misfits(pocket(), at(0.9))).toEqual(['"mid" stands beside its outline']);
    // 60 mm from the edge, 70 mm of radius and 5 mm of wall.
    expect(misfits(pocket({ wall: 5 }), at(0.65))).toEqual([
      'the cut-out of "mid" reaches 15 mm into its side walls',
    ]);
  });

  test('a body too deep for it, and a pocket too deep for the panel', () => {
    expect(misfits(pocket({ depth: 62, wall: 6 }), mid(BODY))).toEqual([
      '"mid" is 4 mm too deep for it',
    ]);
    const measured = cabinOf(
      planOf({ panels: [board(600)], measured: { board: { depthBehind: 85 } } }, []),
    );
    const one = pocket();
    expect(misfitsIn(measured, one, mid(BODY))).toEqual([
      'it is 15 mm deeper than is free behind "board"',
    ]);
    expect(misfitsIn(measured, pocket({ lies: 'before' }))).toEqual([]);
  });

  test('a body turned aside that reaches farther back than it is deep', () => {
    // By hand: 45° off the normal 60 mm of depth and 70 mm of radius reach 91.9 mm back.
    const aside = mid(BODY, { aim: { kind: 'direction', direction: [1, 1, 0] } });
    const reach = (60 + 70) * Math.SQRT1_2;
    expect(misfits(pocket({ depth: 95 }), aside)).toEqual([]);
    expect(misfits(pocket({ depth: 90, wall: 6 }), aside)).toEqual([
      `"mid" is ${(reach - 84).toFixed(1)} mm too deep for it`,
    ]);
    // Before the panel its front is 90 mm off it: so is the speaker, or 5 mm more.
    const before = pocket({ lies: 'before', depth: 90, wall: 6 });
    const off = (standoff: number) =>
      misfits(before, { ...aside, mount: { panel: 'board', u: 0.5, v: 0.5, standoff } });
    expect(off(90)).toEqual([`"mid" is ${(reach - 84).toFixed(1)} mm too deep for it`]);
    expect(off(95)).toEqual([`"mid" is ${(reach - 89).toFixed(1)} mm too deep for it`]);
  });
});

describe('the airspace of a speaker in a pocket', () => {
  const body = { ...BODY, airspaceLitres: 9 };
  const found = (
    pockets: SealedPocket[] | undefined,
    speaker: SpeakerInput,
    airspaceBehind: number,
  ) => {
    const plan = planOf(
      { panels: [board(600)], measured: { board: { airspaceBehind, depthBehind: 200 } } },
      [speaker],
    );
    const car = cabinOf(plan);
    const placed = placedIn(car, [speaker]);
    return fitOf({ cabin: car, option: { id: 'a', speakers: [speaker], pockets }, placed }, 'mid');
  };

  test('is the pocket’s net volume, not what is behind the panel', () => {
    expect(found([pocket()], mid(body), 50)).toMatchObject([
      {
        kind: 'airspace',
        with: 'board',
        sentence:
          '0.92 litres too little airspace in the pocket behind "board": 9 litres wanted, 8.1 litres net',
      },
    ]);
    expect(found([pocket({ depth: 150 })], mid(body), 0.1)).toEqual([]);
    expect(found(undefined, mid(body), 0.1)).toMatchObject([{ kind: 'airspace' }]);
  });

  test('is the panel’s again where the speaker stands on another panel than its pocket', () => {
    expect(found([pocket({ panel: 'elsewhere' })], mid(body), 0.1)).toMatchObject([
      { kind: 'airspace', sentence: expect.stringContaining('airspace behind "board"') },
    ]);
  });

  test('is asked for before the panel too, and a pocket without room says why', () => {
    const mount = { panel: 'board', u: 0.5, v: 0.5, standoff: 100 };
    expect(found([pocket({ lies: 'before' })], mid(body, { mount }), 50)).toMatchObject([
      { kind: 'airspace', sentence: expect.stringContaining('in the pocket before "board"') },
    ]);
    expect(found([pocket({ wall: 60 })], mid(body), 50)).toMatchObject([
      {
        kind: 'airspace',
        by: null,
        sentence: 'the pocket behind "board" holds no air: walls of 60 mm leave no room inside',
      },
    ]);
  });
});
