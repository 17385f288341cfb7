/**
 * Between samples by a windowed sinc: T. I. Laakso, V. Välimäki, M. Karjalainen and U. K. Laine,
 * "Splitting the unit delay", IEEE Signal Processing Magazine 13(1), 1996, pp. 30–60. The window is
 * Blackman's, as in F. J. Harris, "On the use of windows for harmonic analysis with the discrete
 * Fourier transform", Proc. IEEE 66(1), 1978.
 */

/**
 * Samples on either side that count: a choice of ours. A sine up to 0.45 of the sample rate is then
 * right to a thousandth of its height; see the test.
 */
export const HALF_WIDTH = 32;

/** Sound is silent before its first sample and after its last. */
export function valueAt(samples: ArrayLike<number>, position: number): number {
  const below = Math.floor(position);
  const part = position - below;
  if (part === 0) return samples[below] ?? 0;
  // sin π(position − n) has one size for all n and changes sign from each to the next.
  // From the nearer of two samples: sin π loses its digits a hair before the next one.
  const sine = Math.sin(Math.PI * Math.min(part, 1 - part)) / Math.PI;
  const from = Math.max(0, below - HALF_WIDTH + 1);
  const to = Math.min(samples.length - 1, below + HALF_WIDTH);
  let sum = 0;
  for (let n = from; n <= to; n++) {
    const x = position - n;
    const sign = (below - n) & 1 ? -1 : 1;
    sum += (samples[n] as number) * sign * (sine / x) * blackman(x / HALF_WIDTH);
  }
  return sum;
}

/** 1 in the middle, 0 at ±1. */
const blackman = (x: number): number =>
  Math.abs(x) >= 1 ? 0 : 0.42 + 0.5 * Math.cos(Math.PI * x) + 0.08 * Math.cos(2 * Math.PI * x);

/**
 * Sound delayed by any number of samples, fractions too, as long as it was: what is pushed beyond
 * the end is lost.
 */
export function delayed(samples: ArrayLike<number>, delaySamples: number): Float64Array {
  return Float64Array.from({ length: samples.length }, (_, i) =>
    valueAt(samples, i - delaySamples),
  );
}

export interface Peak {
  position: number;
  value: number;
}

/** Eighths of a sample: the parabola through three of them errs by less than 0.001 of one. */
const STEP = 1 / 8;

/** The highest point, up or down, within a sample of this place: by eighths, then by a parabola. */
export function peakNear(samples: ArrayLike<number>, around: number): Peak {
  let best = around;
  let most = -1;
  for (let position = around - 1; position <= around + 1; position += STEP) {
    const size = Math.abs(valueAt(samples, position));
    if (size > most) [best, most] = [position, size];
  }
  const sign = valueAt(samples, best) < 0 ? -1 : 1;
  const [a, b, c] = [-STEP, 0, STEP].map((d) => sign * valueAt(samples, best + d)) as [
    number,
    number,
    number,
  ];
  const bend = a - 2 * b + c;
  const shift = bend < 0 ? Math.max(-1, Math.min(1, (0.5 * (a - c)) / bend)) : 0;
  const position = best + shift * STEP;
  return { position, value: valueAt(samples, position) };
}

/** Where a list of numbers is largest, up or down; −1 for an empty one. */
export function indexOfLargest(samples: ArrayLike<number>): number {
  let [at, most] = [-1, -1];
  for (let i = 0; i < samples.length; i++) {
    const size = Math.abs(samples[i] as number);
    if (size > most) [at, most] = [i, size];
  }
  return at;
}
