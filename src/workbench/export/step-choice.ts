/** The step a processor's delays can be set in, as it is chosen and typed in the dialog. */
import { checkDelayStep, type DelayStep } from '../../exchange';
import { parseFrequency, parseNumber } from '../../plan/units';

export type StepKind = 'samples' | 'ms' | 'mm' | 'cm';

/** Rates common processors run at, Hz: common practice, no source. */
export const COMMON_RATES_HZ = [44100, 48000, 88200, 96000, 192000] as const;

export interface StepChoice {
  kind: StepKind;
  /** A common rate in Hz, or 'other' for the one typed. */
  rate: number | 'other';
  otherRate: string;
  /** The typed step for ms, mm and cm. */
  amounts: Readonly<Record<Exclude<StepKind, 'samples'>, string>>;
  /** The largest delay that can be set, ms; empty for no limit. */
  largest: string;
}

/** Steps usual on processors that take times or lengths: common practice, no source. */
export function startingChoice(sampleRateHz: number): StepChoice {
  const common = COMMON_RATES_HZ.some((rate) => rate === sampleRateHz);
  return {
    kind: 'samples',
    rate: common ? sampleRateHz : 'other',
    otherRate: String(sampleRateHz),
    amounts: { ms: '0.01', mm: '10', cm: '1' },
    largest: '',
  };
}

export type ReadStep =
  | { ok: true; step: DelayStep; largestMs?: number }
  | { ok: false; field: 'step' | 'largest'; message: string };

/** The chosen step as the export takes it, or one sentence and the field it is about. */
export function readStepChoice(choice: StepChoice): ReadStep {
  const step = readStep(choice);
  if (typeof step === 'string') return { ok: false, field: 'step', message: step };
  if (choice.largest.trim() === '') return { ok: true, step };
  const largest = parseNumber(choice.largest, ['ms']);
  if (!largest.ok) return { ok: false, field: 'largest', message: largest.message };
  if (largest.value < 0)
    return { ok: false, field: 'largest', message: 'the largest delay must be 0 or more' };
  return { ok: true, step, largestMs: largest.value };
}

function readStep({ kind, rate, otherRate, amounts }: StepChoice): DelayStep | string {
  let step: DelayStep;
  if (kind === 'samples') {
    if (rate !== 'other') return { kind, rateHz: rate };
    const read = parseFrequency(otherRate);
    if (!read.ok) return read.message;
    step = { kind, rateHz: read.value };
  } else {
    const read = parseNumber(amounts[kind], [kind]);
    if (!read.ok) return read.message;
    step =
      kind === 'ms'
        ? { kind: 'time', ms: read.value }
        : { kind: 'length', mm: kind === 'cm' ? read.value * 10 : read.value };
  }
  return checkDelayStep(step) ?? step;
}
