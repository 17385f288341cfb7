import type { Line, OptionResult, PlanInput, Role, Side } from '../geometry';
import { panelName, speakerName } from '../plan/names';
import { CAUTIONS, type Caution, SHORT_CAUTION } from './cautions';
import {
  checkDelayStep,
  type DelayStep,
  MM_PER_INCH,
  type Rounded,
  roundToStep,
  stepDuration,
  stepName,
} from './delay-step';

/** What to export. */
export interface DelayExportSettings {
  /** Id of the seat the delays are for. */
  seat: string;
  /** What the processor's delays can be set in. */
  step: DelayStep;
  /** The largest delay the processor holds, ms; left out: no limit. */
  largestMs?: number;
  /** What stands in the way, in words; left out: made from its id. */
  nameOf?: (id: string) => string;
}

/** One length of time in every unit a processor may ask for. */
export interface DelayAmounts {
  ms: number;
  samples: number;
  mm: number;
  cm: number;
  inches: number;
}

export interface DelayRow {
  speaker: string;
  /** In words: "left tweeter". */
  name: string;
  role: Role;
  pair: string | null;
  side: Side | null;
  /** What the sound travels to the seat, mm. */
  path: number;
  line: Line;
  blockedBy: readonly string[];
  delay: DelayAmounts;
  /** The delay at whole steps, and how many. */
  rounded: DelayAmounts & { steps: number };
  /** What rounding leaves: rounded − wanted. */
  residual: { ms: number; mm: number };
  gainDb: number;
  /** True where the processor's largest delay is in the way. */
  clamped: boolean;
}

export interface DelayExport {
  planTitle: string;
  option: { id: string; title: string };
  seat: string;
  detail: OptionResult['detail'];
  /** mm/ms. */
  speedOfSound: number;
  temperatureC: number;
  step: DelayStep;
  stepName: string;
  /** The rate samples are counted at, Hz. */
  sampleRateHz: number;
  largestMs: number | null;
  rows: DelayRow[];
  /** What to know about these numbers in particular: clamped rows, blocked lines. */
  notes: string[];
  shortCaution: string;
  cautions: readonly Caution[];
}

/** The plan's parts an export reads. */
export type ExportedPlan = Pick<PlanInput, 'air' | 'alignment' | 'options'> & { title?: string };

/**
 * Delays and gains of one option for one seat, rounded to the user's step.
 * Rows stand in the option's order. Delays are the engine's own for that seat.
 * @throws RangeError for a seat or option that is not there, or a step {@link checkDelayStep} refuses
 */
export function delayExport(
  result: OptionResult,
  plan: ExportedPlan,
  settings: DelayExportSettings,
): DelayExport {
  const { step, largestMs = Infinity, nameOf = panelName } = settings;
  const wrong = checkDelayStep(step);
  if (wrong) throw new RangeError(`delayExport: ${wrong}`);
  if (!(largestMs >= 0))
    throw new RangeError(`delayExport: largestMs must be ≥ 0, got ${largestMs}`);
  const seat = result.seats.find(({ id }) => id === settings.seat);
  if (!seat) throw new RangeError(`delayExport: no seat "${settings.seat}" in the result`);
  const option = plan.options.find(({ id }) => id === result.id);
  if (!option) throw new RangeError(`delayExport: no option "${result.id}" in the plan`);

  const speed = result.speedOfSound;
  const duration = stepDuration(step, speed);
  const sampleRateHz = step.kind === 'samples' ? step.rateHz : plan.alignment.sampleRateHz;
  const arrivals = new Map(seat.arrivals.map((arrival) => [arrival.speaker, arrival]));
  const delays = new Map(seat.delays.map((delay) => [delay.speaker, delay]));

  const rows = option.speakers.flatMap((speaker): DelayRow[] => {
    const arrival = arrivals.get(speaker.id);
    const delay = delays.get(speaker.id);
    if (!arrival || !delay) return [];
    const rounded = roundToStep(delay.delay, duration, largestMs);
    return [
      {
        speaker: speaker.id,
        name: speakerName(speaker, option.speakers),
        role: speaker.role,
        pair: speaker.pair ?? null,
        side: speaker.side ?? null,
        path: arrival.path,
        line: arrival.line,
        blockedBy: arrival.blockedBy,
        delay: amounts(delay.delay, speed, sampleRateHz),
        rounded: { steps: rounded.steps, ...roundedAmounts(rounded, step, speed, sampleRateHz) },
        residual: { ms: rounded.ms - delay.delay, mm: (rounded.ms - delay.delay) * speed },
        gainDb: delay.gainDb,
        clamped: rounded.clamped,
      },
    ];
  });

  return {
    planTitle: plan.title ?? '',
    option: { id: option.id, title: option.title ?? option.id },
    seat: seat.id,
    detail: result.detail,
    speedOfSound: speed,
    temperatureC: plan.air.temperatureC,
    step,
    stepName: stepName(step),
    sampleRateHz,
    largestMs: largestMs === Infinity ? null : largestMs,
    rows,
    notes: notesOn(rows, largestMs, nameOf),
    shortCaution: SHORT_CAUTION,
    cautions: CAUTIONS,
  };
}

function amounts(ms: number, speed: number, sampleRateHz: number): DelayAmounts {
  const mm = ms * speed;
  return { ms, samples: (ms * sampleRateHz) / 1000, mm, cm: mm / 10, inches: mm / MM_PER_INCH };
}

/** Whole steps are written whole: 56 samples stay 56, not 56 times a rounded sample's length. */
function roundedAmounts(
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

function notesOn(
  rows: readonly DelayRow[],
  largestMs: number,
  nameOf: (id: string) => string,
): string[] {
  const notes: string[] = [];
  for (const row of rows.filter(({ clamped }) => clamped))
    notes.push(
      `The ${row.name} would need ${row.delay.ms.toFixed(3)} ms but ${largestMs} ms is the most ` +
        `that can be set: it still arrives ${Math.abs(row.residual.ms).toFixed(3)} ms early.`,
    );
  const blocked = rows.filter(({ line }) => line === 'blocked');
  for (const row of blocked)
    notes.push(
      `The straight line from the ${row.name} is blocked by ${row.blockedBy.map(nameOf).join(', ')}.`,
    );
  return notes;
}
