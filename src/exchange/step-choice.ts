/** The step a processor's delays can be set in, and the longest it holds, as they are chosen and typed. */
import { parseFrequency, parseNumber } from '../plan/read-numbers';
import {
  checkDelayStep,
  type DelayStep,
  type LengthUnit,
  largestInMs,
  lengthStep,
} from './delay-step';

export type StepKind = 'samples' | 'ms' | LengthUnit;

/** Rates common processors run at, Hz: common practice, no source. */
export const COMMON_RATES_HZ = [44100, 48000, 88200, 96000, 192000] as const;

export interface StepChoice {
  kind: StepKind;
  /** A common rate in Hz, or 'other' for the one typed. */
  rate: number | 'other';
  otherRate: string;
  /** The typed step of each kind but samples. */
  amounts: Readonly<Record<Exclude<StepKind, 'samples'>, string>>;
  /** The longest delay that can be set, in the unit of the steps or with its own; empty: no limit. */
  largest: string;
}

/** Steps usual on processors that take times or lengths: common practice, no source. */
export function startingChoice(sampleRateHz: number): StepChoice {
  const common = COMMON_RATES_HZ.some((rate) => rate === sampleRateHz);
  return {
    kind: 'samples',
    rate: common ? sampleRateHz : 'other',
    otherRate: String(sampleRateHz),
    amounts: { ms: '0.01', mm: '10', cm: '1', in: '0.5' },
    largest: '',
  };
}

export type ReadStep =
  | { ok: true; step: DelayStep; largestMs?: number }
  | { ok: false; field: 'step' | 'largest'; message: string };

/**
 * The chosen step as the export takes it, or one sentence and the field it is about.
 * @param speed of sound, mm/ms: a longest delay told as a length is that long in time
 */
export function readStepChoice(choice: StepChoice, speed: number): ReadStep {
  const step = readStep(choice);
  if (typeof step === 'string') return { ok: false, field: 'step', message: step };
  if (choice.largest.trim() === '') return { ok: true, step };
  const largest = readLargest(choice, step, speed);
  return typeof largest === 'string'
    ? { ok: false, field: 'largest', message: largest }
    : { ok: true, step, largestMs: largest };
}

function readStep({ kind, rate, otherRate, amounts }: StepChoice): DelayStep | string {
  let step: DelayStep;
  if (kind === 'samples') {
    if (rate !== 'other') return { kind, rateHz: rate };
    const read = parseFrequency(otherRate);
    if (!read.ok) return read.message;
    step = { kind, rateHz: read.value };
  } else {
    const read = parseNumber(amounts[kind], WORDS[kind]);
    if (!read.ok) return read.message;
    step = kind === 'ms' ? { kind: 'time', ms: read.value } : lengthStep(read.value, kind);
  }
  return checkDelayStep(step) ?? step;
}

/** What may stand behind a number of each unit. */
const WORDS: Readonly<Record<StepKind, readonly string[]>> = {
  samples: ['samples', 'sample'],
  ms: ['ms'],
  mm: ['mm'],
  cm: ['cm'],
  in: ['in', 'inch', 'inches', '"', '″'],
};

/** ms, or one sentence. Processors told in samples often name their longest delay in ms. */
function readLargest({ kind, largest }: StepChoice, step: DelayStep, speed: number) {
  const text = largest.trim().toLowerCase();
  const named = (Object.keys(WORDS) as StepKind[]).find((unit) =>
    WORDS[unit].some((word) => text.endsWith(word)),
  );
  const unit = named ?? kind;
  if (unit === 'samples' && step.kind !== 'samples')
    return 'samples say how long a delay is only where the processor takes whole samples';
  const read = parseNumber(text, WORDS[unit]);
  if (!read.ok) return read.message;
  if (read.value < 0) return 'the longest delay must be 0 or more';
  const told: DelayStep =
    unit === 'samples' ? step : unit === 'ms' ? { kind: 'time', ms: 1 } : lengthStep(1, unit);
  return largestInMs(read.value, told, speed);
}
