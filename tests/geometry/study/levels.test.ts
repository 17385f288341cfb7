import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OffAxisResponse, SpeakerInput, Vec3 } from '../../../src/geometry';
import { obstructionDb } from '../../../src/geometry/sound/obstruction';
import { levelsAt, type PairLevels } from '../../../src/geometry/study';
import { plan as anyPlan, real } from '../arbitraries';
import {
  HEAD,
  MIDBASS,
  MIDRANGE,
  mirrored,
  pairAt,
  planOf,
  stage,
  stageOf,
  TWEETER,
} from './stages';

const only = (levels: readonly PairLevels[]): PairLevels => {
  if (levels.length !== 1) throw new Error(`expected one pair, got ${levels.length}`);
  return levels[0] as PairLevels;
};
/** Where a speaker `r` mm from the head in the middle stands, `deg` to the right of ahead. */
const ahead = (deg: number, r: number): Vec3 => {
  const a = (deg * Math.PI) / 180;
  return [HEAD[0] - r * Math.cos(a), HEAD[1] + r * Math.sin(a), HEAD[2]];
};
/** An axis `deg` beside the direction from there to the head. */
const beside = (position: Vec3, deg: number): SpeakerInput['aim'] => {
  const a = (deg * Math.PI) / 180;
  const [x, y] = [HEAD[0] - position[0], HEAD[1] - position[1]];
  const direction: Vec3 = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a), 0];
  return { kind: 'direction', direction };
};
const at2k = (bands: PairLevels['left']) => bands.find((band) => band.frequencyHz === 2000);

describe('direct levels at a seat', () => {
  // By hand: 2 m is −6.021 dB, 1 m none; 130 mm at 2 kHz loses 1.586 dB at 30° (c 343.2).
  test('are distance and angle together, in the third-octaves of the band', () => {
    const [near, far] = [ahead(25, 1000), ahead(-25, 2000)];
    const [left, right] = pairAt({ ...MIDBASS, bandHz: [1000, 2500] }, near, {
      position: far,
      aim: beside(far, 30),
    });
    const levels = only(levelsAt(stage([left, right] as SpeakerInput[]), 'middle'));
    expect(levels.left.map((band) => band.frequencyHz)).toEqual([1000, 1250, 1600, 2000, 2500]);
    expect(Math.abs((at2k(levels.left)?.levelDb ?? 99) + 6.021 + 1.586)).toBeLessThan(0.005);
    expect(Math.abs(at2k(levels.right)?.levelDb ?? 99)).toBeLessThan(1e-9);
    const difference = levels.differences.find((band) => band.frequencyHz === 2000);
    expect(Math.abs((difference?.levelDb ?? 99) + 7.607)).toBeLessThan(0.005);
    expect(Math.abs((difference?.directivityDb ?? 99) + 1.586)).toBeLessThan(0.005);
    expect(levels.reasons).toBeUndefined();
  });

  test('lose to a box in the way what its edge takes, counted against the free line', () => {
    const speakers = pairAt({ ...MIDRANGE, diaphragm: undefined }, ahead(40, 1200));
    const at = stage(speakers, {
      obstacles: [{ id: 'box', shape: 'box', center: ahead(40, 600), size: [150, 150, 900] }],
    });
    const { left, right } = only(levelsAt(at, 'middle'));
    const blocked = at.result.seats[0]?.arrivals.find((one) => one.speaker === 'midrange-right');
    const detour = (blocked?.path ?? 0) - (blocked?.direct ?? 0);
    expect(blocked?.line).toBe('blocked');
    expect(detour).toBeGreaterThan(5);
    for (const band of right) {
      const fresnel = (2 * detour * band.frequencyHz) / 1000 / at.result.speedOfSound;
      expect(Math.abs((band.obstructionDb ?? 0) - obstructionDb(fresnel))).toBeLessThan(1e-9);
      expect(band.obstructionDb).toBeGreaterThan(5);
      const free = -20 * Math.log10(1.2);
      expect(Math.abs((band.levelDb ?? 0) - free + (band.obstructionDb ?? 0))).toBeLessThan(1e-9);
    }
    expect(left.every((band) => band.obstructionDb === 0)).toBe(true);
  });

  test('are the mean of their bands against the listening window', () => {
    const { left, windowDb, windowDifferenceDb } = only(
      levelsAt(
        stage(pairAt(TWEETER, ahead(25, 1000), { aim: beside(ahead(-25, 1000), 60) })),
        'middle',
      ),
    );
    const mean = left.reduce((sum, band) => sum + (band.windowDb ?? 99), 0) / left.length;
    expect(windowDb.left).toBeCloseTo(mean, 9);
    expect(windowDb.left).toBeLessThan(-3);
    expect(windowDb.right).toBeGreaterThan(0);
    expect(windowDifferenceDb).toBeCloseTo((windowDb.left ?? 0) - (windowDb.right ?? 0), 9);
  });

  test('of a mirrored plan are the other side’s levels', () => {
    const where = fc.tuple(real(200, 1200), real(100, 700), real(200, 1200));
    fc.assert(
      fc.property(where, where, where, (p, q, center) => {
        const speakers = [
          ...pairAt(MIDRANGE, p, { position: [q[0], -q[1], q[2]] }),
          ...pairAt(TWEETER, q),
        ];
        const obstacles = [
          { id: 'box', shape: 'box' as const, center, size: [150, 90, 120] as Vec3 },
        ];
        const plain = planOf(speakers, { obstacles });
        const [one, two] = [plain, mirrored(plain)].map((plan) =>
          levelsAt(stageOf(plan), 'middle'),
        );
        for (const [i, levels] of (one ?? []).entries())
          for (const [k, band] of levels.left.entries()) {
            const other = two?.[i]?.right[k];
            expect(Math.abs((other?.levelDb ?? 999) - (band.levelDb ?? 0))).toBeLessThan(1e-6);
            expect(two?.[i]?.beamingHz).toBe(levels.beamingHz);
          }
      }),
      { numRuns: 25 },
    );
  });

  test('swap when the speakers of a pair change their sides in name', () => {
    fc.assert(
      fc.property(anyPlan, (bare) => {
        const option = bare.options[0];
        if (!option) return;
        const speakers = option.speakers.map((speaker, i) => ({
          ...speaker,
          diaphragm: 30 + 20 * (i % 5),
          bandHz: [300, 4000] as const,
        }));
        const swapped = speakers.map((speaker) => ({
          ...speaker,
          side: speaker.side === 'left' ? ('right' as const) : ('left' as const),
        }));
        const [plain, other] = [speakers, swapped].map((all) =>
          levelsAt(stageOf({ ...bare, options: [{ ...option, speakers: all }] }), 'front-left'),
        ) as [PairLevels[], PairLevels[]];
        for (const [i, one] of plain.entries()) {
          const two = other[i] as PairLevels;
          expect(two.left).toEqual(one.right);
          expect(two.right).toEqual(one.left);
          expect(two.windowDifferenceDb).toBeCloseTo(-(one.windowDifferenceDb ?? 0), 9);
          for (const [k, band] of one.differences.entries())
            if (band.levelDb !== null)
              expect(two.differences[k]?.levelDb).toBeCloseTo(-band.levelDb, 9);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('where a speaker begins to beam', () => {
  const beaming = (unit: Partial<SpeakerInput>, left: Partial<SpeakerInput> = {}) =>
    only(levelsAt(stage(pairAt({ ...TWEETER, ...unit }, ahead(30, 1000), left)), 'middle'));

  // By hand: half power at 90° is ka = 1.61634, for 25 mm 7.06 kHz at 343.2 m/s.
  test('is told for the pair where both are alike, and for each where they differ', () => {
    const same = beaming({});
    expect(Math.abs((same.beamingHz ?? 0) - 7066)).toBeLessThan(5);
    const differ = beaming({}, { diaphragm: 50 });
    expect(differ.beamingHz).toBe(null);
    expect(differ.beaming.left).toBeCloseTo((differ.beaming.right ?? 0) / 2, 6);
  });

  test('is not told of a speaker without a diaphragm, and says why', () => {
    const { beaming: told, reasons } = beaming({ diaphragm: undefined });
    expect(told).toEqual({ left: null, right: null });
    expect(reasons?.[0]).toContain('neither its diaphragm nor measured responses');
  });

  const rows = (at90: readonly number[]): OffAxisResponse[] => [
    { offAxisDeg: 0, frequencyHz: [2000, 8000, 32000], levelDb: [0, 0, 0] },
    { offAxisDeg: 90, frequencyHz: [2000, 8000, 32000], levelDb: at90 },
  ];
  test('is read from measured responses: 3.01 dB at 90° is 3/4 of the way to 4 dB', () => {
    const { beamingHz } = beaming({ responses: rows([0, -4, -9]) });
    expect(Math.abs((beamingHz ?? 0) - 2000 * 4 ** (3.0103 / 4))).toBeLessThan(1);
  });
  test.each([
    [rows([-5, -6, -7]), 'already at the lowest'],
    [rows([0, -1, -2]), 'up to the highest'],
    [rows([0, -1, -2]).map((r) => ({ ...r, offAxisDeg: r.offAxisDeg / 2 })), 'do not reach 90°'],
  ])('is not guessed where the responses do not tell', (responses, why) => {
    expect(beaming({ responses }).reasons?.join()).toContain(why);
  });
});

describe('levels that cannot be told', () => {
  test('are none without speakers, pairs or the seat', () => {
    expect(levelsAt(stage([]), 'middle')).toEqual([]);
    expect(levelsAt(stage(pairAt(TWEETER, ahead(30, 1000))), 'boot')).toEqual([]);
    const loose = pairAt(TWEETER, ahead(30, 1000), { pair: undefined }).slice(0, 1);
    expect(levelsAt(stage(loose), 'middle')).toEqual([]);
  });

  test('say which speaker of a pair is missing', () => {
    const [left] = pairAt(TWEETER, ahead(30, 1000));
    const { right, differences, windowDb, reasons } = only(
      levelsAt(stage([left as SpeakerInput]), 'middle'),
    );
    expect([right, differences, windowDb.right]).toEqual([[], [], null]);
    expect(reasons).toEqual(['the right speaker of the pair "tweeter" is missing']);
  });

  test('say that a band is missing', () => {
    const speakers = pairAt({ ...TWEETER, bandHz: undefined }, ahead(30, 1000));
    const { left, right, reasons } = only(levelsAt(stage(speakers), 'middle'));
    expect([left, right]).toEqual([[], []]);
    expect(reasons?.join()).toContain('no band for the speaker "tweeter-left"');
  });

  test('say what is wrong with responses that do not cover the band or the angle', () => {
    const short: OffAxisResponse[] = [
      { offAxisDeg: 0, frequencyHz: [5000, 20000], levelDb: [0, 0] },
      { offAxisDeg: 60, frequencyHz: [5000, 20000], levelDb: [-3, -9] },
    ];
    const refused = only(
      levelsAt(stage(pairAt({ ...TWEETER, responses: short }, ahead(30, 1000))), 'middle'),
    );
    for (const band of [...refused.left, ...refused.right]) {
      expect(band.levelDb).toBe(null);
      expect(band.reason).toContain('does not cover the band from 2500 to 20000 Hz');
    }
    const narrow = short.map((r) => ({ ...r, frequencyHz: [2000, 20000] }));
    const wide = { aim: beside(ahead(-30, 1000), 70) };
    const { left, right } = only(
      levelsAt(stage(pairAt({ ...TWEETER, responses: narrow }, ahead(30, 1000), wide)), 'middle'),
    );
    expect(left[0]).toMatchObject({ levelDb: null, reason: expect.stringContaining('this angle') });
    expect(right[0]?.levelDb).not.toBe(null);
  });

  test('are not told of a speaker at the listener’s head', () => {
    fc.assert(
      fc.property(anyPlan, (bare) => {
        const speakers = bare.options[0]?.speakers.map((one) => ({
          ...one,
          bandHz: [100, 4000] as const,
          position: bare.seats?.[0]?.head,
        }));
        const at = stageOf(
          planOf(speakers ?? [], { seats: bare.seats, alignment: bare.alignment }),
        );
        for (const { left, right } of levelsAt(at, 'front-left'))
          for (const band of [...left, ...right]) {
            expect(band.levelDb).toBe(null);
            expect(band.reason).toContain('listener is at the speaker');
          }
      }),
      { numRuns: 5 },
    );
  });
});
