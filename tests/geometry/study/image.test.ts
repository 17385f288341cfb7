import { describe, expect, test } from 'vitest';
import type { SpeakerInput, Vec3 } from '../../../src/geometry';
import type { ImageBand } from '../../../src/geometry/sound/image';
import { createImagePredictor } from '../../../src/geometry/sound/image';
import { fresnelNumber, obstructionDb } from '../../../src/geometry/sound/obstruction';
import { channelSettings, createImageStudy, type SeatImage } from '../../../src/geometry/study';
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

const study = createImageStudy();
const FRONT: SpeakerInput[] = [
  ...pairAt(TWEETER, [700, 650, 900]),
  ...pairAt(MIDRANGE, [600, 600, 700]),
  ...pairAt(MIDBASS, [500, 700, 400]),
];
const SEATS = [
  { id: 'middle', head: HEAD },
  { id: 'left', head: ASIDE },
];
const angles = (bands: readonly ImageBand[]) => bands.map((band) => band.lateralDeg ?? Number.NaN);
const octave = (bands: readonly ImageBand[], hz: number) =>
  bands.find((band) => band.frequencyHz === hz) as ImageBand;
const largest = (image: SeatImage, which: 'on' | 'off') =>
  Math.max(...angles(image[which]).map(Math.abs));

describe('the image of a centre-panned sound', () => {
  test('is in the middle of a symmetric car, with delays and without', () => {
    const image = study(stage(FRONT), 'middle');
    expect(image.octavesHz).toEqual([63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000]);
    for (const which of ['on', 'off'] as const) {
      expect(image[which].map((band) => band.frequencyHz)).toEqual(image.octavesHz);
      expect(largest(image, which)).toBeLessThan(1e-3);
    }
    expect(image.reasons).toBeUndefined();
  });

  test('is far to the near side without delays, and comes back with them', () => {
    const at = stage(FRONT, { seats: SEATS, alignment: aligned({ seat: 'left' }) });
    const image = study(at, 'left');
    const off = octave(image.off, 500);
    const on = octave(image.on, 500);
    expect(off.lateralDeg === null || off.lateralDeg < -30).toBe(true);
    expect(on.lateralDeg).toBeGreaterThan(-15);
    // At the seat the delays are not for they do not help.
    expect(octave(study(at, 'middle').on, 500).lateralDeg).not.toBeCloseTo(0, 0);
    expect(largest(study(at, 'middle'), 'off')).toBeLessThan(1e-3);
  });

  test('is the predictor’s, given positions, settings and what each speaker sends there', () => {
    const speakers = pairAt({ ...MIDRANGE, diaphragm: undefined }, [600, 600, 700]);
    const at = stage(speakers, { seats: SEATS, alignment: aligned({ seat: 'left' }) });
    const { channels } = channelSettings(at);
    const sources = speakers.map(({ position }, i) => ({
      position: position as Vec3,
      delay: channels[i]?.delay ?? 0,
      gainDb: channels[i]?.gainDb ?? 0,
    }));
    const ears = at.cabin.seats[1]?.ears ?? { left: HEAD, right: HEAD };
    const predictor = createImagePredictor(at.result.speedOfSound);
    const image = study(at, 'left');
    for (const [which, used] of [
      ['on', true],
      ['off', false],
    ] as const) {
      const settings = { delays: used, gains: used };
      for (const hand of predictor.predict(sources, ears, [500, 1000, 2000], settings))
        expect(octave(image[which], hand.frequencyHz)).toEqual(hand);
    }
  });

  test('changes sides when the car is mirrored', () => {
    const plain = planOf(FRONT, {
      seats: SEATS,
      alignment: aligned({ seat: 'left' }),
      obstacles: [{ id: 'box', shape: 'box', center: [1000, 250, 800], size: [200, 90, 300] }],
    });
    const [one, two] = [plain, mirrored(plain)].map((plan) => study(stageOf(plan), 'left'));
    for (const which of ['on', 'off'] as const)
      for (const [i, band] of (one?.[which] ?? []).entries()) {
        const other = two?.[which][i];
        if (band.lateralDeg === null) expect(other?.lateralDeg).toBe(null);
        else expect(Math.abs((other?.lateralDeg ?? 999) + band.lateralDeg)).toBeLessThan(0.01);
      }
  });

  test('leaves the side where something is in the way', () => {
    const obstacles = [
      {
        id: 'box',
        shape: 'box' as const,
        center: [1000, 300, 800] as Vec3,
        size: [200, 200, 600] as Vec3,
      },
    ];
    const at = stage(FRONT, { obstacles });
    const { line } =
      at.result.seats[0]?.arrivals.find((one) => one.speaker === 'tweeter-right') ?? {};
    expect(line).toBe('blocked');
    const off = octave(study(at, 'middle').off, 4000);
    expect(off.lateralDeg).toBeLessThan(-5);
  });

  test('counts that what goes round something comes later, and softer by the edge', () => {
    const size: Vec3 = [200, 300, 600];
    const obstacles = [
      { id: 'box', shape: 'box' as const, center: [1000, 300, 800] as Vec3, size },
    ];
    const speakers = pairAt({ ...MIDRANGE, diaphragm: undefined }, [600, 600, 700]);
    const at = stage(speakers, { obstacles });
    const speed = at.result.speedOfSound;
    const arrivals = at.result.seats[0]?.arrivals ?? [];
    expect(arrivals.map(({ line }) => line)).toEqual(['clear', 'blocked']);
    const sources = speakers.map(({ position }, i) => {
      const detour = arrivals[i]?.detour ?? 0;
      const loss = (f: number) =>
        detour > 0 ? -obstructionDb(fresnelNumber(detour, f, speed)) : 0;
      return { position: position as Vec3, delay: detour / speed, gainDb: 0, levelDbAt: loss };
    });
    const ears = at.cabin.seats[0]?.ears ?? { left: HEAD, right: HEAD };
    const predictor = createImagePredictor(speed);
    const hands = predictor.predict(sources, ears, [500, 1000, 2000], {
      delays: true,
      gains: true,
    });
    for (const hand of hands)
      expect(octave(study(at, 'middle').off, hand.frequencyHz)).toEqual(hand);
    const { channels } = channelSettings(at);
    const set = sources.map((source, i) => ({
      ...source,
      delay: source.delay + (channels[i]?.delay ?? 0),
      gainDb: channels[i]?.gainDb ?? 0,
    }));
    for (const hand of predictor.predict(set, ears, [500, 1000], { delays: true, gains: true }))
      expect(octave(study(at, 'middle').on, hand.frequencyHz)).toEqual(hand);
    // With the delays on both come together again: only the level is left.
    const late = octave(study(at, 'middle').off, 500).lateralDeg ?? -90;
    expect(octave(study(at, 'middle').on, 500).lateralDeg).toBeGreaterThan(late + 1);
  });

  test('is lost where one side’s poles are swapped', () => {
    const speakers = FRONT.map((one) => ({ ...one, inverted: one.side === 'left' }));
    const [plain, swapped] = [FRONT, speakers].map((all) =>
      octave(study(stage(all), 'middle').on, 500),
    ) as [ImageBand, ImageBand];
    expect(plain.coherence).toBeGreaterThan(0.99);
    expect(
      swapped.lateralDeg === null || Math.abs(swapped.lateralDeg) > 30 || swapped.atLimit,
    ).toBe(true);
    const both = FRONT.map((one) => ({ ...one, inverted: true }));
    expect(study(stage(both), 'middle').on).toEqual(study(stage(FRONT), 'middle').on);
  });

  test('does not depend on what was asked before, nor on a subwoofer, rear fill or centre', () => {
    const fresh = createImageStudy();
    const warm = { temperatureC: 35, relativeHumidityPercent: 0, pressureKPa: 101.325 };
    const first = fresh(stage(FRONT, { seats: SEATS }), 'left');
    fresh(stage(FRONT, { seats: SEATS, air: warm }), 'left');
    expect(fresh(stage(FRONT, { seats: SEATS }), 'left')).toEqual(first);
    const more = [
      ...FRONT,
      ...pairAt({ role: 'rear-fill', bandHz: [60, 20000] }, [2600, 600, 800], { position: HEAD }),
    ];
    const own = stage(more, { seats: SEATS, alignment: aligned({ seat: 'middle' }) });
    expect(angles(study(own, 'left').off)).toEqual(angles(first.off));
  });
});

describe('an image that cannot be told', () => {
  test('says that nothing plays an octave', () => {
    const image = study(stage(pairAt(TWEETER, [700, 650, 900])), 'middle');
    for (const band of image.on)
      if (band.frequencyHz < 2500)
        expect(band).toMatchObject({ lateralDeg: null, reason: 'no speaker plays this octave' });
      else expect(band.lateralDeg).not.toBe(null);
    for (const band of study(stage([]), 'middle').off) expect(band.reason).toContain('no speaker');
  });

  test('says that one of a pair is missing, and tells where the other one is', () => {
    const [, right] = pairAt(TWEETER, [700, 650, 1000]);
    const image = study(stage([right as SpeakerInput]), 'middle');
    expect(image.reasons).toEqual(['the left speaker of the pair "tweeter" is missing']);
    // By hand: 39° to the right.
    const angle = (Math.atan2(650, 800) * 180) / Math.PI;
    expect(Math.abs((octave(image.on, 4000).lateralDeg ?? 999) - angle)).toBeLessThan(3);
  });

  test('says that a band is missing or the responses do not cover what is asked', () => {
    const bare = pairAt({ ...TWEETER, bandHz: undefined }, [700, 650, 900]);
    expect(study(stage(bare), 'middle').reasons?.join()).toContain('no band');
    const responses = [0, 5].map((offAxisDeg) => ({
      offAxisDeg,
      frequencyHz: [2000, 20000],
      levelDb: [0, 0],
    }));
    const aside = { responses, aim: { kind: 'direction' as const, direction: [0, 1, 0] as Vec3 } };
    const image = study(stage(pairAt({ ...TWEETER, ...aside }, [700, 650, 900])), 'middle');
    expect(octave(image.on, 4000)).toMatchObject({
      lateralDeg: null,
      reason: expect.stringContaining('do not reach'),
    });
  });

  test('says that there is no such seat', () => {
    const image = study(stage(FRONT), 'boot');
    expect(image.reasons).toEqual(['there is no seat "boot" in this plan']);
    expect(image.on.every((band) => band.lateralDeg === null && band.reason)).toBe(true);
  });

  test('says that a speaker is at the head', () => {
    const at = stage(pairAt(TWEETER, [700, 650, 900], { position: HEAD }));
    expect(octave(study(at, 'middle').on, 4000)).toMatchObject({ lateralDeg: null });
    expect(octave(study(at, 'middle').on, 4000).reason).toContain('at the');
  });
});
