import { describe, expect, test } from 'vitest';
import { buildCabin, createFitter, type SpeakerInput } from '../../../src/geometry';
import { board, box, cabinOf, capsule, mid, placedIn, planOf, problems } from './boards';

const SMALL = { flange: 84, cutout: 75, depth: 42 };

describe('a speaker on a panel', () => {
  test('fits where outline, cut-out and depth leave room', () => {
    expect(
      problems({ measured: { board: { depthBehind: 60, airspaceBehind: 3 } } }, mid(SMALL)),
    ).toEqual([]);
  });

  // design: a 64 mm deep unit in a 60 mm pocket fails by 4 mm.
  test('64 mm deep in a pocket of 60 mm is 4 mm too deep, and a stand-off of 4 mm mends it', () => {
    const scene = { measured: { board: { depthBehind: 60 } } };
    const deep = { flange: 165, cutout: 142, depth: 64 };
    const [only, ...more] = problems(scene, mid(deep));
    expect(more).toEqual([]);
    expect(only).toMatchObject({ kind: 'depth', with: 'board', hard: false });
    expect(Math.abs((only?.by ?? 0) - 4)).toBeLessThan(1e-9);
    expect(only?.sentence).toBe('4 mm too deep for "board"');
    const raised = mid(deep, { mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 4 } });
    expect(problems(scene, raised)).toEqual([]);
  });

  test('a cut-out of 142 mm passes an opening of 150 mm and fails one of 140 mm', () => {
    const body = { flange: 142, cutout: 142, depth: 64 };
    expect(problems({ panels: [board(150)] }, mid(body))).toEqual([]);
    const failing = problems({ panels: [board(140)] }, mid(body));
    expect(failing.map(({ kind }) => kind)).toEqual(['outline', 'cutout']);
    // One on either side.
    for (const { by } of failing) expect(Math.abs((by ?? 0) - 1)).toBeLessThan(1e-9);
  });

  test('a flange over the edge is told by how far, in true millimetres', () => {
    const near = mid(SMALL, { mount: { panel: 'board', u: 30 / 600, v: 0.5 } });
    const [flange, cutout] = problems({}, near);
    expect(flange).toMatchObject({
      kind: 'outline',
      sentence: 'the flange reaches 12 mm over the edge of "board"',
    });
    expect(cutout?.by).toBeCloseTo(7.5, 9);
  });

  test('in a pod before the panel it needs no cut-out, no depth and no airspace', () => {
    const pod = mid(SMALL, { mount: { panel: 'board', u: 45 / 600, v: 0.5, standoff: 42 } });
    const scene = { measured: { board: { depthBehind: 0, airspaceBehind: 0 } } };
    expect(problems(scene, pod)).toEqual([]);
  });

  test('turned on its panel, its back corner reaches deeper than its straight depth', () => {
    const turned = mid(SMALL, {
      mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 10 },
      aim: { kind: 'direction', direction: [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6), 0] },
    });
    const [only] = problems({ measured: { board: { depthBehind: 40 } } }, turned);
    // 42 cos 30° + 37.5 sin 30° − 10 = 45.123.
    expect(only?.kind).toBe('depth');
    expect(only?.by).toBeCloseTo(5.123, 3);
  });

  test('airspace is short by what body and wish together need, in litres', () => {
    const body = { ...SMALL, airspaceLitres: 1 };
    const [only] = problems({ measured: { board: { airspaceBehind: 1.1 } } }, mid(body));
    // π/4 · 75² · 42 mm³ = 0.18555 l
    expect(only).toMatchObject({ kind: 'airspace' });
    expect(only?.by).toBeCloseTo(0.08555, 5);
    expect(problems({ measured: { board: { airspaceBehind: 1.2 } } }, mid(body))).toEqual([]);
  });

  test('nothing is mounted on a panel that is not for it, or is not there', () => {
    const glass = { ...board(600), mountable: false };
    expect(problems({ panels: [glass] }, mid(SMALL))).toMatchObject([
      { kind: 'no-panel', sentence: 'nothing can be mounted on "board"' },
    ]);
    const cabin = cabinOf(planOf({}, []));
    const lost = mid(SMALL, { mount: { panel: 'shelf', u: 0.5, v: 0.5 } });
    const [placed] = placedIn(cabin, [mid(SMALL)]);
    if (!placed) throw new Error('not placed');
    expect(createFitter(cabin)(lost, placed)).toMatchObject([{ kind: 'no-panel', with: 'shelf' }]);
  });

  test('a pod that runs into the panel next to its own does not fit', () => {
    // A pane that stands 30 mm before the upper part of the board.
    const pane = {
      id: 'pane',
      corners: [
        [30, -300, 0],
        [30, 300, 0],
        [30, 300, 300],
        [30, -300, 300],
      ],
    } as const;
    const pod = (standoff: number) =>
      mid(SMALL, {
        mount: { panel: 'board', u: 0.5, v: 0.5, standoff },
        aim: { kind: 'direction', direction: [1, 0.2, 0] },
      });
    expect(problems({ panels: [board(600), pane] }, pod(30))).toMatchObject([
      { kind: 'obstacle', with: 'pane' },
    ]);
    expect(problems({ panels: [board(600), pane] }, pod(15))).toEqual([]);
  });
});

describe('a flange on a curved panel', () => {
  test('lifts off by the panel’s own bow under it', () => {
    const answer = buildCabin({ cabin: { template: 'compact-hatch', wheelSide: 'left' } });
    if (!answer.ok) throw new Error(answer.error.message);
    const arched = answer.cabin.panels[0];
    if (!arched) throw new Error('no panel');
    // An arc of radius 500 over 200 mm, as near as a parabola is one: 10 mm high.
    const control = [-100, 0, 100].flatMap((y) =>
      [-300, 0, 300].map((z) => [y === 0 ? 10 : -10, y, z] as const),
    );
    const panel = {
      ...arched,
      id: 'board',
      name: 'board',
      patch: { control, facing: 1 as const },
      mountable: true,
      depthBehind: null,
      airspaceBehind: null,
    };
    const cabin = { ...cabinOf(planOf({}, [])), panels: [panel] };
    const fitter = createFitter(cabin);
    const ask = (flange: number, standoff = 0) => {
      const speaker = mid(
        { flange, cutout: flange - 10, depth: 30 },
        { mount: { panel: 'board', u: 0.5, v: 0.5, standoff } },
      );
      const [placed] = placedIn(cabin, [speaker]);
      if (!placed) throw new Error('not placed');
      return fitter(speaker, placed);
    };
    // r²/2R: 1.6 mm under 80 mm, 3.6 under 120 mm; 2 mm are taken up.
    expect(ask(80)).toEqual([]);
    const [lifted] = ask(120);
    expect(lifted?.kind).toBe('curvature');
    expect(lifted?.by).toBeCloseTo(1.6, 6);
    // A ring of two millimetres takes up the rest.
    expect(ask(120, 2)).toEqual([]);
  });
});

describe('what stands in the way', () => {
  test('a knee is met by the flange, and told by how far the speaker must go back', () => {
    // A thigh across the board whose near side is 20 mm before it.
    const knee = capsule('knee', [80, -300, 0], [80, 300, 0], 60);
    const pod = mid(SMALL, { mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 28 } });
    const [only, ...more] = problems({ obstacles: [knee] }, pod);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ kind: 'obstacle', with: 'knee', hard: false });
    expect(Math.abs((only?.by ?? 0) - 8)).toBeLessThan(0.1);
    const flush = mid(SMALL, { mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 19 } });
    expect(problems({ obstacles: [knee] }, flush)).toEqual([]);
  });

  test('a steering wheel lets a speaker look through it but not stand in its rim', () => {
    const wheel = {
      id: 'wheel',
      shape: 'ring' as const,
      center: [0, 0, 0] as const,
      axis: [1, 0, 0] as const,
      diameter: 340,
      thickness: 32,
    };
    expect(problems({ obstacles: [wheel] }, mid(SMALL))).toEqual([]);
    const atRim = mid(SMALL, { mount: { panel: 'board', u: 0.5, v: 0.5 + 140 / 600 } });
    expect(problems({ obstacles: [wheel] }, atRim)).toMatchObject([{ kind: 'obstacle' }]);
  });

  test('a body that swallows a small thing whole still meets it', () => {
    const bolt = box('bolt', [-20, 5, 5], [6, 6, 6]);
    expect(problems({ obstacles: [bolt] }, mid(SMALL))).toMatchObject([{ with: 'bolt' }]);
  });

  test('a body wholly inside a zone is in it, and nothing overrides that', () => {
    const bag = { ...box('bag', [0, 0, 0], [300, 300, 300]), reason: 'airbag' };
    expect(problems({ keepClear: [bag] }, mid(SMALL))).toMatchObject([
      {
        kind: 'zone',
        with: 'bag',
        hard: true,
        sentence: 'reaches 150 mm along its axis into the place kept clear for "bag": not here',
      },
    ]);
  });

  test('without a known body the spot alone is tried', () => {
    const bag = { ...box('bag', [-20, 0, 0], [30, 300, 300]), reason: 'airbag' };
    const { body: _, ...unknown } = mid(SMALL);
    expect(problems({ keepClear: [bag] }, unknown)).toEqual([]);
    const inside = mid(SMALL, { mount: { panel: 'board', u: 0.5, v: 0.5 } });
    expect(problems({ keepClear: [bag] }, inside)).toMatchObject([{ kind: 'zone' }]);
  });
});

describe('speakers beside each other', () => {
  const tweeter = (gap: number): SpeakerInput => ({
    id: 'tweeter',
    role: 'tweeter',
    side: 'left',
    mount: { panel: 'board', u: 0.5 + gap / 600, v: 0.5 },
    body: { flange: 50, cutout: 45, depth: 18 },
  });

  test('collide when their flanges overlap', () => {
    expect(problems({}, mid(SMALL), tweeter(66))).toMatchObject([
      { kind: 'speaker', with: 'tweeter' },
    ]);
    expect(problems({}, mid(SMALL), tweeter(68))).toEqual([]);
  });

  test('collide by their cut-outs where these are wider than the flanges', () => {
    const wide = { flange: 40, cutout: 80, depth: 30 };
    expect(problems({}, mid(wide), { ...tweeter(60), body: wide })).toMatchObject([
      { kind: 'speaker', with: 'tweeter' },
    ]);
    expect(problems({}, mid(wide), { ...tweeter(81), body: wide })).toEqual([]);
  });

  test('and each of the two says so', () => {
    expect(problems({}, tweeter(60), mid(SMALL))).toMatchObject([{ kind: 'speaker', with: 'mid' }]);
  });

  test('a twin that moves along is asked for with the spot', () => {
    const plan = planOf({}, []);
    const cabin = cabinOf(plan);
    const speakers = [mid(SMALL), tweeter(60)];
    const [first, second] = placedIn(cabin, speakers);
    if (!first || !second) throw new Error('not placed');
    const fitter = createFitter(cabin);
    expect(fitter(mid(SMALL), first)).toEqual([]);
    const beside = [{ speaker: tweeter(60), placed: second }];
    expect(fitter(mid(SMALL), first, beside)).toMatchObject([{ kind: 'speaker' }]);
    expect(fitter.fits(mid(SMALL), first, beside)).toBe(false);
  });
});

describe('a seat over the whole of its travel', () => {
  const answer = buildCabin({ cabin: { template: 'compact-hatch', wheelSide: 'left' } });
  if (!answer.ok) throw new Error(answer.error.message);
  const { cabin } = answer;

  test('is in the way ahead of where it stands now, up to where its rails end', () => {
    const seat = cabin.seats.find(({ id }) => id === 'front-left');
    const shape = cabin.obstacles.find(({ id }) => id === 'seat-front-left')?.shape;
    if (!seat?.slideRange || shape?.shape !== 'mesh') throw new Error('no seat on rails');
    const front = Math.min(...shape.vertices.map(([x]) => x));
    const nose = shape.vertices.find(([x]) => x === front);
    if (!nose) throw new Error('no front');
    const fitter = createFitter(cabin);
    const at = (x: number) => {
      const speaker: SpeakerInput = {
        id: 'post',
        role: 'midrange',
        position: [x, nose[1], nose[2] + 20],
        aim: { kind: 'direction', direction: [0, 0, 1] },
        body: { flange: 2, cutout: 2, depth: 40 },
      };
      const [placed] = placedIn(cabin, [speaker]);
      if (!placed) throw new Error('not placed');
      return fitter(speaker, placed).filter((p) => p.with === 'seat-front-left');
    };
    const [travel] = seat.slideRange;
    expect(travel).toBeLessThan(-20);
    expect(at(front + travel - 5)).toEqual([]);
    const [met] = at(front + travel + 15);
    expect(met?.sentence).toMatch(/into the front left seat, somewhere on its travel$/);
    expect(at(front + travel / 2)).toHaveLength(1);
  });
});
