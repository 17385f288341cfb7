import Papa from 'papaparse';
import { readNumber, readText } from './csv-cells';

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
 * Reads a file `toCsv` wrote, by its headings: columns may have been moved or added.
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
