import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CrossoverInput, SpeakerInput, Vec3 } from '../../../src/geometry';
import { obstructionDb } from '../../../src/geometry/sound/obstruction';
import { type SideSum, sumsAt } from '../../../src/geometry/study';
import { real } from '../arbitraries';
import {
  ASIDE,
  aligned,
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

/** Both on their axes and a metre from the head: the tweeter above, the midrange ahead. */
const LEVEL: SpeakerInput[] = [
  ...pairAt(TWEETER, [HEAD[0] - 600, 0.001, HEAD[2] + 800]),
  ...pairAt(MIDRANGE, [HEAD[0] - 600, 800, HEAD[2]]),
];
const over = (more: Partial<CrossoverInput> = {}): CrossoverInput => ({
  below: 'midrange',
  above: 'tweeter',
  family: 'linkwitz-riley',
  order: 4,
  frequencyHz: 2500,
  ...more,
});
const withPoles = (ids: readonly string[], inverted = true) =>
  LEVEL.map((speaker) => (ids.includes(speaker.id) ? { ...speaker, inverted } : speaker));
const asked = (speakers: readonly SpeakerInput[], crossover?: CrossoverInput, more = {}) =>
  sumsAt(stage(speakers, { option: { crossovers: crossover && [crossover] }, ...more }), 'middle');
const side = (sums: readonly SideSum[], which: SideSum['side']) =>
  sums.find((sum) => sum.side === which) as SideSum;
const deviation = (sum: SideSum) => sum.result?.atCrossover.deviationDb ?? Number.NaN;

describe('a tweeter and a midrange at their crossover', () => {
  test.each([
    ['linkwitz-riley', 2],
    ['linkwitz-riley', 4],
    ['linkwitz-riley', 8],
    ['butterworth', 3],
    ['butterworth', 4],
  ] as const)(
    'that arrive together are ideal all along the curve: %s of order %i',
    (family, order) => {
      const sums = asked(LEVEL, over({ family, order }));
      expect(sums.map((sum) => [sum.side, sum.low, sum.high])).toEqual([
        ['left', 'midrange-left', 'tweeter-left'],
        ['right', 'midrange-right', 'tweeter-right'],
      ]);
      for (const { late, result, reasons } of sums) {
        expect(Math.abs(late ?? 99)).toBeLessThan(1e-6);
        expect(result?.nulls).toEqual([]);
        expect(result?.curve.length).toBeGreaterThan(100);
        for (const { deviationDb } of result?.curve ?? [])
          expect(Math.abs(deviationDb)).toBeLessThan(1e-6);
        expect(reasons).toBeUndefined();
      }
      // Linkwitz-Riley: −6.02 dB each at the crossover; both a metre off on their axes.
      if (family === 'linkwitz-riley') {
        expect(Math.abs((sums[0]?.result?.atCrossover.lowDb ?? 0) + 6.0206)).toBeLessThan(1e-3);
        expect(Math.abs((sums[0]?.result?.atCrossover.highDb ?? 0) + 6.0206)).toBeLessThan(1e-3);
      }
    },
  );

  test('cancel with one speaker’s poles swapped, and not with both', () => {
    expect(deviation(side(asked(withPoles(['tweeter-left']), over()), 'left'))).toBeLessThan(-60);
    expect(deviation(side(asked(withPoles(['tweeter-left']), over()), 'right'))).toBeGreaterThan(
      -1e-6,
    );
    const both = withPoles(['tweeter-left', 'midrange-left']);
    expect(Math.abs(deviation(side(asked(both, over()), 'left')))).toBeLessThan(1e-6);
  });

  test('with 12 dB per octave cancel when the poles are not swapped', () => {
    const second = over({ order: 2 });
    expect(Math.abs(deviation(side(asked(LEVEL, second), 'left')))).toBeLessThan(1e-6);
    const straight = withPoles(['tweeter-left'], false);
    expect(deviation(side(asked(straight, second), 'left'))).toBeLessThan(-60);
  });

  test('of three ways keep in step: swapped below, the upper one follows', () => {
    const speakers = [...LEVEL, ...pairAt(MIDBASS, [HEAD[0] - 600, 0.001, HEAD[2] - 800])];
    const crossovers = [
      over(),
      over({ below: 'midbass', above: 'midrange', order: 2, frequencyHz: 300 }),
    ];
    const sums = sumsAt(stage(speakers, { option: { crossovers } }), 'middle');
    expect(sums.map(({ crossing }) => crossing.crossover.below)).toEqual([
      'midbass',
      'midbass',
      'midrange',
      'midrange',
    ]);
    for (const sum of sums) expect(Math.abs(deviation(sum))).toBeLessThan(1e-4);
  });
});

describe('the delays', () => {
  test('make up for a tweeter that stands farther off, but for half a sample', () => {
    const tweeters = pairAt(TWEETER, [HEAD[0] - 820, 0.001, HEAD[2] + 800]);
    const speakers = [...LEVEL.filter(({ role }) => role !== 'tweeter'), ...tweeters];
    for (const sum of asked(speakers, over())) {
      expect(Math.abs(sum.late ?? 99)).toBeLessThan(0.5 / 48);
      expect(Math.abs(deviation(sum))).toBeLessThan(0.2);
    }
  });

  // The seat beside the aligned one hears what its own distances leave.
  test('of another seat leave what the distances differ by there', () => {
    const seats = [
      { id: 'middle', head: HEAD },
      { id: 'aside', head: ASIDE },
    ];
    const at = stage(LEVEL, { seats });
    const speed = at.result.speedOfSound;
    const path = (id: string) =>
      at.result.seats[1]?.arrivals.find(({ speaker }) => speaker === id)?.path ?? Number.NaN;
    for (const { side: which, late } of sumsAt(at, 'aside')) {
      const hand = (path(`tweeter-${which}`) - path(`midrange-${which}`)) / speed;
      expect(Math.abs((late ?? 99) - hand)).toBeLessThan(1e-6);
      expect(Math.abs(hand)).toBeGreaterThan(0.2);
    }
  });

  // By hand: at the crossover both filters are −6.02 dB, so half a wavelength late leaves
  // 20 lg(|1 − r|/(1 + r)) of the ideal, r the ratio of the levels; swapped poles restore it.
  test('that leave half a wavelength turn the sum at the crossover over', () => {
    const seats = [
      { id: 'middle', head: HEAD },
      { id: 'aside', head: ASIDE },
    ];
    const plain = stage(LEVEL, { seats });
    const late = side(sumsAt(plain, 'aside'), 'right').late as number;
    // The frequency at which what is left is half a wavelength.
    const crossovers = [over({ frequencyHz: 500 / Math.abs(late) })];
    const at = stage(LEVEL, { seats, option: { crossovers } });
    const sum = side(sumsAt(at, 'aside'), 'right');
    const { lowDb, highDb } = sum.result?.atCrossover ?? { lowDb: 0, highDb: 0 };
    const r = 10 ** ((highDb - lowDb) / 20);
    const hand = 20 * Math.log10(Math.abs(1 - r) / (1 + r));
    expect(Math.abs(deviation(sum) - hand)).toBeLessThan(1e-3);
    expect(deviation(sum)).toBeLessThan(-9);
    const swapped = stage(withPoles(['tweeter-right']), { seats, option: { crossovers } });
    expect(Math.abs(deviation(side(sumsAt(swapped, 'aside'), 'right')))).toBeLessThan(1e-6);
  });

  test('of a compromise count when the plan asks for one', () => {
    const seats = [
      { id: 'middle', head: HEAD },
      { id: 'aside', head: ASIDE },
    ];
    const [one, both] = [aligned({ seat: 'middle' }), aligned({ by: 'seats' })].map((alignment) =>
      sumsAt(stage(LEVEL, { seats, alignment }), 'aside'),
    ) as [SideSum[], SideSum[]];
    expect(Math.abs(side(both, 'right').late ?? 99)).toBeLessThan(
      Math.abs(side(one, 'right').late ?? 0),
    );
  });
});

describe('the gains', () => {
  test('bring both sides to one level at the seat they are for, and show in the sum', () => {
    const speakers = LEVEL.map((speaker) => ({ ...speaker, diaphragm: undefined }));
    const seats = [{ id: 'middle', head: ASIDE }];
    const at = stage(speakers, { seats, option: { crossovers: [over()] } });
    const delays = at.result.seats[0]?.delays ?? [];
    expect(delays.find(({ speaker }) => speaker === 'midrange-left')?.gainDb).toBeLessThan(-2);
    const [left, right] = sumsAt(at, 'middle').map((sum) => sum.result?.atCrossover);
    expect(Math.abs((left?.lowDb ?? 99) - (right?.lowDb ?? 0))).toBeLessThan(1e-9);
    const far = at.result.seats[0]?.arrivals.find(({ speaker }) => speaker === 'midrange-right');
    expect(Math.abs((right?.lowDb ?? 99) + 6.0206 - (far?.levelDb ?? 0))).toBeLessThan(1e-3);
  });
});

describe('sums of a mirrored plan', () => {
  const where = fc.tuple(real(200, 1200), real(100, 700), real(200, 1300));
  test('are the other side’s', () => {
    fc.assert(
      fc.property(where, where, where, (p, q, center) => {
        const speakers = [
          ...pairAt(TWEETER, p, { position: [q[0], -q[1], p[2]] }),
          ...pairAt(MIDRANGE, q),
        ];
        const obstacles = [
          { id: 'box', shape: 'box' as const, center, size: [90, 80, 70] as Vec3 },
        ];
        const plain = planOf(speakers, { obstacles });
        const [one, two] = [plain, mirrored(plain)].map((plan) => sumsAt(stageOf(plan), 'middle'));
        for (const sum of one ?? []) {
          const other = side(two ?? [], sum.side === 'left' ? 'right' : 'left');
          expect(other.result === null).toBe(sum.result === null);
          if (sum.result === null) continue;
          const [a, b] = [sum.result.atCrossover, other.result?.atCrossover];
          expect(Math.abs((b?.sumDb ?? 999) - a.sumDb)).toBeLessThan(1e-5);
          expect(Math.abs((other.late ?? 999) - (sum.late ?? 0))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('what stands in the way', () => {
  test('is taken off frequency by frequency, from the speaker it stands before', () => {
    const size: Vec3 = [120, 120, 120];
    const center: Vec3 = [HEAD[0] - 300, 400, HEAD[2]];
    const obstacles = [{ id: 'box', shape: 'box' as const, size, center }];
    const at = stage(LEVEL, { option: { crossovers: [over()] }, obstacles });
    const arrival = at.result.seats[0]?.arrivals.find(
      ({ speaker }) => speaker === 'midrange-right',
    );
    expect(arrival?.line).toBe('blocked');
    const blocked = side(sumsAt(at, 'middle'), 'right').result?.curve ?? [];
    const free = side(asked(LEVEL, over()), 'right').result?.curve ?? [];
    expect(blocked.length).toBeGreaterThan(100);
    for (const { frequencyHz, lowDb, highDb } of blocked) {
      const plain = free.find((one) => one.frequencyHz === frequencyHz);
      if (!plain) throw new Error(`expected ${frequencyHz} Hz on both curves`);
      const fresnel = (2 * (arrival?.detour ?? 0) * frequencyHz) / 1000 / at.result.speedOfSound;
      expect(Math.abs(plain.lowDb - lowDb - obstructionDb(fresnel))).toBeLessThan(1e-9);
      expect(highDb).toBe(plain.highDb);
    }
  });
});

describe('sums that cannot be told', () => {
  const reasons = (sums: readonly SideSum[]) => sums.map((sum) => sum.reasons?.join());

  test('are none without speakers or where no bands meet', () => {
    expect(sumsAt(stage([]), 'middle')).toEqual([]);
    expect(sumsAt(stage(pairAt(TWEETER, [700, 600, 900])), 'middle')).toEqual([]);
    const bare = LEVEL.map((speaker) => ({ ...speaker, bandHz: undefined }));
    expect(sumsAt(stage(bare), 'middle')).toEqual([]);
  });

  test('say that a speaker of that side is missing; the other side is told', () => {
    const sums = asked(LEVEL.filter(({ id }) => id !== 'tweeter-left'));
    expect(side(sums, 'left')).toMatchObject({ result: null, late: null, high: null });
    expect(side(sums, 'left').reasons).toEqual([
      'the left speaker of the pair "tweeter" is missing',
    ]);
    expect(side(sums, 'right').result).not.toBe(null);
  });

  test('say that there is no such pair or seat, and what is wrong with the filter', () => {
    const lost = sumsAt(
      stage(LEVEL, { option: { crossovers: [over({ below: 'drums' })] } }),
      'middle',
    );
    expect(lost[0]?.reasons).toEqual(['there is no pair "drums" in this option']);
    expect(reasons(sumsAt(stage(LEVEL), 'boot'))).toEqual([
      'there is no seat "boot" in this plan',
      'there is no seat "boot" in this plan',
    ]);
    for (const sum of asked(LEVEL, over({ order: 5 }))) {
      expect(sum.result).toBe(null);
      expect(sum.reasons?.join()).toContain('even');
    }
  });

  test('say why a speaker has no level: at the head, without an axis, responses that fail', () => {
    const change = (more: Partial<SpeakerInput>) =>
      LEVEL.map((one) => (one.id === 'tweeter-left' ? { ...one, ...more } : one));
    const left = (more: Partial<SpeakerInput>) => side(asked(change(more), over()), 'left');
    expect(
      left({ position: HEAD, aim: { kind: 'direction', direction: [1, 0, 0] } }),
    ).toMatchObject({
      result: null,
    });
    expect(left({ aim: undefined }).reasons?.join()).toContain('no angle to the listener');
    expect(left({ aim: undefined, diaphragm: undefined }).result).not.toBe(null);
    const responses = [{ offAxisDeg: 10, frequencyHz: [100, 20000], levelDb: [0, 0] }];
    expect(left({ responses }).reasons?.join()).toContain(
      'the response on the axis (0°) is missing',
    );
  });

  test('say where measured responses end beside the curve, and keep their last level there', () => {
    const responses = [0, 90].map((offAxisDeg) => ({
      offAxisDeg,
      frequencyHz: [2500, 20000],
      levelDb: [0, offAxisDeg === 90 ? -6 : 0],
    }));
    // Across the line to the head: at 90°, where the lowest level measured is 0 dB.
    const aim = { kind: 'direction' as const, direction: [0, 1, 0] as Vec3 };
    const speakers = LEVEL.map((one) =>
      one.role === 'tweeter' ? { ...one, position: [900, 0, 1800] as Vec3, responses, aim } : one,
    );
    const lower = responses.map((one) => ({
      ...one,
      levelDb: one.levelDb.map((level) => level - (one.offAxisDeg === 90 ? 3 : 0)),
    }));
    const softer = speakers.map((one) => (one.responses ? { ...one, responses: lower } : one));
    const [plain, soft] = [speakers, softer].map((all) => asked(all, over()));
    for (const [i, sum] of (plain ?? []).entries()) {
      expect(Math.abs(deviation(sum))).toBeLessThan(1e-6);
      expect(sum.reasons?.join()).toContain('run from 2500 to 20000 Hz');
      for (const [k, { highDb }] of (sum.result?.curve ?? []).entries()) {
        const other = soft?.[i]?.result?.curve[k]?.highDb ?? Number.NaN;
        if (highDb > -90) expect(Math.abs(highDb - 3 - other)).toBeLessThan(1e-6);
      }
    }
  });

  test('do without delays where there is no compromise, and say so', () => {
    const alignment = aligned({ by: 'seats', seats: [{ id: 'boot', weight: 1 }] });
    for (const sum of asked(LEVEL, over(), { alignment })) {
      expect(sum.result).not.toBe(null);
      expect(sum.reasons).toEqual([
        'without delays and gains: there is no seat "boot" in this plan',
      ]);
    }
  });
});
