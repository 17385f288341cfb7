import { describe, expect, test } from 'vitest';
import { delayed, valueAt } from '../../../src/geometry';
import { fourierInPlace } from '../../../src/geometry/measure/fourier';
import { peakNear } from '../../../src/geometry/measure/windowed-sinc';
import { bell, response, seeded, sinc } from './synthetic';

describe('between samples', () => {
  test('at a sample, it is that sample, and silence outside', () => {
    const samples = [0.5, -0.25, 1];
    expect([-1, 0, 1, 2, 3].map((at) => valueAt(samples, at))).toEqual([0, 0.5, -0.25, 1, 0]);
  });

  test('a sine up to 0.45 of the sample rate is right to a thousandth of its height', () => {
    for (const cycles of [0.01, 0.1, 0.25, 0.4, 0.45]) {
      const sine = (i: number) => Math.sin(2 * Math.PI * cycles * i + 0.3);
      const samples = Float64Array.from({ length: 200 }, (_, i) => sine(i));
      for (let at = 80; at < 120; at += 0.37)
        expect(Math.abs(valueAt(samples, at) - sine(at))).toBeLessThan(1e-3);
    }
  });

  test('delaying by whole samples moves them; by a fraction and back gives what it was', () => {
    const samples = response([{ shape: bell(3), at: 100.3 }], Infinity, 1, 220);
    expect([...delayed(samples, 5)].slice(5)).toEqual([...samples].slice(0, -5));
    const back = delayed(delayed(samples, 7.4), -7.4);
    for (let i = 40; i < 180; i++)
      expect(Math.abs((back[i] as number) - (samples[i] as number))).toBeLessThan(1e-4);
  });

  test('an impulse delayed by a fraction has its peak there', () => {
    const click = new Float64Array(100).fill(0);
    click[40] = 1;
    for (const part of [0.1, 0.25, 0.5, 0.9]) {
      const moved = delayed(click, part);
      const peak = peakNear(moved, 40 + Math.round(part));
      expect(Math.abs(peak.position - 40 - part)).toBeLessThan(0.02);
      expect(Math.abs(peak.value - 1)).toBeLessThan(0.05);
    }
  });

  test('a peak that points down is found as well', () => {
    const samples = response([{ shape: sinc, at: 90.7, level: -2 }], Infinity, 1, 180);
    const peak = peakNear(samples, 91);
    expect(Math.abs(peak.position - 90.7)).toBeLessThan(0.02);
    expect(Math.abs(peak.value + 2)).toBeLessThan(0.05);
  });
});

describe('the Fourier transform', () => {
  test('is the sum it is defined by, and goes back', () => {
    const n = 16;
    const random = seeded(7);
    const [x, y] = [0, 1].map(() => Float64Array.from({ length: n }, () => random() - 0.5));
    const [re, im] = [Float64Array.from(x ?? []), Float64Array.from(y ?? [])];
    fourierInPlace(re, im);
    for (let k = 0; k < n; k++) {
      let [a, b] = [0, 0];
      for (let i = 0; i < n; i++) {
        const [c, s] = [Math.cos((-2 * Math.PI * i * k) / n), Math.sin((-2 * Math.PI * i * k) / n)];
        a += (x?.[i] ?? 0) * c - (y?.[i] ?? 0) * s;
        b += (x?.[i] ?? 0) * s + (y?.[i] ?? 0) * c;
      }
      expect(Math.abs((re[k] ?? 9) - a) + Math.abs((im[k] ?? 9) - b)).toBeLessThan(1e-12);
    }
    fourierInPlace(re, im, true);
    for (let i = 0; i < n; i++)
      expect(Math.abs((re[i] ?? 9) / n - (x?.[i] ?? 0))).toBeLessThan(1e-15);
  });

  test('refuses a length that is no power of two', () => {
    expect(() => fourierInPlace(new Float64Array(6), new Float64Array(6))).toThrow('got 6 and 6');
  });
});

test('a hair before or after a sample is that sample', () => {
  const click = new Float64Array(9000);
  click[4000] = 0.25;
  for (const hair of [1e-3, 1e-6, 1e-9, 1e-11, 1e-12, 5e-13])
    for (const side of [-1, 1])
      expect(Math.abs(valueAt(click, 4000 + side * hair) - 0.25)).toBeLessThan(
        1e-6 * 0.25 + hair ** 2,
      );
});
