/** The steps a processor's delay can be set in, and rounding to them. */

export type DelayStep =
  | { kind: 'samples'; rateHz: number }
  | { kind: 'time'; ms: number }
  /** `unit`: what the processor counts in, for the step's name; left out: mm. */
  | { kind: 'length'; mm: number; unit?: LengthUnit };

export type LengthUnit = 'mm' | 'cm' | 'in';

/** Exact by definition, mm. Source: international yard and pound agreement, 1959. */
export const MM_PER_INCH = 25.4;

const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: MM_PER_INCH };

/** A step of a processor that counts in lengths. */
export const lengthStep = (amount: number, unit: LengthUnit): DelayStep => ({
  kind: 'length',
  mm: amount * MM_PER[unit],
  unit,
});

/**
 * The largest delay in ms, where a processor tells it in the unit of its steps: samples, ms, or the
 * step's unit of length. @param speed mm/ms
 */
export function largestInMs(amount: number, step: DelayStep, speed: number): number {
  if (step.kind === 'samples') return (amount * 1000) / step.rateHz;
  return step.kind === 'time' ? amount : (amount * MM_PER[step.unit ?? 'mm']) / speed;
}

/** One sentence on what is wrong with a step, or null when it can be used. */
export function checkDelayStep(step: DelayStep): string | null {
  const [value, name] =
    step.kind === 'samples'
      ? [step.rateHz, 'sample rate']
      : step.kind === 'time'
        ? [step.ms, 'step in ms']
        : [step.mm, 'step in mm'];
  return Number.isFinite(value) && value > 0
    ? null
    : `the ${name} must be a number above 0, got ${value}`;
}

/** How long one step lasts, ms. @param speed mm/ms */
export function stepDuration(step: DelayStep, speed: number): number {
  if (step.kind === 'samples') return 1000 / step.rateHz;
  return step.kind === 'time' ? step.ms : step.mm / speed;
}

/** The step in words: "1 sample at 48000 Hz", "0.02 ms", "10 mm", "1 cm", "0.5 in". */
export function stepName(step: DelayStep): string {
  if (step.kind === 'samples') return `1 sample at ${step.rateHz} Hz`;
  if (step.kind === 'time') return `${step.ms} ms`;
  const { mm, unit = 'mm' } = step;
  return `${Number((mm / MM_PER[unit]).toPrecision(6))} ${unit}`;
}

export interface Rounded {
  /** Whole steps. */
  steps: number;
  ms: number;
  /** True when the nearest step lies above the largest delay and the largest step below it is given. */
  clamped: boolean;
}

/** A billionth of a step: a quotient this near a whole number is that number. */
const WHOLE = 1e-9;

/**
 * The nearest whole number of steps; above `largestMs`, the most that fit into it.
 * @param delay ms, 0 or more  @param duration of one step, ms  @param largestMs 0 or more
 */
export function roundToStep(delay: number, duration: number, largestMs = Infinity): Rounded {
  const nearest = Math.round(delay / duration);
  const most = Math.floor(largestMs / duration + WHOLE);
  const steps = Math.min(nearest, most);
  return { steps, ms: steps * duration, clamped: nearest > most };
}
