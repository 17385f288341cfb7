import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, type PanelInput, type SpeakerInput, type Vec3 } from '../../../src/geometry';
import { pistonDirectivityDb } from '../../../src/geometry/sound/directivity';
import { obstructionDb } from '../../../src/geometry/sound/obstruction';
import {
  type EarSound,
  earliestReflection,
  reflectogramAt,
  type Stage,
} from '../../../src/geometry/study';
import { real } from '../arbitraries';
import { HEAD, MIDRANGE, mirrored, pairAt, planOf, stage, stageOf, TWEETER } from './stages';

const BETA = 0.8;
const square = (id: string, corners: PanelInput['corners']): PanelInput => ({
  id,
  corners,
  reflectivity: BETA,
});
const FLOOR = square('floor', [
  [-500, -2000, 0],
  [3000, -2000, 0],
  [3000, 2000, 0],
  [-500, 2000, 0],
]);
const CEILING = square('ceiling', [
  [-500, -2000, 1500],
  [-500, 2000, 1500],
  [3000, 2000, 1500],
  [3000, -2000, 1500],
]);
const cabin = (...panels: PanelInput[]) => ({
  cabin: { template: 'none', wheelSide: 'left' as const, panels },
});
const SPEAKERS = pairAt({ ...MIDRANGE, diaphragm: undefined }, [600, 600, 700]);
const IDS = SPEAKERS.map(({ id }) => id);
const ears = (at: Stage) => at.cabin.seats[0]?.ears ?? { left: HEAD, right: HEAD };
const reflections = (sounds: readonly EarSound[]) =>
  sounds.filter(({ kind }) => kind === 'reflection');

describe('what reaches the ears', () => {
  const at = stage(SPEAKERS, cabin(FLOOR));
  const sounds = reflectogramAt(at, 'middle', IDS);

  test('is one direct sound for each speaker and ear, at 0 ms and 0 dB, and then the rest', () => {
    const first = sounds.filter(({ kind }) => kind === 'direct');
    expect(first.map(({ speaker, ear }) => `${speaker} ${ear}`)).toEqual([
      'midrange-left left',
      'midrange-left right',
      'midrange-right left',
      'midrange-right right',
    ]);
    for (const { time, levelDb, panel, firstNotchHz } of first)
      expect([time, levelDb, panel, firstNotchHz]).toEqual([0, 0, null, null]);
    expect(reflections(sounds)).toHaveLength(4);
  });

  // By hand: the image source stands as far under the floor as the speaker over it.
  test('has the floor’s reflection where its image source says, at each ear', () => {
    const speed = at.result.speedOfSound;
    for (const { speaker, ear, panel, time, path, levelDb, firstNotchHz } of reflections(sounds)) {
      const source = SPEAKERS.find(({ id }) => id === speaker)?.position as Vec3;
      const image: Vec3 = [source[0], source[1], -source[2]];
      const [direct, far] = [distance(source, ears(at)[ear]), distance(image, ears(at)[ear])];
      expect(panel).toBe('floor');
      expect(Math.abs(path - far)).toBeLessThan(1e-6);
      expect(Math.abs(time - (far - direct) / speed)).toBeLessThan(1e-9);
      const level = 20 * Math.log10((BETA * direct) / far);
      expect(Math.abs((levelDb ?? 0) - level)).toBeLessThan(1e-9);
      expect(Math.abs((firstNotchHz ?? 0) - 500 / time)).toBeLessThan(1e-6);
    }
  });

  test('counts the speaker’s directivity at the middle of its band', () => {
    const diaphragm = 130;
    const piston = stage(pairAt({ ...MIDRANGE, diaphragm }, [600, 600, 700]), cabin(FLOOR));
    const turned = reflections(reflectogramAt(piston, 'middle', IDS));
    const speed = piston.result.speedOfSound;
    const middle = Math.sqrt(300 * 2500);
    for (const [i, { ear, speaker, levelDb }] of turned.entries()) {
      const source = SPEAKERS.find(({ id }) => id === speaker)?.position as Vec3;
      const off = (to: Vec3) => {
        const [a, b] = [HEAD, to].map((p) => p.map((x, k) => x - (source[k] as number))) as [
          number[],
          number[],
        ];
        const product = a.reduce((sum, x, k) => sum + x * (b[k] as number), 0);
        const cosine = product / (Math.hypot(...a) * Math.hypot(...b));
        return (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
      };
      const ear3 = ears(piston)[ear];
      const loss =
        pistonDirectivityDb(diaphragm, middle, off([ear3[0], ear3[1], -ear3[2]]), speed) -
        pistonDirectivityDb(diaphragm, middle, off(ear3), speed);
      const plain = reflections(sounds)[i]?.levelDb ?? 0;
      expect(loss).toBeLessThan(-0.3);
      expect(Math.abs((levelDb ?? 0) - plain - loss)).toBeLessThan(1e-5);
    }
  });

  test('grows by ways over two panes of glass when they are asked for', () => {
    const both = stage(SPEAKERS, cabin(FLOOR, CEILING));
    const glass: Stage = {
      ...both,
      cabin: {
        ...both.cabin,
        panels: both.cabin.panels.map((panel) => ({ ...panel, material: 'glass' })),
      },
    };
    const [one, two] = [1, 2].map((order) =>
      reflectogramAt(glass, 'middle', IDS, order as 1 | 2),
    ) as [EarSound[], EarSound[]];
    const doubles = two.filter(({ second }) => second !== null);
    expect(two.filter(({ second }) => second === null)).toEqual(one);
    expect(doubles.map(({ panel, second }) => `${panel} ${second}`).sort()).toEqual([
      ...Array(4).fill('ceiling floor'),
      ...Array(4).fill('floor ceiling'),
    ]);
    for (const { time } of doubles) expect(time).toBeGreaterThan(0);
  });
});

describe('a direct sound with something in the way', () => {
  test('comes round it at 0 ms, softer by the edge’s loss at mid-band', () => {
    const obstacles = [
      {
        id: 'box',
        shape: 'box' as const,
        center: [1050, 300, 850] as Vec3,
        size: [200, 300, 300] as Vec3,
      },
    ];
    const at = stage(SPEAKERS, { ...cabin(FLOOR), obstacles });
    const speed = at.result.speedOfSound;
    const arrival = at.result.seats[0]?.arrivals[1];
    const sounds = reflectogramAt(at, 'middle', ['midrange-right']);
    for (const { ear, kind, time, levelDb, line, path, firstNotchHz } of sounds) {
      const direct = arrival?.ears[ear];
      if (!direct) throw new Error('no arrival');
      expect(direct.line).toBe('blocked');
      if (kind === 'direct') {
        const detour = direct.path - direct.direct;
        const fresnel = (2 * detour * Math.sqrt(300 * 2500)) / 1000 / speed;
        expect([time, line, path]).toEqual([0, 'blocked', direct.path]);
        expect(Math.abs((levelDb ?? 0) + obstructionDb(fresnel))).toBeLessThan(1e-9);
        expect(levelDb).toBeLessThan(-5);
      } else {
        expect(Math.abs(time - (path - direct.path) / speed)).toBeLessThan(1e-9);
        expect(Math.abs((firstNotchHz ?? 0) - 500 / time)).toBeLessThan(1e-6);
      }
    }
  });

  test('that only just misses it loses a little, at no time', () => {
    // The box's edge passes some 10 mm below the line to the head.
    const obstacles = [
      {
        id: 'box',
        shape: 'box' as const,
        center: [1050, 300, 650] as Vec3,
        size: [40, 600, 376] as Vec3,
      },
    ];
    const at = stage(SPEAKERS, { obstacles });
    const grazing = reflectogramAt(at, 'middle', ['midrange-right']).filter(
      ({ line }) => line === 'grazing',
    );
    expect(grazing.length).toBeGreaterThan(0);
    for (const { levelDb, time, path, ear } of grazing) {
      expect(levelDb).toBeLessThan(-1);
      expect(levelDb).toBeGreaterThan(-5);
      expect(time).toBe(0);
      expect(path).toBe(at.result.seats[0]?.arrivals[1]?.ears[ear].direct);
    }
  });
});

describe('a mirrored plan', () => {
  test('gives the other ear the other speaker’s sounds', () => {
    const where = fc.tuple(real(200, 1200), real(100, 700), real(200, 1200));
    fc.assert(
      fc.property(where, where, (p, q) => {
        const speakers = pairAt(TWEETER, p, { position: [q[0], -q[1], q[2]] });
        const plain = planOf(speakers, cabin(FLOOR, CEILING));
        const [one, two] = [plain, mirrored(plain)].map((plan) =>
          reflectogramAt(stageOf(plan), 'middle', ['tweeter-left', 'tweeter-right']),
        ) as [EarSound[], EarSound[]];
        expect(two).toHaveLength(one.length);
        for (const sound of one) {
          const other = two.find(
            ({ speaker, ear, panel }) =>
              speaker === sound.speaker && ear !== sound.ear && panel === sound.panel,
          );
          expect(Math.abs((other?.time ?? 999) - sound.time)).toBeLessThan(1e-6);
          expect(Math.abs((other?.levelDb ?? 999) - (sound.levelDb ?? 0))).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('a reflectogram that cannot be told', () => {
  test('is empty without speakers, without the seat, and for speakers that are not there', () => {
    const at = stage(SPEAKERS, cabin(FLOOR));
    expect(reflectogramAt(at, 'middle', [])).toEqual([]);
    expect(reflectogramAt(at, 'boot', IDS)).toEqual([]);
    expect(reflectogramAt(at, 'middle', ['drum'])).toEqual([]);
    expect(reflectogramAt(stage([], cabin(FLOOR)), 'middle', IDS)).toEqual([]);
  });

  test('is told at 1 kHz without a band', () => {
    const bare = SPEAKERS.map((one): SpeakerInput => ({ ...one, bandHz: undefined }));
    expect(reflections(reflectogramAt(stage(bare, cabin(FLOOR)), 'middle', IDS))).toHaveLength(4);
  });

  test('has a reason wherever a level is missing', () => {
    const responses = [0, 20].map((offAxisDeg) => ({
      offAxisDeg,
      frequencyHz: [100, 20000],
      levelDb: [0, 0],
    }));
    const narrow = stage(pairAt({ ...MIDRANGE, responses }, [600, 600, 700]), cabin(FLOOR));
    for (const { levelDb, reasons } of reflections(reflectogramAt(narrow, 'middle', IDS))) {
      expect(levelDb).toBe(null);
      expect(reasons?.join()).toContain('do not reach this way');
    }
    const [ear] = [ears(narrow).left];
    const inEar = stage(pairAt(MIDRANGE, ear), cabin(FLOOR));
    const there = reflectogramAt(inEar, 'middle', ['midrange-right']).find(
      (sound) => sound.ear === 'left' && sound.kind === 'direct',
    );
    expect(there).toMatchObject({ levelDb: null, time: 0 });
    expect(there?.reasons?.join()).toContain('at the speaker');
    const blind = pairAt({ ...MIDRANGE, aim: undefined }, [600, 600, 700]);
    const [plain] = reflections(reflectogramAt(stage(blind, cabin(FLOOR)), 'middle', IDS));
    expect(plain?.reasons?.join()).toContain('directivity is left out');
  });
});

describe('the earliest reflection', () => {
  test('is the one with the shortest way, and none where no panel throws any', () => {
    const arrival = stage(SPEAKERS, cabin(FLOOR, CEILING)).result.seats[0]?.arrivals[0];
    if (!arrival) throw new Error('no arrival');
    expect(arrival.reflections).toHaveLength(2);
    const shortest = Math.min(...arrival.reflections.map(({ path }) => path));
    expect(earliestReflection(arrival)?.path).toBe(shortest);
    const turned = { ...arrival, reflections: [...arrival.reflections].reverse() };
    expect(earliestReflection(turned)).toBe(earliestReflection(arrival));
    expect(earliestReflection({ ...arrival, reflections: [] })).toBe(null);
  });
});
