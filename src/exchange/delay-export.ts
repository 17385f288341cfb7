import { crossingProblem, crossingsOf, type OptionInput, polaritiesOf } from '../geometry';
import { pairName, speakerName } from '../plan/names';
import { CAUTIONS, SHORT_CAUTION } from './cautions';
import { filtersOf } from './channel-filters';
import { amounts, roundedAmounts } from './delay-amounts';
import { keepClearWords, notesOn } from './delay-notes';
import { checkDelayStep, type DelayStep, roundToStep, stepDuration, stepName } from './delay-step';
import type {
  DelayExport,
  DelayExportSettings,
  DelayRow,
  ExportedCrossover,
  ExportedSeat,
  ExportedStage,
  NoDelays,
} from './delay-types';
import { delaysWanted, type WantedDelays } from './delays-wanted';
import { zoneName, zonesOfOption } from './keep-clear/spot-zones';
import { zoneCaution } from './keep-clear/zone-cautions';
import { lineWords } from './line-words';
import { thingName } from './thing-name';

/**
 * Delays, gains, polarity and filters of one option for one seat, or the best compromise over several,
 * rounded to the user's step. Rows stand in the option's order. The delays are the engine's own;
 * what each seat is left with is told for the delays as set.
 * @returns the export, or why there is no compromise over those seats
 * @throws RangeError for a single seat that is not there, or a step {@link checkDelayStep} refuses
 */
export function delayExport(
  stage: ExportedStage,
  settings: DelayExportSettings,
): DelayExport | NoDelays {
  const { step, largestMs = Infinity } = settings;
  const wrong = checkDelayStep(step);
  if (wrong) throw new RangeError(`delayExport: ${wrong}`);
  if (!(largestMs >= 0))
    throw new RangeError(`delayExport: largestMs must be ≥ 0, got ${largestMs}`);
  const wanted = delaysWanted(stage, settings.for);
  if ('problem' in wanted) return wanted;

  const { plan, option, result } = stage;
  const speed = result.speedOfSound;
  const sampleRateHz = step.kind === 'samples' ? step.rateHz : plan.alignment.sampleRateHz;
  const rows = rowsOf(stage, wanted, { step, largestMs, sampleRateHz });
  const seats = wanted.seats.map(
    ({ told }): ExportedSeat => ({
      ...told,
      largestErrorSetMs: Math.max(
        0,
        ...rows.map((row) =>
          Math.abs(row.lines.find(({ seat }) => seat === told.id)?.errorMs ?? 0),
        ),
      ),
    }),
  );

  return {
    planTitle: plan.title ?? '',
    option: { id: option.id, title: option.title ?? option.id },
    by: settings.for.by,
    seats,
    detail: result.detail,
    speedOfSound: speed,
    temperatureC: plan.air.temperatureC,
    step,
    stepName: stepName(step),
    sampleRateHz,
    largestMs: largestMs === Infinity ? null : largestMs,
    longest: amounts(Math.max(0, ...rows.map((row) => row.delay.ms)), speed, sampleRateHz),
    fits: rows.every(({ clamped }) => !clamped),
    rows,
    crossovers: crossoversOf(option),
    notes: notesOn(rows, seats, largestMs),
    keepClear: keepClearWords(rows),
    shortCaution: SHORT_CAUTION,
    cautions: CAUTIONS,
  };
}

interface Setting {
  step: DelayStep;
  largestMs: number;
  sampleRateHz: number;
}

function rowsOf(
  { option, cabin, result }: ExportedStage,
  { seats, channels }: WantedDelays,
  { step, largestMs, sampleRateHz }: Setting,
): DelayRow[] {
  const speed = result.speedOfSound;
  const duration = stepDuration(step, speed);
  const inverted = polaritiesOf(option);
  const filters = filtersOf(option);
  const nameOf = (id: string) => thingName(cabin, id);
  const rows = zonesOfOption(cabin, option, result).flatMap(({ speaker, zones }): DelayRow[] => {
    const channel = channels.get(speaker.id);
    if (!channel) return [];
    const { delay, gainDb } = channel;
    const rounded = roundToStep(delay, duration, largestMs);
    return [
      {
        speaker: speaker.id,
        name: speakerName(speaker, option.speakers),
        role: speaker.role,
        pair: speaker.pair ?? null,
        side: speaker.side ?? null,
        lines: [],
        delay: amounts(delay, speed, sampleRateHz),
        rounded: { steps: rounded.steps, ...roundedAmounts(rounded, step, speed, sampleRateHz) },
        residual: { ms: rounded.ms - delay, mm: (rounded.ms - delay) * speed },
        gainDb,
        clamped: rounded.clamped,
        inverted: inverted.get(speaker.id) ?? false,
        polarityFrom: speaker.inverted === undefined ? 'crossovers' : 'plan',
        ...filters(speaker),
        keepClear: zones.map((zone) => ({
          id: zone.id,
          name: zoneName(zone),
          reason: zone.reason,
          caution: zoneCaution(zone),
        })),
      },
    ];
  });
  for (const { result: seat } of seats) {
    const arrivals = new Map(seat.arrivals.map((arrival) => [arrival.speaker, arrival]));
    const heard = rows.map((row) => (arrivals.get(row.speaker)?.time ?? 0) + row.rounded.ms);
    // As the engine has it: a seat's errors are told from the middle of first and last.
    const middle = (Math.min(...heard) + Math.max(...heard)) / 2;
    for (const [i, row] of rows.entries()) {
      const arrival = arrivals.get(row.speaker);
      if (!arrival) continue;
      row.lines.push({
        seat: seat.id,
        straight: arrival.direct,
        path: arrival.path,
        line: arrival.line,
        blockedBy: arrival.blockedBy,
        grazedBy: arrival.grazedBy,
        round: arrival.round,
        detour: arrival.line === 'blocked' ? arrival.detour : null,
        words: lineWords(arrival, nameOf),
        errorMs: (heard[i] as number) - middle,
      });
    }
  }
  return rows;
}

/** The hand-overs the poles were reckoned by; one that cannot be is left out there and here. */
function crossoversOf(option: OptionInput): ExportedCrossover[] {
  return crossingsOf(option)
    .filter(({ crossover }) => !crossingProblem(crossover))
    .map(({ crossover, proposed }) => {
      const { below, above, family, order, frequencyHz } = crossover;
      const [low, high] = [below, above].map((pair) => pairName(pair, option.speakers));
      return { name: `${low} to ${high}`, below, above, family, order, frequencyHz, proposed };
    });
}
