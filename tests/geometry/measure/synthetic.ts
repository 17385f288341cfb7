/** Impulse responses whose arrival is known, with noise that is the same on every run. */

/** mulberry32: public domain, T. Ettinger 2017. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Box and Muller 1958. */
export const normalFrom = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** The shape of an impulse; t in samples from its peak, which is 1. */
export type Shape = (t: number) => number;

/** All a sample rate can hold, as a converter's own filter leaves it. */
export const sinc: Shape = (t) => (t === 0 ? 1 : Math.sin(Math.PI * t) / (Math.PI * t));
/** A bell of this many samples' standard deviation. */
export const bell =
  (sd: number): Shape =>
  (t) =>
    Math.exp((-t * t) / (2 * sd * sd));

export interface Impulse {
  shape: Shape;
  /** Of its peak, samples from the start. */
  at: number;
  level?: number;
}

/** @param snrDb peak of 1 over the noise's standard deviation */
export function response(
  impulses: readonly Impulse[],
  snrDb = Number.POSITIVE_INFINITY,
  seed = 1,
  length = 1200,
): Float64Array {
  const normal = normalFrom(seeded(seed));
  const sd = 10 ** (-snrDb / 20);
  return Float64Array.from({ length }, (_, i) => {
    let sum = sd > 0 ? sd * normal() : 0;
    for (const { shape, at, level = 1 } of impulses) sum += level * shape(i - at);
    return sum;
  });
}

/** How long before its peak a shape rises through this level, samples: by halving. */
export function leadOf(shape: Shape, level: number): number {
  let [low, high] = [0, 40];
  // The first fall below, walking away from the peak.
  for (let t = 0; t < 40; t += 0.01)
    if (shape(-t) < level) {
      [low, high] = [t - 0.01, t];
      break;
    }
  for (let pass = 0; pass < 50; pass++) {
    const middle = (low + high) / 2;
    if (shape(-middle) >= level) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
