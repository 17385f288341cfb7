import { fourierInPlace } from './fourier';
import { indexOfLargest, peakNear } from './windowed-sinc';

export interface CorrelationSettings {
  sampleRateHz: number;
  /**
   * Plain cross-correlation, or every frequency counted alike (phase transform): sharper where both
   * sounds cover the same band well above the noise, and worse where they do not.
   */
  weighting?: 'plain' | 'phase';
  /** Only these frequencies count; left out: all. */
  bandHz?: readonly [number, number];
}

export interface CorrelationDelay {
  /** How much later the second sound is, ms. */
  ms: number;
  /** 1 where both are alike but for delay and level, 0 where they have nothing in common. */
  likeness: number;
  /** They are most alike with the poles of one swapped. */
  inverted: boolean;
}

/**
 * How much later one sound is than another, by generalised cross-correlation: C. H. Knapp and G. C.
 * Carter, "The generalized correlation method for estimation of time delay", IEEE Trans. ASSP 24(4),
 * 1976. The highest point, up or down, between samples by a windowed sinc and a parabola.
 * @returns `null` where either is silent in the band
 */
export function correlationDelay(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  { sampleRateHz, weighting = 'plain', bandHz }: CorrelationSettings,
): CorrelationDelay | null {
  if (!(sampleRateHz > 0))
    throw new RangeError(`correlationDelay: expected a sample rate above 0, got ${sampleRateHz}`);
  // Room for every lag, so that none wraps round.
  const size = 2 ** Math.ceil(Math.log2(Math.max(2, first.length + second.length)));
  const [a, b] = [spectrum(first, size), spectrum(second, size)];
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  let [energyA, energyB, largest] = [0, 0, 0];
  for (let k = 0; k < size; k++) {
    const hz = (Math.min(k, size - k) * sampleRateHz) / size;
    if (bandHz && (hz < bandHz[0] || hz > bandHz[1])) continue;
    const [ar, ai, br, bi] = [a.re[k], a.im[k], b.re[k], b.im[k]] as [
      number,
      number,
      number,
      number,
    ];
    re[k] = ar * br + ai * bi;
    im[k] = ar * bi - ai * br;
    energyA += ar * ar + ai * ai;
    energyB += br * br + bi * bi;
    largest = Math.max(largest, magnitude(re[k] as number, im[k] as number));
  }
  if (!(energyA > 0 && energyB > 0 && largest > 0)) return null;
  let whole = Math.sqrt(energyA * energyB);
  if (weighting === 'phase') {
    whole = 0;
    for (let k = 0; k < size; k++) {
      const weight = magnitude(re[k] as number, im[k] as number);
      // What is only rounding has no phase to tell.
      if (weight <= ROUNDING * largest) {
        re[k] = 0;
        im[k] = 0;
        continue;
      }
      re[k] = (re[k] as number) / weight;
      im[k] = (im[k] as number) / weight;
      whole++;
    }
  }
  fourierInPlace(re, im, true);
  // From the earliest lag to the latest, so that neighbours stand side by side.
  const earliest = first.length - 1;
  const lags = Float64Array.from(
    { length: first.length + second.length - 1 },
    (_, i) => re[(i - earliest + size) % size] as number,
  );
  const peak = peakNear(lags, indexOfLargest(lags));
  return {
    ms: ((peak.position - earliest) * 1000) / sampleRateHz,
    likeness: Math.min(1, Math.abs(peak.value) / whole),
    inverted: peak.value < 0,
  };
}

const ROUNDING = 1e-12;

const magnitude = (re: number, im: number): number => Math.sqrt(re * re + im * im);

function spectrum(samples: ArrayLike<number>, size: number) {
  const re = new Float64Array(size);
  re.set(samples);
  const im = new Float64Array(size);
  fourierInPlace(re, im);
  return { re, im };
}
