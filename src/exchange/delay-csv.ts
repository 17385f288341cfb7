import Papa from 'papaparse';
import { readNumber, readText, safeText } from './csv-cells';
import type { DelayExport, DelayRow } from './delay-export';

/** Digits kept in a file: a hundredth of a millimetre, a tenth of a microsecond. */
const round = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;

type Cell = string | number;

/** Column by column: its heading (with the unit) and how a row fills it. */
const COLUMNS: readonly (readonly [string, (row: DelayRow, all: DelayExport) => Cell])[] = [
  ['speaker', (row) => row.speaker],
  ['name', (row) => row.name],
  ['role', (row) => row.role],
  ['pair', (row) => row.pair ?? ''],
  ['side', (row) => row.side ?? ''],
  ['option', (_, all) => all.option.title],
  ['seat', (_, all) => all.seat],
  ['path_mm', (row) => round(row.path, 2)],
  ['line', (row) => row.line],
  ['blocked_by', (row) => row.blockedBy.join('; ')],
  ['delay_ms', (row) => round(row.delay.ms, 4)],
  ['delay_samples', (row) => round(row.delay.samples, 3)],
  ['delay_mm', (row) => round(row.delay.mm, 2)],
  ['delay_cm', (row) => round(row.delay.cm, 3)],
  ['delay_in', (row) => round(row.delay.inches, 3)],
  ['rounded_ms', (row) => round(row.rounded.ms, 4)],
  ['rounded_samples', (row) => round(row.rounded.samples, 3)],
  ['rounded_mm', (row) => round(row.rounded.mm, 2)],
  ['rounded_cm', (row) => round(row.rounded.cm, 3)],
  ['rounded_in', (row) => round(row.rounded.inches, 3)],
  ['residual_ms', (row) => round(row.residual.ms, 4)],
  ['residual_mm', (row) => round(row.residual.mm, 2)],
  ['gain_db', (row) => round(row.gainDb, 2)],
  ['clamped', (row) => (row.clamped ? 'yes' : 'no')],
  ['step', (_, all) => all.stepName],
  ['sample_rate_hz', (_, all) => all.sampleRateHz],
  ['speed_of_sound_m_per_s', (_, all) => round(all.speedOfSound, 3)],
  ['caution', (_, all) => all.shortCaution],
];

/**
 * The export as CSV after RFC 4180: one heading line, one line per speaker, CRLF, decimal point.
 * Numbers are plain numbers; no text cell can start a formula in a spreadsheet.
 */
export function toCsv(all: DelayExport): string {
  const fields = COLUMNS.map(([heading]) => heading);
  const data = all.rows.map((row) =>
    COLUMNS.map(([, cell]) => {
      const value = cell(row, all);
      return typeof value === 'string' ? safeText(value) : value;
    }),
  );
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`;
}

/** What a delay file says of one speaker, whichever format it came in. */
export interface ReadDelay {
  speaker: string;
  delayMs: number;
  roundedMs: number;
  gainDb: number;
  clamped: boolean;
}

export type ReadDelays = { ok: true; delays: ReadDelay[] } | { ok: false; message: string };

/**
 * Reads a file {@link toCsv} wrote, by its headings: columns may have been moved or added.
 * @returns the delays, or one sentence naming the line and what is wrong there
 */
export function readDelaysCsv(text: string): ReadDelays {
  const parsed = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  const missing = ['speaker', 'delay_ms', 'rounded_ms', 'gain_db'].filter(
    (heading) => !parsed.meta.fields?.includes(heading),
  );
  if (missing.length > 0)
    return { ok: false, message: `line 1: there is no column ${missing.join(', ')}` };
  const [error] = parsed.errors;
  if (error) return { ok: false, message: `line ${(error.row ?? 0) + 2}: ${error.message}` };
  const delays: ReadDelay[] = [];
  for (const [index, record] of parsed.data.entries()) {
    const numbers: number[] = [];
    for (const heading of ['delay_ms', 'rounded_ms', 'gain_db']) {
      const value = readNumber(record[heading] ?? '');
      if (value === null) {
        const got = record[heading] ?? '';
        return { ok: false, message: `line ${index + 2}: ${heading} is no number, got "${got}"` };
      }
      numbers.push(value);
    }
    const [delayMs, roundedMs, gainDb] = numbers as [number, number, number];
    const clamped = record.clamped === 'yes';
    delays.push({ speaker: readText(record.speaker ?? ''), delayMs, roundedMs, gainDb, clamped });
  }
  return { ok: true, delays };
}
