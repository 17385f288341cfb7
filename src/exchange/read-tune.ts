/** A whole tune read back: what `readDelaysCsv` and `readDelaysJson` read, with polarity and filters. */
import Papa from 'papaparse';
import type { CrossoverFamily } from '../geometry';
import { FAMILY_WORDS } from './channel-filters';
import { readNumber } from './csv-cells';
import { readDelaysJson } from './delay-json';
import { type ReadDelay, readDelaysCsv } from './read-delays-csv';

export interface ReadFilter {
  family: CrossoverFamily;
  order: number;
  frequencyHz: number;
}

/** What a file says of one channel, whichever format it came in. */
export interface ReadChannel extends ReadDelay {
  inverted: boolean;
  highPass: ReadFilter | null;
  lowPass: ReadFilter | null;
}

export type ReadTune = { ok: true; channels: ReadChannel[] } | { ok: false; message: string };

const ENDS = ['high_pass', 'low_pass'] as const;

/**
 * Reads a tune `toCsv` wrote, by its headings: columns may have been moved or added.
 * @returns the channels, or one sentence naming the line and what is wrong there
 */
export function readTuneCsv(text: string): ReadTune {
  const read = readDelaysCsv(text);
  if (!read.ok) return read;
  const { data, meta } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  const wanted = ['polarity', ...ENDS.flatMap((end) => [end, `${end}_order`, `${end}_hz`])];
  const missing = wanted.filter((heading) => !meta.fields?.includes(heading));
  if (missing.length > 0)
    return { ok: false, message: `line 1: there is no column ${missing.join(', ')}` };
  const channels: ReadChannel[] = [];
  for (const [i, record] of data.entries()) {
    const { polarity = '' } = record;
    if (polarity !== 'normal' && polarity !== 'swapped')
      return {
        ok: false,
        message: `line ${i + 2}: polarity is normal or swapped, got "${polarity}"`,
      };
    const filters = ENDS.map((end) => csvFilter(record, end));
    const wrong = filters.find((filter) => typeof filter === 'string');
    if (wrong !== undefined) return { ok: false, message: `line ${i + 2}: ${wrong}` };
    const [highPass, lowPass] = filters as [ReadFilter | null, ReadFilter | null];
    const inverted = polarity === 'swapped';
    channels.push({ ...(read.delays[i] as ReadDelay), inverted, highPass, lowPass });
  }
  return { ok: true, channels };
}

/** `null` where there is none, or one sentence. */
function csvFilter(record: Record<string, string>, end: string): ReadFilter | null | string {
  const name = record[end] ?? '';
  if (name === '') return null;
  const family = familyNamed(name);
  if (!family) return `${end} is ${Object.values(FAMILY_WORDS).join(' or ')}, got "${name}"`;
  const order = readNumber(record[`${end}_order`] ?? '');
  if (!isOrder(order))
    return `${end}_order is a whole number above 0, got "${record[`${end}_order`]}"`;
  const frequencyHz = readNumber(record[`${end}_hz`] ?? '');
  if (!isFrequency(frequencyHz))
    return `${end}_hz is a number above 0, got "${record[`${end}_hz`]}"`;
  return { family, order, frequencyHz };
}

export const familyNamed = (name: string): CrossoverFamily | null =>
  (Object.keys(FAMILY_WORDS) as CrossoverFamily[]).find((one) => FAMILY_WORDS[one] === name) ??
  null;

const isOrder = (value: unknown): value is number => Number.isInteger(value) && Number(value) > 0;
const isFrequency = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value > 0;

/** Reads a tune `toJson` wrote. @returns the channels, or one sentence with the JSON path */
export function readTuneJson(text: string): ReadTune {
  const read = readDelaysJson(text);
  if (!read.ok) return read;
  const { rows } = JSON.parse(text) as { rows: Record<string, unknown>[] };
  const channels: ReadChannel[] = [];
  for (const [i, row] of rows.entries()) {
    if (typeof row.inverted !== 'boolean')
      return { ok: false, message: `rows[${i}].inverted: must be true or false` };
    const [highPass, lowPass] = [jsonFilter(row.highPass), jsonFilter(row.lowPass)];
    if (highPass === undefined || lowPass === undefined) {
      const end = highPass === undefined ? 'highPass' : 'lowPass';
      return {
        ok: false,
        message: `rows[${i}].${end}: must be null, or a family, an order and a frequencyHz`,
      };
    }
    const { inverted } = row;
    channels.push({ ...(read.delays[i] as ReadDelay), inverted, highPass, lowPass });
  }
  return { ok: true, channels };
}

/** `undefined` where it is no filter. */
function jsonFilter(value: unknown): ReadFilter | null | undefined {
  if (value === null) return null;
  if (typeof value !== 'object') return undefined;
  const { family, order, frequencyHz } = value as Record<string, unknown>;
  if (typeof family !== 'string' || !Object.hasOwn(FAMILY_WORDS, family)) return undefined;
  if (!isOrder(order) || !isFrequency(frequencyHz)) return undefined;
  return { family: family as CrossoverFamily, order, frequencyHz };
}
