import { readNumber } from './csv-cells';
import { bareLine, COMMENT, linesOf, STARTS_AS_NUMBER, shown } from './text-lines';

export interface ReadImpulse {
  /** `null` where the file holds no times: to be asked. */
  sampleRateHz: number | null;
  /** When the first sample is, ms; 0 without times. */
  startMs: number;
  samples: Float64Array;
}

export type ImpulseAnswer =
  | ({ ok: true } & ReadImpulse)
  /** One sentence, with the line it is about (counted from 1; null: the whole file). */
  | { ok: false; message: string; line: number | null };

/** Longest text read, characters: a million samples with their times. Choice of ours. */
export const MAX_IMPULSE_LENGTH = 50_000_000;
/** Fewer show no arrival. Choice of ours. */
const FEWEST_SAMPLES = 16;
/** Larger numbers are mistakes rather than samples. Choice of ours. */
const LARGEST = 1e12;
/**
 * Rates sound is sampled at, Hz. Seconds and milliseconds differ by 1000 and these ends by less, so
 * times without a unit can be read one way only. Choices of ours.
 */
const RATES_HZ = [4000, 1_000_000] as const;
/** What recorders and sound cards run at, Hz: common practice, no source. */
const USUAL_RATES_HZ = [
  8000, 11025, 16000, 22050, 32000, 44100, 48000, 64000, 88200, 96000, 176400, 192000, 384000,
] as const;
/** Times may be off an even row by so much of a step, from rounding. Choice of ours. */
const UNEVEN = 0.25;

class Refused extends Error {
  constructor(
    readonly line: number | null,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Reads an impulse response from text: a sample in each line, or its time and the sample. Comments,
 * headings and empty lines are passed over. Columns are parted by semicolons, tabs, blanks, or by
 * commas where decimals have points; decimals have a point or, elsewhere, a comma. Times are in
 * seconds or ms, as the heading says or as only one of them makes sense, and run evenly.
 */
export function readImpulseText(text: string): ImpulseAnswer {
  try {
    return { ok: true, ...read(text) };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const { line, message } = error;
    return { ok: false, line, message: line === null ? message : `line ${line}: ${message}` };
  }
}

function read(text: string): ReadImpulse {
  if (text.length > MAX_IMPULSE_LENGTH)
    throw new Refused(
      null,
      `the file is ${Math.ceil(text.length / 1e6)} million characters long; no more than ${MAX_IMPULSE_LENGTH / 1e6} million are read`,
    );
  const { rows, heading } = numberedRows(text);
  const [first] = rows;
  if (!first) throw new Refused(null, 'the file has no line with a number');
  const columns = first.cells.length;
  if (columns > 2)
    throw new Refused(
      first.line,
      `${columns} columns; an impulse response has one, or two with the time first`,
    );
  if (rows.length < FEWEST_SAMPLES)
    throw new Refused(null, `${rows.length} samples only; ${FEWEST_SAMPLES} are the least`);
  const samples = Float64Array.from(rows, (row) => numberIn(row, columns - 1, 'sample'));
  if (columns === 1) return { sampleRateHz: null, startMs: 0, samples };
  const times = rows.map((row) => numberIn(row, 0, 'time'));
  return { samples, ...timing(rows, times, heading) };
}

interface Row {
  line: number;
  cells: string[];
}

function numberedRows(text: string): { rows: Row[]; heading: string } {
  const lines: { line: number; text: string }[] = [];
  let heading = '';
  for (const [i, whole] of linesOf(text).entries()) {
    const line = bareLine(whole);
    if (line === '') continue;
    if (!COMMENT.test(line) && STARTS_AS_NUMBER.test(line)) {
      lines.push({ line: i + 1, text: line });
      continue;
    }
    if (lines.length === 0) heading = line;
    else if (!COMMENT.test(line)) throw new Refused(i + 1, `expected a number, got ${shown(line)}`);
  }
  const parted = separatorOf(lines.map((one) => one.text));
  let wanted: Row | undefined;
  const rows = lines.map(({ line, text }): Row => {
    const cells = text.split(parted).map((cell) => cell.trim());
    if (cells.length > 1 && cells.at(-1) === '') cells.pop();
    const row = { line, cells };
    wanted ??= row;
    if (cells.length !== wanted.cells.length)
      throw new Refused(
        line,
        `columns: ${cells.length} where line ${wanted.line} has ${wanted.cells.length}`,
      );
    return row;
  });
  return { rows, heading };
}

/** By the first line, but that commas part columns only where some decimal has a point. */
function separatorOf(lines: readonly string[]): RegExp {
  const first = lines[0] ?? '';
  if (first.includes(';')) return /;/;
  if (first.includes('\t')) return /\t/;
  if (/,\s/.test(first)) return /,\s+|,$/;
  if (/\s/.test(first)) return /\s+/;
  return lines.some((line) => line.includes('.')) ? /,/ : /;/;
}

function numberIn({ line, cells }: Row, column: number, what: string): number {
  const cell = cells[column] ?? '';
  const value = readNumber(cell);
  if (value === null) throw new Refused(line, `the ${what} is not a number, got ${shown(cell)}`);
  if (Math.abs(value) > LARGEST)
    throw new Refused(line, `a ${what} of ${shown(cell)} cannot be: ${LARGEST} is the most`);
  return value;
}

/** The rate of evenly running times; the usual one where that reaches the same samples. */
function timing(rows: readonly Row[], times: readonly number[], heading: string) {
  const [start, end] = [times[0] as number, times.at(-1) as number];
  const steps = times.length - 1;
  const step = (end - start) / steps;
  const [lineOfFirst, lineOfLast] = [rows[0]?.line ?? null, rows.at(-1)?.line ?? null];
  if (!(step > 0)) throw new Refused(lineOfLast, 'times do not rise from the first to the last');
  for (const [i, time] of times.entries())
    if (Math.abs(time - start - i * step) > UNEVEN * step)
      throw new Refused(
        rows[i]?.line ?? null,
        `a time of ${time} where ${Number((start + i * step).toPrecision(4))} would be even; samples follow one another at equal times`,
      );
  const named = unitIn(heading);
  const fits = (msPerUnit: number) => {
    const rate = 1000 / (step * msPerUnit);
    return rate >= RATES_HZ[0] * (1 - 1e-3) && rate <= RATES_HZ[1] * (1 + 1e-3);
  };
  const msPerUnit = named ?? [1000, 1].find(fits);
  if (msPerUnit === undefined || !fits(msPerUnit))
    throw new Refused(
      lineOfFirst,
      `steps of ${Number(step.toPrecision(4))} are no sample rate between ${RATES_HZ[0]} and ${RATES_HZ[1]} Hz, ` +
        (named ? 'in the unit the heading names' : 'neither as seconds nor as ms'),
    );
  const rate = 1000 / (step * msPerUnit);
  const usual = USUAL_RATES_HZ.find((one) => Math.abs(one / rate - 1) * steps < UNEVEN);
  return { sampleRateHz: usual ?? rate, startMs: start * msPerUnit };
}

/** Milliseconds per unit, where the heading names one for the time. */
function unitIn(heading: string): number | null {
  if (/\b(?:ms|msec|milliseconds?)\b/i.test(heading)) return 1;
  return /[([]\s*s\s*[)\]]|\bsec(?:onds?)?\b|^\W*s\b/i.test(heading) ? 1000 : null;
}
