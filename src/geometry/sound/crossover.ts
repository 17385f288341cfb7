import type { CrossoverFamily } from '../input';
import { type Complex, over, times } from './complex';

export type { CrossoverFamily };

/** Both halves of a crossover: the same family, order and frequency below and above. */
export interface Crossover {
  family: CrossoverFamily;
  /** 1 to 8, 6.02 dB per octave each; even for Linkwitz-Riley. */
  order: number;
  frequencyHz: number;
}

/** What is wrong with a crossover, in one sentence; null when nothing is. */
export function crossoverProblem({ family, order, frequencyHz }: Crossover): string | null {
  if (family !== 'butterworth' && family !== 'linkwitz-riley')
    return `a crossover is butterworth or linkwitz-riley, got ${JSON.stringify(family)}`;
  if (!Number.isInteger(order) || order < 1 || order > 8)
    return `a crossover's order is a whole number from 1 to 8, got ${order}`;
  if (family === 'linkwitz-riley' && order % 2 === 1)
    return `a Linkwitz-Riley crossover is two equal Butterworth filters in a row, so its order is even, got ${order}`;
  if (!(frequencyHz > 0) || !Number.isFinite(frequencyHz))
    return `a crossover's frequency is above 0 Hz, got ${frequencyHz}`;
  return null;
}

/**
 * Butterworth low-pass at s = jw, w relative to the corner: 1 over the product of (s² + 2s·sin φ + 1),
 * φ = (2k − 1)π/2n, and of (s + 1) for odd n. Source: Butterworth (1930); Zverev, Handbook of
 * Filter Synthesis.
 */
function butterworthLowPass(order: number, w: number): Complex {
  let value: Complex = [1, 0];
  for (let k = 1; k <= order / 2; k++) {
    const damping = 2 * Math.sin(((2 * k - 1) * Math.PI) / (2 * order));
    value = over(value, [1 - w * w, damping * w]);
  }
  return order % 2 === 1 ? over(value, [1, w]) : value;
}

function checked(crossover: Crossover, frequencyHz: number, who: string): number {
  const problem = crossoverProblem(crossover);
  if (problem) throw new RangeError(`${who}: ${problem}`);
  if (!(frequencyHz > 0)) throw new RangeError(`${who}: expected f > 0 Hz, got ${frequencyHz}`);
  return frequencyHz / crossover.frequencyHz;
}

/**
 * Complex response of the low-pass, 1 far below the crossover; time runs as e^(+jωt), so lagging is
 * negative phase. Butterworth: −3.01 dB at the crossover. Linkwitz-Riley of order 2m: the square of
 * Butterworth of order m, −6.02 dB there.
 * Source: S. H. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", J. Audio Eng. Soc.
 * 24 (1976).
 */
export function lowPass(crossover: Crossover, frequencyHz: number): Complex {
  const w = checked(crossover, frequencyHz, 'lowPass');
  if (crossover.family === 'butterworth') return butterworthLowPass(crossover.order, w);
  const half = butterworthLowPass(crossover.order / 2, w);
  return times(half, half);
}

/** Complex response of the high-pass, the low-pass with s turned into 1/s. Sources as there. */
export function highPass(crossover: Crossover, frequencyHz: number): Complex {
  const w = checked(crossover, frequencyHz, 'highPass');
  // s^n/B(s) would overflow far above the crossover and lose its digits; 1/B(1/s) never does.
  const mirrored: Crossover = { ...crossover, frequencyHz: 1 };
  const [re, im] = lowPass(mirrored, 1 / w);
  return [re, -im];
}

/**
 * Whether the upper speaker is usually connected with its poles swapped, so that both halves add up
 * at the crossover: where they stand 180° apart, that is at orders 2 and 6.
 * Odd orders (90° apart) add up alike either way; they stay as they are.
 */
export const usuallyInverted = ({ order }: Crossover): boolean => order % 4 === 2;
