import { describe, expect, test } from 'vitest';
import { delayExport } from '../../src/exchange';
import type { Arrival, EarArrival } from '../../src/geometry';
import { evaluatePlan, isoSpeed, type PlanInput, type SpeakerInput } from '../../src/geometry';
import { spreadingDb } from '../../src/geometry/sound/level';
import { delaysFor } from '../../src/geometry/stage/delays';
import { pairDifference } from '../../src/geometry/stage/pairs';

/** Speed of the handbook examples, mm/ms. Source: ISO 9613-1:1993 at 20 °C. */
const C = isoSpeed(20);

const ear = (path: number): EarArrival => ({
  direct: path,
  path,
  time: path / C,
  line: 'clear',
  blockedBy: [],
  grazedBy: [],
});

const arrival = (speaker: string, path: number): Arrival => ({
  speaker,
  direct: path,
  path,
  time: path / C,
  offAxisDeg: null,
  offAxisHorizontalDeg: null,
  offAxisVerticalDeg: null,
  line: 'clear',
  blockedBy: [],
  grazedBy: [],
  way: [],
  round: [],
  detour: null,
  levelDb: spreadingDb(path),
  ears: { left: ear(path), right: ear(path) },
  bands: [],
  reflections: [],
});

const pair = { pair: 'mid', left: 'near', right: 'far' };
const arrivals = [arrival('near', 1000), arrival('far', 1400)];

describe('1000 mm against 1400 mm at 343.2 m/s', () => {
  // Source: t = d/c with c of ISO 9613-1 at 20 °C; computed: 400/343.2 = 1.1655 ms.
  test('the nearer speaker is delayed 1.1655 ms', () => {
    const [near, far] = delaysFor(arrivals, [pair], 48000);
    expect(Math.abs((near?.delay ?? 0) - 1.1655)).toBeLessThan(0.5e-4);
    expect(far?.delay).toBe(0);
  });

  // Source: the same times 48 samples a millisecond: 55.94.
  test('which is 55.94 samples at 48 kHz, set as 56', () => {
    const [near] = delaysFor(arrivals, [pair], 48000);
    expect(Math.abs((near?.samples ?? 0) - 55.94)).toBeLessThan(0.005);
    expect(Math.abs((near?.roundedDelay ?? 0) - 56 / 48)).toBeLessThan(1e-12);
    expect(Math.abs((near?.residual ?? 0) - (56 / 48 - 400 / C))).toBeLessThan(1e-12);
  });

  // Source: inverse square law, 20 lg(1400/1000) = 2.923 dB (Kinsler et al., Fundamentals of
  // Acoustics: spherical spreading).
  test('and the nearer speaker is 2.923 dB louder, taken off by its gain', () => {
    const difference = pairDifference(pair, new Map(arrivals.map((a) => [a.speaker, a])));
    expect(difference.difference).toBe(-400);
    expect(Math.abs((difference.differenceTime ?? 0) + 1.1655)).toBeLessThan(0.5e-4);
    expect(Math.abs((difference.levelDifferenceDb ?? 0) - 2.923)).toBeLessThan(0.0005);
    const [near, far] = delaysFor(arrivals, [pair], 48000);
    expect(Math.abs((near?.gainDb ?? 0) + 2.923)).toBeLessThan(0.0005);
    expect(far?.gainDb).toBe(0);
  });
});

describe('how far sound travels in one sample, at 343.2 m/s', () => {
  // Source: c / rate with c of ISO 9613-1 at 20 °C, computed to three digits.
  test.each([
    [44100, 7.782],
    [48000, 7.15],
    [96000, 3.575],
  ])('at %i Hz: %f mm', (rate, mm) => {
    const [near] = delaysFor([arrival('near', 1000), arrival('far', 1000 + mm)], [], rate);
    expect(Math.abs((near?.samples ?? 0) - 1)).toBeLessThan(0.0005 / mm + 1e-4);
  });

  // Source: 1/48000 s.
  test('one sample at 48 kHz is 20.833 µs', () => {
    const [near] = delaysFor([arrival('near', 1000), arrival('far', 1010)], [], 48000);
    const samples = Math.round(near?.samples ?? 0);
    expect(samples).toBe(1);
    expect(Math.abs((near?.roundedDelay ?? 0) * 1000 - 20.833)).toBeLessThan(0.0005);
  });
});

describe('the whole way: plan in, delay out', () => {
  const speaker = (id: string, side: 'left' | 'right', x: number): SpeakerInput => ({
    id,
    role: 'midrange',
    pair: 'mid',
    side,
    position: [x, 0, 0],
  });
  const plan: PlanInput = {
    air: { temperatureC: 23, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'front-left', head: [0, 0, 0] }],
    options: [
      { id: 'a', speakers: [speaker('near', 'left', -1000), speaker('far', 'right', -1400)] },
    ],
    alignment: { seat: 'front-left', sampleRateHz: 48000 },
  };

  // Source: 345.86652 m/s at 23 °C, 50 %, 101.325 kPa (IEC 61094-2:2009 Table F.1);
  // 400 / 345.86652 = 1.156515 ms, computed.
  test('400 mm at 23 °C is 1.15652 ms in result and export alike', () => {
    const answer = evaluatePlan(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const [result] = answer.options;
    const wanted = 400 / 345.86652;
    expect(Math.abs((result?.seats[0]?.delays[0]?.delay ?? 0) - wanted)).toBeLessThan(1e-5);
    const [option] = plan.options;
    if (!result || !option) throw new Error('no result');
    const stage = { plan, cabin: answer.cabin, option, result };
    const step = { kind: 'samples', rateHz: 48000 } as const;
    const exported = delayExport(stage, { for: { by: 'seat', seat: 'front-left' }, step });
    if ('problem' in exported) throw new Error(exported.problem);
    const { rows } = exported;
    expect(Math.abs((rows[0]?.delay.ms ?? 0) - wanted)).toBeLessThan(1e-5);
    expect(Math.abs((rows[0]?.delay.inches ?? 0) - 400 / 25.4)).toBeLessThan(1e-9);
  });
});
