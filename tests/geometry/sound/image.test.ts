import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mirrorY, type Side, type Vec3 } from '../../../src/geometry';
import {
  createImagePredictor,
  type ImageBand,
  type ImageSource,
  lateralAngleDeg,
} from '../../../src/geometry/sound/image';
import { spherePressure } from '../../../src/geometry/sound/sphere';
import { real } from '../arbitraries';

const predictor = createImagePredictor(343.2);
const OCTAVES = [125, 250, 500, 1000, 2000, 4000, 8000];
const ON = { delays: true, gains: true };
const EARS: Record<Side, Vec3> = { left: [0, -76, 0], right: [0, 76, 0] };
const around = (deg: number, r: number): Vec3 => [
  -r * Math.cos((deg * Math.PI) / 180),
  r * Math.sin((deg * Math.PI) / 180),
  0,
];
const source = (position: Vec3, delay = 0, gainDb = 0): ImageSource => ({
  position,
  delay,
  gainDb,
});
const angles = (bands: readonly ImageBand[]) => bands.map((band) => band.lateralDeg ?? Number.NaN);

/** A seat on the left with a near and a far speaker, and what aligns them. */
const NEAR: Vec3 = [-700, -300, -200];
const FAR: Vec3 = [-900, 1000, -200];
const [near, far] = [NEAR, FAR].map((p) => Math.hypot(...p)) as [number, number];
const ALIGNED = [
  source(NEAR, (far - near) / 343.2, 20 * Math.log10(near / far)),
  source(FAR, 0, 0),
];

describe('the image of a single speaker', () => {
  test('is where the speaker is: at every angle by time, up to 45° by level', () => {
    fc.assert(
      fc.property(real(-85, 85), real(900, 1200), (deg, r) => {
        for (const band of predictor.predict([source(around(deg, r))], EARS, OCTAVES, ON)) {
          if (band.cue === 'level' && Math.abs(deg) > 45) continue;
          expect(Math.abs((band.lateralDeg ?? 999) - deg)).toBeLessThan(3);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('is told from time below 1.5 kHz and from level above', () => {
    const bands = predictor.predict([source(around(20, 1000))], EARS, OCTAVES, ON);
    expect(bands.map((band) => band.cue)).toEqual([
      'time',
      'time',
      'time',
      'time',
      'level',
      'level',
      'level',
    ]);
    for (const { time, levelDb, coherence } of bands) {
      expect(time).toBeGreaterThan(0.15);
      expect(levelDb).toBeGreaterThan(0.5);
      expect(coherence).toBeGreaterThan(0.9);
    }
  });

  test('does not depend on its level, its delay, or where the car stands', () => {
    const at = around(25, 1000);
    const plain = angles(predictor.predict([source(at)], EARS, OCTAVES, ON));
    const other = angles(predictor.predict([source(at, 3, -17)], EARS, OCTAVES, ON));
    const shift = (p: Vec3): Vec3 => [p[0] + 1400, p[1] - 370, p[2] + 900];
    const moved = angles(
      predictor.predict(
        [source(shift(at))],
        { left: shift(EARS.left), right: shift(EARS.right) },
        OCTAVES,
        ON,
      ),
    );
    for (const [i, angle] of plain.entries()) {
      expect(Math.abs((other[i] ?? 999) - angle)).toBeLessThan(1e-3);
      expect(Math.abs((moved[i] ?? 999) - angle)).toBeLessThan(1e-3);
    }
  });

  test('turns with the head: what was ahead comes from the left of a head turned right', () => {
    const [x, y] = [Math.sin(Math.PI / 6) * 76, Math.cos(Math.PI / 6) * 76];
    // Facing 30° to the right of straight ahead (−X): the right ear moves rearward.
    const turned: Record<Side, Vec3> = { left: [-x, -y, 0], right: [x, y, 0] };
    expect(lateralAngleDeg(around(0, 1000), turned)).toBeCloseTo(-30, 9);
    for (const angle of angles(predictor.predict([source(around(0, 1000))], turned, OCTAVES, ON)))
      expect(Math.abs(angle + 30)).toBeLessThan(1);
  });
});

describe('the image of two speakers', () => {
  test('is in the middle when everything is alike on both sides', () => {
    fc.assert(
      fc.property(real(10, 80), real(500, 2000), (deg, r) => {
        const pair = [source(around(-deg, r)), source(around(deg, r))];
        for (const angle of angles(predictor.predict(pair, EARS, OCTAVES, ON)))
          expect(Math.abs(angle)).toBeLessThan(1e-3);
      }),
      { numRuns: 20 },
    );
  });

  test('changes sides when everything is mirrored', () => {
    fc.assert(
      fc.property(
        fc.tuple(real(-80, -10), real(10, 80), real(600, 1500), real(0, 0.2), real(-6, 0)),
        ([left, right, r, delay, gain]) => {
          const pair = [source(around(left, r), delay, gain), source(around(right, r))];
          const mirrored = pair.map((s) => ({ ...s, position: mirrorY(s.position) }));
          const [a, b] = [pair, mirrored].map((s) => predictor.predict(s, EARS, OCTAVES, ON));
          for (const [i, band] of (a ?? []).entries()) {
            // Of two equal peaks of the correlation one is taken: nothing is told then.
            if (band.cue === 'time' && Math.abs(band.time ?? 0) > 0.8) continue;
            expect(Math.abs((band.lateralDeg ?? 0) + (b?.[i]?.lateralDeg ?? 0))).toBeLessThan(0.01);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test('moves towards the louder one, the farther the louder it is', () => {
    let before = 0;
    for (const gain of [2, 4, 6, 9, 12]) {
      const pair = [source(around(-30, 1500), 0, -gain), source(around(30, 1500))];
      const [low] = angles(predictor.predict(pair, EARS, [250], ON));
      expect(low).toBeGreaterThan(before);
      before = low ?? 0;
    }
    expect(before).toBeLessThan(30);
  });

  test('delays bring the bass to within 5° of the middle of the two directions', () => {
    // By hand: two in phase and equally loud pull to the mean of the sines (Bauer 1961).
    const sines = [NEAR, FAR].map((p) =>
      Math.sin(((lateralAngleDeg(p, EARS) ?? 0) * Math.PI) / 180),
    );
    const middle = (Math.asin(((sines[0] ?? 0) + (sines[1] ?? 0)) / 2) * 180) / Math.PI;
    for (const angle of angles(predictor.predict(ALIGNED, EARS, [125, 250, 500], ON)))
      expect(Math.abs(angle - middle)).toBeLessThan(5);
  });

  test('with delays and gains off it is that of bare speakers', () => {
    const bare = ALIGNED.map(({ position }) => source(position));
    const off = predictor.predict(ALIGNED, EARS, OCTAVES, { delays: false, gains: false });
    expect(off).toEqual(predictor.predict(bare, EARS, OCTAVES, ON));
    expect(off).not.toEqual(predictor.predict(ALIGNED, EARS, OCTAVES, ON));
    const gainsOnly = ALIGNED.map((s) => ({ ...s, delay: 0 }));
    expect(predictor.predict(ALIGNED, EARS, OCTAVES, { delays: false, gains: true })).toEqual(
      predictor.predict(gainsOnly, EARS, OCTAVES, ON),
    );
  });

  test('directivity and obstruction count like a gain at that frequency', () => {
    const one = ALIGNED[0] as ImageSource;
    const byBand = [one, { ...source(FAR), levelDbAt: () => -8 }];
    const byGain = [one, source(FAR, 0, -8)];
    const [a, b] = [byBand, byGain].map((s) => angles(predictor.predict(s, EARS, OCTAVES, ON)));
    for (const [i, angle] of (a ?? []).entries())
      expect(Math.abs(angle - (b?.[i] ?? 999))).toBeLessThan(1e-6);
  });
});

describe('no image', () => {
  const reason = (sources: ImageSource[], ears = EARS) => {
    const [band] = predictor.predict(sources, ears, [500], ON);
    expect(band?.lateralDeg).toBe(null);
    return band?.reason;
  };
  test('comes with its reason', () => {
    expect(reason([])).toBe('no speaker plays this octave');
    expect(reason([source([0, 0, 0])])).toBe('a speaker is at the head');
    expect(reason([source([-90, 0, 0])])).toBe('a speaker is at the head');
    expect(reason([source(around(0, 1000))], { left: [0, 0, 0], right: [0, 0, 0] })).toBe(
      'both ears are in one place',
    );
    expect(lateralAngleDeg([0, 0, 0], EARS)).toBe(null);
  });

  // By hand: half a period of 250 Hz apart, the speakers cancel in front of the head.
  test('is told where two speakers reach the ears half a period apart', () => {
    const pair = [source(around(-30, 1000), 2), source(around(30, 1000))];
    const [band] = predictor.predict(pair, EARS, [250], ON);
    expect(band).toMatchObject({ lateralDeg: null, reason: expect.stringContaining('too little') });
    expect(band?.coherence).toBeLessThan(0.3);
  });

  test('a sphere with the source inside it is refused', () => {
    expect(() => spherePressure(87.5, 80, 1, 1000, 343.2)).toThrow('outside the sphere of 87.5 mm');
  });

  test('every number is finite, or null with a reason, wherever speakers stand', () => {
    const place = fc.tuple(real(-2000, 2000), real(-2000, 2000), real(-800, 800));
    fc.assert(
      fc.property(place, place, real(0, 6), real(-20, 0), (a, b, delay, gain) => {
        const pair = [source(a, delay, gain), source(b)];
        const octaves = [16, 31.5, 63, ...OCTAVES, 16000];
        for (const band of predictor.predict(pair, EARS, octaves, ON)) {
          if (band.lateralDeg === null) expect(band.reason).toBeTruthy();
          else {
            expect(Math.abs(band.lateralDeg)).toBeLessThanOrEqual(90);
            for (const value of [band.time, band.levelDb, band.coherence])
              expect(Number.isFinite(value)).toBe(true);
            expect(band.coherence).toBeLessThanOrEqual(1 + 1e-9);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
