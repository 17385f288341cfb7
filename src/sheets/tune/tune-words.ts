import type { ChannelFilter, DelayExport, DelayRow } from '../../exchange';
import type { PaperFacts } from '../facts';
import { capital } from '../parts/capital';
import { thingName } from '../parts/thing-name';
import type { PrintedWords } from '../words/use-words';

/** Decibels an octave for each order of a filter: 20 log 2. */
const DB_PER_ORDER = 6.02;
const TIE = '\u00a0';
const MM_PER = { mm: 1, cm: 10, in: 25.4 } as const;

/** As many digits as the step itself has, at most four. */
const digitsOf = (step: number): number =>
  Math.min(4, (String(Number(step.toFixed(4))).split('.')[1] ?? '').length);

/** A delay in the unit the processor is set in. */
export function asSet(
  { t, n }: PrintedWords,
  { rounded }: DelayRow,
  { step }: DelayExport,
): string {
  if (step.kind === 'samples') return t('tune.samples', { count: rounded.steps });
  if (step.kind === 'time') return n.time(rounded.ms, digitsOf(step.ms));
  const { mm, unit = 'mm' } = step;
  const amount = { mm: rounded.mm, cm: rounded.cm, in: rounded.inches }[unit];
  return `${n.number(amount, digitsOf(mm / MM_PER[unit]))}${TIE}${unit}`;
}

/** "Linkwitz-Riley 24 dB/oct, 2.5 kHz". */
export function filterOnPaper({ t, n }: PrintedWords, filter: ChannelFilter | null): string {
  if (!filter) return t('tune.filter.none');
  const words = t('tune.filter', {
    family: filter.family === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley',
    slope: `${n.number(filter.order * DB_PER_ORDER)}${TIE}dB/oct`,
    frequency: n.frequency(filter.frequencyHz),
  });
  return filter.proposed ? `${words} (${t('tune.filter.proposed')})` : words;
}

/** In what steps, and whether the processor holds the longest. */
export function stepSentences(words: PrintedWords, tune: DelayExport): string {
  const { t, n } = words;
  const { step, longest, largestMs, fits } = tune;
  const steps =
    step.kind === 'samples'
      ? t('tune.steps.samples', { rate: n.frequency(step.rateHz) })
      : step.kind === 'time'
        ? t('tune.steps.time', { step: n.time(step.ms, digitsOf(step.ms)) })
        : t('tune.steps.length', {
            step: lengthOfStep(words, step),
            temperature: n.temperature(tune.temperatureC),
          });
  const held =
    largestMs === null
      ? t('tune.longest.unknown')
      : fits
        ? t('tune.longest.fits', { limit: n.time(largestMs, 2) })
        : '';
  const wanted = t('tune.longest', {
    time: n.time(longest.ms, 3),
    samples: n.number(longest.samples),
    length: n.length(longest.mm, n.unit === 'mm' ? 0 : 1),
  });
  return [steps, wanted, held].filter(Boolean).join(' ');
}

function lengthOfStep(
  { n }: PrintedWords,
  { mm, unit = 'mm' }: Extract<DelayExport['step'], { kind: 'length' }>,
): string {
  const amount = mm / MM_PER[unit];
  return `${n.number(amount, digitsOf(amount))}${TIE}${unit}`;
}

/** Whom it serves. */
export function whomSentence({ t, n, names }: PrintedWords, { by, seats }: DelayExport): string {
  const [first] = seats;
  if (by === 'seat') return t('tune.for.seat', { seat: first ? names.seat(first.id) : '' });
  const alike = seats.every(({ weight }) => weight === first?.weight);
  return t('tune.for.seats', {
    seats: n.list(
      seats.map(({ id, weight }) =>
        alike
          ? names.seat(id)
          : t('tune.weighted', {
              seat: names.seat(id),
              weight: n.number(weight, (weight ?? 0) % 1 === 0 ? 0 : 2),
            }),
      ),
    ),
  });
}

/** What to know before trusting a delay: held back by the processor, or no free line. */
export function tuneWarnings(facts: PaperFacts, words: PrintedWords, tune: DelayExport): string[] {
  const { t, n, names } = words;
  const nameOf = (row: DelayRow) => speakerOnPaper(facts, words, row);
  const held = tune.rows
    .filter(({ clamped }) => clamped)
    .map((row) =>
      t('tune.clamped', {
        limit: n.time(tune.largestMs, 2),
        speaker: nameOf(row),
        wanted: n.time(row.delay.ms, 3),
        early: n.time(Math.abs(row.residual.ms), 3),
      }),
    );
  const blocked = tune.rows.flatMap((row) =>
    row.lines
      .filter(({ line }) => line === 'blocked')
      .map(({ seat, blockedBy, detour }) =>
        t(detour === null ? 'tune.line.unknown' : 'tune.line.blocked', {
          speaker: capital(nameOf(row)),
          seat: names.seat(seat),
          things: n.list(blockedBy.map((id) => thingName(facts.cabin, id, words))),
          length: n.length(detour, n.unit === 'mm' ? 1 : 2),
        }),
      ),
  );
  return [...held, ...blocked];
}

export function speakerOnPaper(facts: PaperFacts, { names }: PrintedWords, row: DelayRow): string {
  const { speakers } = facts.option;
  const speaker = speakers.find(({ id }) => id === row.speaker);
  return speaker ? names.speaker(speaker, speakers) : row.name;
}
