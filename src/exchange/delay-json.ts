import type { DelayExport } from './delay-types';
import type { ReadDelay, ReadDelays } from './read-delays-csv';

export const DELAYS_FORMAT = 'earpath-delays';

/** The export as JSON, full precision: what {@link DelayExport} holds, with a format mark. */
export function toJson(all: DelayExport): string {
  return `${JSON.stringify({ format: DELAYS_FORMAT, version: 1, ...all }, null, 2)}\n`;
}

/** Reads a file {@link toJson} wrote. @returns the delays, or one sentence with the JSON path */
export function readDelaysJson(text: string): ReadDelays {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return { ok: false, message: 'the file is no JSON' };
  }
  if (!isRecord(file) || file.format !== DELAYS_FORMAT)
    return { ok: false, message: `format: must be "${DELAYS_FORMAT}"` };
  if (file.version !== 1)
    return { ok: false, message: `version: must be 1, got ${JSON.stringify(file.version)}` };
  if (!Array.isArray(file.rows)) return { ok: false, message: 'rows: must be a list' };
  const delays: ReadDelay[] = [];
  for (const [index, row] of file.rows.entries()) {
    const at = `rows[${index}]`;
    if (!isRecord(row) || typeof row.speaker !== 'string')
      return { ok: false, message: `${at}.speaker: must be text` };
    const delayMs = numberIn(row.delay, 'ms');
    if (delayMs === null) return { ok: false, message: `${at}.delay.ms: must be a number` };
    const roundedMs = numberIn(row.rounded, 'ms');
    if (roundedMs === null) return { ok: false, message: `${at}.rounded.ms: must be a number` };
    const gainDb = numberIn(row, 'gainDb');
    if (gainDb === null) return { ok: false, message: `${at}.gainDb: must be a number` };
    delays.push({ speaker: row.speaker, delayMs, roundedMs, gainDb, clamped: !!row.clamped });
  }
  return { ok: true, delays };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function numberIn(value: unknown, key: string): number | null {
  const found = isRecord(value) ? value[key] : undefined;
  return typeof found === 'number' && Number.isFinite(found) ? found : null;
}
