import { type DelayStep, MM_PER_INCH, type Rounded } from './delay-step';
import type { DelayAmounts } from './delay-types';

/** A time in every unit; `sampleRateHz`: the rate samples are counted at. */
export function amounts(ms: number, speed: number, sampleRateHz: number): DelayAmounts {
  const mm = ms * speed;
  return { ms, samples: (ms * sampleRateHz) / 1000, mm, cm: mm / 10, inches: mm / MM_PER_INCH };
}

/** Whole steps are written whole: 56 samples stay 56, not 56 times a rounded sample's length. */
export function roundedAmounts(
  { ms, steps }: Rounded,
  step: DelayStep,
  speed: number,
  sampleRateHz: number,
): DelayAmounts {
  const all = amounts(ms, speed, sampleRateHz);
  if (step.kind === 'samples') return { ...all, samples: steps };
  if (step.kind === 'time') return all;
  const mm = steps * step.mm;
  return { ...all, mm, cm: mm / 10, inches: mm / MM_PER_INCH };
}
