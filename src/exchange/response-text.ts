import { readNumber } from './csv-cells';
import { columnsFrom, type ResponseColumns } from './response-columns';
import { bareLine, COMMENT, linesOf, STARTS_AS_NUMBER, shown } from './text-lines';

/** One measured response, as the engine's measured directivity takes it. */
export interface ReadResponse {
  /** Off the speaker's axis; null where neither file nor caller says it. */
  offAxisDeg: number | null;
  /** Rising. */
  frequencyHz: number[];
  levelDb: number[];
  /** Where the file has it, degrees. */
  phaseDeg?: number[];
}

export type ResponseAnswer = (
  | { ok: true; responses: ReadResponse[] }
  /** One sentence, with the line number it is about (counted from 1; null: the whole file). */
  | { ok: false; message: string; line: number | null }
) & {
  /** There where nothing in the file says what its third column holds: to be asked. */
  unnamedThird?: true;
};

export interface ResponseHints {
  /** The angle a file with a single response was measured at. */
  offAxisDeg?: number;
  /**
   * What a third column without a heading holds: the phase (left out), or the angle off the axis,
   * so that each line is one angle at one frequency.
   */
  thirdColumn?: 'phase' | 'angle';
}

/** Longest text read, characters: some 100,000 lines. */
export const MAX_RESPONSE_LENGTH = 5_000_000;
/**
 * Wider steps than this are gaps, octaves: no level can be told inside. Octave centres are at most
 * 1.01 apart. Choice of ours, no source.
 */
const WIDEST_STEP_OCTAVES = 1.1;
/** Beyond these a number is a mistake rather than a measurement. Choices of ours. */
const HIGHEST_HZ = 1e6;
const HIGHEST_DB = 400;

interface Row {
  line: number;
  cells: string[];
}

class Refused extends Error {
  constructor(
    readonly line: number | null,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Reads measured responses from plain text: a frequency and a level in each line, or a third column
 * (phase or angle, see `ResponseHints`), or one column of levels for each angle named in the
 * heading ("Hz 0 15 30"). Columns are parted by tabs, semicolons, blanks or commas, the same in
 * every line; decimals have a point or, where commas part no columns, a comma. Comments, headings
 * and empty lines are skipped. Frequencies that fall throughout are turned round; others that do
 * not rise, repeated ones, missing levels, gaps of more than an octave and single rows are refused.
 */
export function readResponses(text: string, hints: ResponseHints = {}): ResponseAnswer {
  let asks: { unnamedThird?: true } = {};
  try {
    const table = readTable(text, hints);
    if (table.columns.unnamedThird) asks = { unnamedThird: true };
    return { ok: true, responses: responsesIn(table, hints), ...asks };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const { line, message } = error;
    const told = line === null ? message : `line ${line}: ${message}`;
    return { ok: false, line, message: told, ...asks };
  }
}

interface Table {
  rows: Row[];
  columns: ResponseColumns;
}

function readTable(text: string, hints: ResponseHints): Table {
  if (text.length > MAX_RESPONSE_LENGTH)
    throw new Refused(
      null,
      `the file is ${Math.ceil(text.length / 1e6)} million characters long; responses of more than ${MAX_RESPONSE_LENGTH / 1e6} million are not read`,
    );
  const { heading, rows } = splitRows(text);
  const [first] = rows;
  if (!first) throw new Refused(null, 'the file has no line with a frequency and a level');
  const columns = columnsFrom(heading, first.cells.length, hints.thirdColumn ?? 'phase');
  if (typeof columns === 'string') throw new Refused(first.line, columns);
  return { rows, columns };
}

const responsesIn = ({ rows, columns }: Table, hints: ResponseHints): ReadResponse[] =>
  columns.kind === 'long' ? readLong(rows, columns) : readWide(rows, columns, hints);

/** Data rows, each split by the separator of the first, and the line that may name the columns. */
function splitRows(text: string): { heading: string[]; rows: Row[] } {
  let heading = '';
  let parted: RegExp | null = null;
  const commasPart = () => parted?.source === ',';
  const rows: Row[] = [];
  for (const [i, whole] of linesOf(text).entries()) {
    const line = bareLine(whole);
    if (line === '') continue;
    if (COMMENT.test(line) || !STARTS_AS_NUMBER.test(line)) {
      if (rows.length === 0) heading = line.replace(COMMENT, '').trim();
      else if (!COMMENT.test(line))
        throw new Refused(i + 1, `expected a frequency, got ${shown(line)}`);
      continue;
    }
    parted ??= separatorOf(line);
    const cells = line.split(parted).map((cell) => cell.trim());
    // A separator at the end of a line opens no column.
    if (cells.at(-1) === '' && cells.length > (rows[0]?.cells.length ?? 2)) cells.pop();
    const wanted = rows[0]?.cells.length ?? cells.length;
    if (cells.length !== wanted)
      throw new Refused(
        i + 1,
        `${cells.length} columns where line ${rows[0]?.line} has ${wanted}${commasPart() ? '; where decimals have commas, part the columns with semicolons' : ''}`,
      );
    rows.push({ line: i + 1, cells });
  }
  const count = rows[0]?.cells.length ?? 0;
  const names = splitHeading(heading, parted, count);
  refuseTwoReadings(rows, commasPart(), names.length === count);
  return { heading: names, rows };
}

/** Refuses files whose commas could be decimal marks as well as something else. */
function refuseTwoReadings(rows: readonly Row[], commasPart: boolean, named: boolean): void {
  const holds = (mark: string) =>
    rows.find(({ cells }) => cells.some((cell) => cell.includes(mark)));
  const [first, point] = [rows[0], holds('.')];
  if (!first) return;
  if (commasPart) {
    // "1000,-3,2" is 1000 Hz and either −3 dB at 2° or −3.2 dB.
    if (first.cells.length > 2 && !point && !named)
      throw new Refused(
        first.line,
        'commas may part the columns here or be decimal marks; part the columns with semicolons',
      );
    return;
  }
  if (rows.every(({ cells: [frequency = ''] }) => /^[1-9]\d{0,2},\d{3}$/.test(frequency)))
    throw new Refused(
      first.line,
      `a frequency of ${shown(first.cells[0] ?? '')} can be read two ways; write thousands without a mark`,
    );
  const comma = holds(',');
  if (comma && point) {
    const [early, late] = comma.line < point.line ? [comma, point] : [point, comma];
    throw new Refused(
      late.line,
      early.line === late.line
        ? 'both a comma and a point as decimal marks; write thousands without a mark'
        : `another decimal mark than in line ${early.line}; write thousands without a mark`,
    );
  }
}

/** The separator of a line of numbers. A comma parts columns only when nothing else does. */
function separatorOf(line: string): RegExp {
  if (line.includes(';')) return /;/;
  if (line.includes('\t')) return /\t/;
  if (/,\s/.test(line)) return /,/;
  return /\s/.test(line) ? /\s+/ : /,/;
}

/** The words of a heading, one for each column if it can be: parted as the numbers are, or by blanks. */
function splitHeading(heading: string, parted: RegExp | null, count: number): string[] {
  const trimmed = (words: string[]) =>
    words.map((word) => word.trim()).filter((word) => word !== '');
  const alike = trimmed(heading.split(parted ?? /\s+/));
  // "Frequency (Hz)" and "30 deg" are one name each: what belongs together is joined.
  const joined = heading.replace(/\s+([([])/g, '$1').replace(/(\d)\s+(?=°|deg)/gi, '$1');
  const blanks = trimmed(joined.split(/\s+/));
  return alike.length === count ? alike : blanks;
}

function numberIn(row: Row, column: number, what: string, limit: number): number {
  const cell = row.cells[column] ?? '';
  if (cell === '') throw new Refused(row.line, `the ${what} is missing`);
  const value = readNumber(cell);
  if (value === null)
    throw new Refused(row.line, `the ${what} is not a number, got ${shown(cell)}`);
  if (Math.abs(value) > limit)
    throw new Refused(row.line, `a ${what} of ${shown(cell)} cannot be: ${limit} is the most`);
  return value;
}

function frequencyIn(row: Row, factor: number): number {
  const frequency = numberIn(row, 0, 'frequency', HIGHEST_HZ) * factor;
  if (!(frequency > 0))
    throw new Refused(row.line, `a frequency is above 0 Hz, got ${shown(row.cells[0] ?? '')}`);
  return frequency;
}

/** One column for each response. */
function readWide(
  rows: readonly Row[],
  columns: ResponseColumns & { kind: 'wide' },
  hints: ResponseHints,
): ReadResponse[] {
  const ordered = risingRows(rows, columns.factor);
  const frequencyHz = ordered.map((row) => frequencyIn(row, columns.factor));
  return columns.levels.map(({ column, offAxisDeg }) => ({
    offAxisDeg: offAxisDeg ?? hints.offAxisDeg ?? null,
    frequencyHz,
    levelDb: ordered.map((row) => numberIn(row, column, 'level', HIGHEST_DB)),
    ...(columns.phase !== null && {
      phaseDeg: ordered.map((row) => numberIn(row, columns.phase as number, 'phase', 1e7)),
    }),
  }));
}

/** One line for each angle at each frequency: parted by angle, then read like single responses. */
function readLong(
  rows: readonly Row[],
  columns: ResponseColumns & { kind: 'long' },
): ReadResponse[] {
  const byAngle = new Map<number, Row[]>();
  for (const row of rows) {
    const angle = numberIn(row, columns.angle, 'angle', 180);
    if (angle < 0) throw new Refused(row.line, `an angle is from 0 to 180°, got ${angle}`);
    const own = byAngle.get(angle);
    if (own) own.push(row);
    else byAngle.set(angle, [row]);
  }
  return [...byAngle]
    .sort(([a], [b]) => a - b)
    .map(([offAxisDeg, own]) => {
      const ordered = risingRows(own, columns.factor);
      return {
        offAxisDeg,
        frequencyHz: ordered.map((row) => frequencyIn(row, columns.factor)),
        levelDb: ordered.map((row) => numberIn(row, 1, 'level', HIGHEST_DB)),
      };
    });
}

/** The rows by rising frequency, or a refusal naming the line that breaks the order. */
function risingRows(rows: readonly Row[], factor: number): readonly Row[] {
  const [first, second] = rows;
  if (!first || !second)
    throw new Refused(
      first?.line ?? null,
      'a single row is no response; it takes two frequencies at least',
    );
  const sign = Math.sign(frequencyIn(second, factor) - frequencyIn(first, factor)) || 1;
  for (let i = 1; i < rows.length; i++) {
    const [before, row] = [rows[i - 1], rows[i]] as [Row, Row];
    const [a, b] = [frequencyIn(before, factor), frequencyIn(row, factor)];
    if (a === b) throw new Refused(row.line, `${b} Hz again, after line ${before.line}`);
    if (Math.sign(b - a) !== sign)
      throw new Refused(
        row.line,
        `${b} Hz after ${a} Hz: frequencies run one way only; one file per angle, or a heading that names the columns`,
      );
    if (Math.abs(Math.log2(b / a)) > WIDEST_STEP_OCTAVES)
      throw new Refused(row.line, `a gap of more than an octave, from ${a} to ${b} Hz`);
  }
  return sign > 0 ? rows : [...rows].reverse();
}
