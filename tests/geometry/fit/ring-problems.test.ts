/** A mounting ring against its panel, its neighbours, obstacles and keep-clear zones; mm. */
import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import {
  createFitter,
  depthBehind,
  evaluatePlan,
  type FitProblem,
  pillarViews,
  ringStandoff,
  type SpeakerInput,
  type SpeakerRing,
  usualRing,
  type Vec3,
  zonesAtSpot,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { mountSpeaker, setRing } from '../../../src/plan/edits';
import { board, cabinOf, mid, placedIn, planOf, problems, type Scene } from './boards';

const BODY = { flange: 84, cutout: 75, depth: 20 };

/** 120 mm outside, proud, no rim: hand-made numbers. */
const RING = { outer: 120, rimRadius: 0, leastThickness: 4 };

const onRing = (standoff: number, more: Partial<SpeakerInput> = {}): SpeakerInput =>
  mid(BODY, { mount: { panel: 'board', u: 0.5, v: 0.5, standoff }, ring: RING, ...more });

/** Leaning to the right by so many degrees. */
const leaning = (deg: number): Pick<SpeakerInput, 'aim'> => {
  const a = (deg * Math.PI) / 180;
  return { aim: { kind: 'direction', direction: [Math.cos(a), Math.sin(a), 0] as Vec3 } };
};

const box = (center: Vec3, size: Vec3 = [10, 10, 10]) =>
  ({ id: 'box', shape: 'box', center, size }) as const;

const told = (scene: Scene, ...speakers: SpeakerInput[]): FitProblem[] =>
  problems(scene, ...speakers).filter(({ sentence }) => sentence.includes('ring'));

describe('a speaker on a ring', () => {
  test('let into its ring it reaches deeper by just its flange', () => {
    const behind = (ring: SpeakerRing) => {
      const speaker = onRing(20, { ring, body: { ...BODY, depth: 42 } });
      const cabin = cabinOf(planOf({}, [speaker]));
      const [placed] = placedIn(cabin, [speaker]);
      if (!placed) throw new Error('not placed');
      return depthBehind(speaker, placed, cabin.panels[0] ?? null);
    };
    // By hand: 42 of depth less 20 of stand-off.
    expect(behind(RING)).toBeCloseTo(22, 9);
    expect(behind({ ...RING, flangeThickness: 6 })).toBeCloseTo(22, 9);
    expect(behind({ ...RING, seat: 'sunk', flangeThickness: 6 })).toBeCloseTo(28, 9);
    expect(behind({ ...RING, seat: 'sunk' })).toBeCloseTo(26, 9);
  });

  test('let in it runs into what it clears lying on its ring', () => {
    // Its back is 20 behind the mounting face, so 10 or 14 behind the panel.
    const scene = { obstacles: [box([-13, 0, 0], [4, 10, 10])] };
    expect(problems(scene, onRing(10))).toEqual([]);
    const [problem, ...more] = problems(scene, onRing(10, { ring: { ...RING, seat: 'sunk' } }));
    expect(more).toEqual([]);
    expect(problem?.by).toBeCloseTo(3, 1);
  });

  test('has no ring at a free point, and is told so', () => {
    const { mount: _, ...free } = onRing(10, { position: [40, 0, 0], ...leaning(0) });
    expect(problems({}, free)).toEqual([
      {
        kind: 'free-ring',
        sentence: 'no ring: a free point has no panel for it to stand on',
        by: null,
        hard: false,
      },
    ]);
    const { ring: __, ...bare } = free;
    expect(problems({}, bare)).toEqual([]);
  });

  test('fits where the ring has room', () => {
    expect(problems({}, onRing(10))).toEqual([]);
    expect(problems({}, onRing(40, leaning(20)))).toEqual([]);
  });

  test('does not fit with too little stand-off, and is told how much more', () => {
    const [problem] = told({}, onRing(10, leaning(20)));
    // By hand: 4 cos 20° + 60 sin 20° = 24.28.
    expect(problem?.kind).toBe('ring');
    expect(problem?.by).toBeCloseTo(4 * Math.cos(Math.PI / 9) + 60 * Math.sin(Math.PI / 9) - 10, 9);
    expect(problem?.sentence).toContain('14.3 mm more stand-off');
  });

  test('its ring may not reach over the edge of its panel, though its flange does not', () => {
    const narrow = { panels: [board(100)] };
    expect(problems(narrow, mid(BODY))).toEqual([]);
    const [problem, ...more] = told(narrow, onRing(10));
    expect(more).toEqual([]);
    expect(problem?.kind).toBe('outline');
    expect(problem?.by).toBeCloseTo(10, 2);
    expect(problem?.sentence).toBe('its ring reaches 10 mm over the edge of "board"');
  });

  test('its bore may not be narrower than the cut-out the speaker asks for', () => {
    const [problem, ...more] = told(
      {},
      onRing(10, { ring: { ...RING, bore: 70, screwCircle: 80 } }),
    );
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ kind: 'bore', by: 5 });
    expect(problem?.sentence).toBe('the bore of its ring is 5 mm too narrow for it');
  });

  test.each([
    [{ bore: 90, outer: 120, screwCircle: 100 }, 'falls through its ring, bored 90 mm'],
    [{ bore: 84, outer: 120, screwCircle: 100 }, 'falls through its ring, bored 84 mm'],
    [
      { bore: 84.4, seat: 'sunk', outer: 120, screwCircle: 84.6 },
      'falls through its ring, bored 84.4 mm',
    ],
    [{ screwCircle: 100, outer: 120 }, 'is missed by the screws of its ring, on 100 mm'],
    [{ screwCircle: 84.5, seat: 'sunk' }, 'is missed by the screws of its ring, on 84.5 mm'],
    [{ outer: 80, rimRadius: 0, screwCircle: 77 }, 'is wider than its ring, 80 mm outside'],
  ] as const)('has to have its flange of 84 mm held by it: %j', (ring, words) => {
    expect(problems({}, onRing(10, { ring }))).toMatchObject([
      { kind: 'flange', sentence: `its flange of 84 mm ${words}`, by: null, hard: false },
    ]);
  });

  test('a flange is held by a ring that only just reaches under it', () => {
    for (const ring of [
      { bore: 83, outer: 120 },
      { outer: 120, screwCircle: 83.5 },
      { outer: 84, rimRadius: 0 },
    ])
      expect(problems({}, onRing(10, { ring }))).toEqual([]);
  });

  test('a tilted ring stands off its spot: its back is an ellipse about where the axis leaves the panel', () => {
    // 20° to the right from 40 mm: the axis leaves the panel 40 tan 20° = 14.56 left of the spot,
    // and the back reaches 60 / cos 20° = 63.85 to either side of there: 78.41 to the left.
    const [problem] = told({ panels: [board(150)] }, onRing(40, leaning(20)));
    const angle = Math.PI / 9;
    expect(problem?.by).toBeCloseTo(40 * Math.tan(angle) + 60 / Math.cos(angle) - 75, 1);
    expect(told({ panels: [board(158)] }, onRing(40, leaning(20)))).toEqual([]);
  });

  test('reaches into a keep-clear zone that the speaker itself stays clear of, and that is hard', () => {
    const zone = { ...box([5, 55, 0]), id: 'bag', reason: 'airbag' };
    const scene = { keepClear: [zone] };
    expect(problems(scene, mid(BODY, { mount: onRing(10).mount as never }))).toEqual([]);
    const [problem] = told(scene, onRing(10));
    expect(problem).toMatchObject({ kind: 'zone', with: 'bag', hard: true });
    expect(problem?.sentence).toMatch(
      /^its ring reaches .* mm along its axis into the place kept clear/,
    );

    const plan = planOf(scene, [onRing(10)]);
    const cabin = cabinOf(plan);
    const [placed] = placedIn(cabin, [onRing(10)]);
    if (!placed) throw new Error('not placed');
    expect(zonesAtSpot(cabin.keepClear, placed, BODY)).toEqual([]);
    expect(zonesAtSpot(cabin.keepClear, placed, BODY, onRing(10)).map(({ id }) => id)).toEqual([
      'bag',
    ]);
    const fitter = createFitter(cabin);
    expect(fitter.isKeptClear(onRing(10), placed)).toBe(true);
    expect(fitter.fits(onRing(10), placed)).toBe(false);
    const { ring: _, ...bare } = onRing(10);
    expect(fitter.isKeptClear(bare, placed)).toBe(false);
  });

  test('an obstacle behind the panel is none to the ring, one before it is', () => {
    expect(told({ obstacles: [box([-6, 55, 0])] }, onRing(10))).toEqual([]);
    const [problem] = told({ obstacles: [box([4, 55, 0])] }, onRing(10));
    expect(problem?.sentence).toMatch(/^its ring reaches .* mm along its axis into "box"/);
  });

  test('another speaker, and the ring it stands on, are in its way', () => {
    const beside = (far: number, more: Partial<SpeakerInput> = {}) =>
      mid(BODY, {
        id: 'other',
        side: 'right',
        mount: { panel: 'board', u: 0.5 + far / 600, v: 0.5, standoff: 10 },
        ...more,
      });
    // Flanges are 42, rings 60 mm in radius.
    expect(problems({}, onRing(10), beside(103))).toEqual([]);
    expect(told({}, onRing(10), beside(95))[0]?.sentence).toMatch(
      /^its ring .* the right midrange$/,
    );
    expect(told({}, onRing(10), beside(110, { ring: RING }))[0]?.sentence).toMatch(
      /^its ring .* the ring of the right midrange$/,
    );
    expect(told({}, onRing(10), beside(125, { ring: RING }))).toEqual([]);
    // The one without a ring is told as well.
    const bare = mid(BODY, { mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 4 } });
    expect(told({}, bare, beside(95, { ring: RING }))[0]?.sentence).toMatch(
      /^(reaches|stands) .*the ring of the right midrange$/,
    );
  });

  test('a panel next door is in its way', () => {
    const wall = {
      id: 'wall',
      corners: [
        [0, 55, -300],
        [300, 55, -300],
        [300, 55, 300],
        [0, 55, 300],
      ] as [Vec3, Vec3, Vec3, Vec3],
    };
    const [problem] = told({ panels: [board(600), wall] }, onRing(10));
    expect(problem?.sentence).toMatch(/^its ring .*into "wall"$/);
  });
});

test('a ring on a pillar hides more of the road than its speaker alone', () => {
  const afterDeg = (ring: boolean): number => {
    const plan = produce(demoPlan(), (draft) => {
      const mount = { panel: 'pillar-left', u: 0.4, v: 0.45, standoff: 60 };
      mountSpeaker('a', 'midrange-left', mount)(draft);
      if (ring) setRing('a', 'midrange-left', { outer: 130 })(draft);
    });
    const answer = evaluatePlan(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const [option, result] = [plan.options[0], answer.options[0]];
    if (!option || !result) throw new Error('no option');
    const views = pillarViews({ cabin: answer.cabin, option, placed: result.placed });
    return views.find(({ side }) => side === 'left')?.afterDeg as number;
  };
  expect(afterDeg(true)).toBeGreaterThan(afterDeg(false) + 0.1);
});

describe('the stand-off a ring wants', () => {
  const input = usualRing(BODY, RING);

  test('with an aim that turns as the speaker comes forward, is the least that will do', () => {
    const at = (standoff: number) => {
      const speaker = onRing(standoff, { aim: { kind: 'point', point: [300, 200, 0] } });
      const cabin = cabinOf(planOf({}, [speaker]));
      const [placed] = placedIn(cabin, [speaker]);
      if (!placed?.axis || !placed.normal) return null;
      return { position: placed.position, axis: placed.axis, normal: placed.normal, standoff };
    };
    const least = ringStandoff(input, at) as number;
    expect(problems({}, onRing(least, { aim: { kind: 'point', point: [300, 200, 0] } }))).toEqual(
      [],
    );
    const less = problems(
      {},
      onRing(least - 0.3, { aim: { kind: 'point', point: [300, 200, 0] } }),
    );
    expect(less.map(({ kind }) => kind)).toEqual(['ring']);
  });

  test('is none where no stand-off helps', () => {
    expect(ringStandoff({ ...input, bore: 200 }, () => null)).toBeNull();
  });
});
