import { describe, expect, test } from 'vitest';
import { distance, evaluatePlan, type Vec3 } from '../../src/geometry';
import { modulus } from '../../src/geometry/sound/complex';
import { createImagePredictor } from '../../src/geometry/sound/image';
import {
  HEAD_RADIUS,
  kuhnTime,
  tangentLawDb,
  tangentLawDeg,
  woodworthTime,
} from '../../src/geometry/sound/interaural';
import { spherePressure } from '../../src/geometry/sound/sphere';

/** The speed at which the worked values were computed, mm/ms. */
const SPEED = 343.2;
const microseconds = (ms: number) => ms * 1000;
const cosine = (deg: number) => Math.cos((deg * Math.PI) / 180);
/** `r` from the middle of the head, `deg` to the right of straight ahead. */
const around = (deg: number, r: number): Vec3 => [
  -r * cosine(deg),
  r * Math.sin((deg * Math.PI) / 180),
  0,
];

describe('time between the ears', () => {
  // Source: Woodworth & Schlosberg (1954), (a/c)(θ + sin θ), a = 87.5 mm.
  test.each([
    [30, 261.0],
    [90, 655.4],
    [-30, -261.0],
    [150, 261.0],
    [0, 0],
  ])('at high frequencies, sound from %f°: %f µs', (deg, us) => {
    const time = microseconds(woodworthTime(deg, HEAD_RADIUS, SPEED));
    expect(Math.abs(time - us)).toBeLessThan(0.06);
  });

  // Source: G. F. Kuhn, J. Acoust. Soc. Am. 62 (1977), 3(a/c) sin θ.
  test.each([
    [30, 382.4],
    [90, 764.9],
    [-90, -764.9],
    [150, 382.4],
    [180, 0],
  ])('at low frequencies, sound from %f°: %f µs', (deg, us) => {
    expect(Math.abs(microseconds(kuhnTime(deg, HEAD_RADIUS, SPEED)) - us)).toBeLessThan(0.06);
  });
});

describe('pressure on a rigid sphere', () => {
  // Source: Duda & Martens, J. Acoust. Soc. Am. 104 (1998), eq. for H, summed with mpmath 1.3.0 in
  // 40 digits, 140 terms: radius 87.5 mm, distance mm, angle, Hz, real and imaginary part.
  test.each([
    [1000, 0, 1000, -0.51162585, 1.61270144],
    [1000, 90, 500, 0.941870957, 0.0380013244],
    [1000, 150, 4000, 0.120607016, -0.518716234],
    [300, 60, 2000, 0.312223346, 1.55470712],
    [1000, 30, 16000, -2.13728254, 0.0986410022],
    [130, 120, 125, 0.515236531, -0.134770211],
  ])('%f mm off, at %f°, %f Hz agrees with a numeric library', (r, deg, f, re, im) => {
    const [a, b] = spherePressure(87.5, r, cosine(deg), f, SPEED);
    expect(Math.abs(a - re)).toBeLessThan(1e-6);
    expect(Math.abs(b - im)).toBeLessThan(1e-6);
  });

  // Source: the same paper and Rayleigh: far away and low, the phase between opposite points is
  // Kuhn's time.
  test.each([15, 30, 60, 90])('far and low, the ears at ±90° are Kuhn’s time apart: %f°', (deg) => {
    const f = 40;
    const [right, left] = [90 - deg, 90 + deg].map((gamma) => {
      const [re, im] = spherePressure(HEAD_RADIUS, 60_000, cosine(gamma), f, SPEED);
      return Math.atan2(im, re);
    }) as [number, number];
    const time = ((right - left) / (2 * Math.PI * f)) * 1000;
    expect(Math.abs(time / kuhnTime(deg, HEAD_RADIUS, SPEED) - 1)).toBeLessThan(0.005);
  });

  // Source: a hard wall doubles the pressure (Kinsler et al., Fundamentals of Acoustics), which the
  // point facing the source nears as the wavelength gets small.
  test('the point that faces a high sound has twice the pressure', () => {
    const pressure = modulus(spherePressure(HEAD_RADIUS, 60_000, 1, 30_000, SPEED));
    expect(Math.abs(pressure - 2)).toBeLessThan(0.05);
  });
});

describe('the tangent law at ±30°', () => {
  // Source: tan θ / tan θ0 = (R − L)/(R + L), Pulkki, J. Audio Eng. Soc. 45 (1997).
  test.each([
    [10, 5.48],
    [20, 12.892],
    [0, 0],
    [-10, -5.48],
  ])('%f° takes %f dB', (deg, level) => {
    expect(Math.abs((tangentLawDb(deg, 30) ?? 99) - level)).toBeLessThan(0.0006);
    expect(Math.abs(tangentLawDeg(level, 30) - deg)).toBeLessThan(0.001);
  });
  test('a speaker alone is heard where it is, and no level puts the sound outside', () => {
    expect(Math.abs(tangentLawDeg(400, 30) - 30)).toBeLessThan(1e-9);
    expect(tangentLawDb(30, 30)).toBe(null);
    expect(tangentLawDb(40, 30)).toBe(null);
  });

  // Source: B. B. Bauer, "Phasor Analysis of Some Stereophonic Phenomena", J. Acoust. Soc. Am. 33
  // (1961): for a head that keeps still the sines stand in that ratio; 5.48 dB at ±30°: 8.78°.
  test('a still head at low frequencies hears 5.48 dB by the law of sines', () => {
    const ears = { left: [0, -76, 0], right: [0, 76, 0] } as const;
    const speaker = (deg: number, gainDb: number) => ({
      position: around(deg, 3000),
      delay: 0,
      gainDb,
    });
    const bands = createImagePredictor(SPEED).predict(
      [speaker(-30, -5.48), speaker(30, 0)],
      ears,
      [63, 125, 250],
      { delays: true, gains: true },
    );
    for (const { lateralDeg } of bands)
      expect(Math.abs((lateralDeg ?? 99) - 8.78)).toBeLessThan(0.5);
  });
});

// Source: G. Theile: a head moved 160 mm sideways in a ±30° layout 3 m away hears the channels
// 480 µs ± 5 % apart; computed 465.7 µs.
test('moving 160 mm aside puts 466 µs between the channels, as published within 5 %', () => {
  const head: Vec3 = [0, 160, 0];
  const answer = evaluatePlan({
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'seat', head }],
    options: [
      {
        id: 'a',
        speakers: [
          { id: 'l', role: 'tweeter', pair: 't', side: 'left', position: around(-30, 3000) },
          { id: 'r', role: 'tweeter', pair: 't', side: 'right', position: around(30, 3000) },
        ],
      },
    ],
    alignment: { sampleRateHz: 48000 },
  });
  if (!answer.ok) throw new Error(answer.error.message);
  const difference = answer.options[0]?.seats[0]?.pairs[0]?.difference ?? 0;
  expect(
    Math.abs(difference - (distance(around(-30, 3000), head) - distance(around(30, 3000), head))),
  ).toBeLessThan(1e-9);
  expect(Math.abs(microseconds(difference / SPEED) - 465.7)).toBeLessThan(0.1);
  expect(Math.abs(microseconds(difference / SPEED) / 480 - 1)).toBeLessThan(0.05);
});
