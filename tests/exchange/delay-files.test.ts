import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import {
  CAUTIONS,
  readDelaysCsv,
  readDelaysJson,
  SHORT_CAUTION,
  toCsv,
  toJson,
  toText,
} from '../../src/exchange';
import { readNumber, readText, safeText } from '../../src/exchange/csv-cells';
import { delaysOf, samplePlan } from './sample';

const exported = (names: string[] = ['left', 'right'], distances = [1000, 1400]) =>
  delaysOf(
    samplePlan(
      distances,
      names.map((id) => ({ id })),
    ),
  );

const rowsOf = (csv: string) => Papa.parse<string[]>(csv.trimEnd()).data;

describe('delays as CSV', () => {
  test('fault 9: names that start a formula become text no spreadsheet runs', () => {
    const wicked = ['=HYPERLINK("http://x","y")', '+1', '@x', '-1+2', '\t=1', '\r=1'];
    const csv = toCsv(
      exported(
        wicked,
        wicked.map((_, i) => 1000 + 50 * i),
      ),
    );
    const cells = rowsOf(csv)
      .slice(1)
      .map((row) => row[0]);
    expect(cells).toEqual(wicked.map((name) => `'${name}`));
  });

  test('fault 9: numeric cells stay numbers, negative ones too', () => {
    const all = exported();
    const rows = rowsOf(toCsv(all));
    const gain = rows[0]?.indexOf('gain_db') ?? -1;
    const residual = rows[0]?.indexOf('residual_mm') ?? -1;
    // 20 lg(1400/1000) dB.
    expect(rows[1]?.[gain]).toBe('-2.92');
    // 56 samples against 55.816: +1.32 mm.
    expect(rows[1]?.[residual]).toBe('1.32');
    const lower = { ...all, rows: all.rows.map((row) => ({ ...row, gainDb: -3.2 })) };
    expect(rowsOf(toCsv(lower))[1]?.[gain]).toBe('-3.2');
  });

  test('fault 9: commas, quotes and line breaks come back as they were (RFC 4180)', () => {
    const names = ['a,b', 'say "loud"', 'two\r\nlines', 'two\nlines', ' spaced ', 'Größe ü 🔊'];
    const all = exported(
      names,
      names.map((_, i) => 900 + 10 * i),
    );
    const csv = toCsv(all);
    expect(csv.endsWith('\r\n')).toBe(true);
    const read = readDelaysCsv(csv);
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.delays.map(({ speaker }) => speaker)).toEqual(names);
  });

  test('fault 9: any name at all survives the way out and back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 30 }), (name) => {
        const read = readDelaysCsv(toCsv(exported([name, 'other'])));
        expect(read.ok && read.delays[0]?.speaker).toBe(name);
      }),
      { numRuns: 300 },
    );
  });

  test('fault 9: guarding a cell can always be undone, and a guarded cell runs nowhere', () => {
    const sign = fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', '\n', '＝', 'a', ' ', '1');
    fc.assert(
      fc.property(fc.string({ unit: sign }), (text) => {
        expect(readText(safeText(text))).toBe(text);
        expect(safeText(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
      }),
    );
  });

  test('every line has as many cells as the heading', () => {
    const rows = rowsOf(toCsv(exported(['a,"b"', 'c'])));
    expect(rows).toHaveLength(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  test('every line carries the caution', () => {
    const rows = rowsOf(toCsv(exported()));
    const caution = rows[0]?.indexOf('caution') ?? -1;
    expect(rows.slice(1).map((row) => row[caution])).toEqual([SHORT_CAUTION, SHORT_CAUTION]);
  });

  test('fault 10: every number in a file has the decimal point and nothing else', () => {
    const [headings = [], ...rows] = rowsOf(toCsv(exported()));
    const numeric = headings.flatMap((name, c) =>
      /_(ms|mm|cm|in|samples|db|hz|s)$/.test(name) ? c : [],
    );
    // 17 that every channel has, and the frequencies of filters, empty where there is none.
    expect(numeric).toHaveLength(17 + 2);
    for (const row of rows)
      for (const c of numeric) {
        const form = /_pass_hz$/.test(headings[c] ?? '') ? /^(\d+(\.\d+)?)?$/ : /^-?\d+(\.\d+)?$/;
        expect(row[c]).toMatch(form);
      }
    expect(toText(exported())).toContain(' 1.167 ');
    expect(toJson(exported())).toMatch(/"speedOfSound": 343\.98/);
  });

  test('fault 10: a file whose numbers a spreadsheet turned to decimal commas is read right', () => {
    const read = readDelaysCsv(
      'speaker;delay_ms;rounded_ms;gain_db\r\ntweeter-left;1,1628;1,1667;-2,92\r\n',
    );
    expect(read).toEqual({
      ok: true,
      delays: [
        {
          speaker: 'tweeter-left',
          delayMs: 1.1628,
          roundedMs: 1.1667,
          gainDb: -2.92,
          clamped: false,
        },
      ],
    });
  });

  test('a file with a cell that is no number is refused with its line', () => {
    const read = readDelaysCsv('speaker,delay_ms,rounded_ms,gain_db\r\na,1,1,0\r\nb,soon,1,0\r\n');
    expect(read).toEqual({ ok: false, message: 'line 3: delay_ms is no number, got "soon"' });
  });

  test('a file without the columns is refused with their names', () => {
    expect(readDelaysCsv('a,b\r\n1,2\r\n')).toEqual({
      ok: false,
      message: 'line 1: there is no column speaker, delay_ms, rounded_ms, gain_db',
    });
  });

  test('numbers are read with point or comma, and nothing is guessed', () => {
    expect(readNumber('1,5')).toBe(1.5);
    expect(readNumber('-3.2')).toBe(-3.2);
    expect(readNumber('1.234,5')).toBeNull();
    expect(readNumber('1,234,5')).toBeNull();
    expect(readNumber('1e999')).toBeNull();
    expect(readNumber('')).toBeNull();
  });
});

describe('delays as JSON and text', () => {
  test('JSON read back gives the engine’s numbers to the last digit', () => {
    const all = exported(['left', 'right', 'centre'], [1003.7, 1411.1, 1250]);
    const read = readDelaysJson(toJson(all));
    expect(read).toEqual({
      ok: true,
      delays: all.rows.map((row) => ({
        speaker: row.speaker,
        delayMs: row.delay.ms,
        roundedMs: row.rounded.ms,
        gainDb: row.gainDb,
        clamped: row.clamped,
      })),
    });
  });

  test('CSV read back differs from the engine by less than its last digit', () => {
    const all = exported();
    const read = readDelaysCsv(toCsv(all));
    if (!read.ok) throw new Error(read.message);
    for (const [i, row] of all.rows.entries()) {
      expect(Math.abs((read.delays[i]?.delayMs ?? 9) - row.delay.ms)).toBeLessThanOrEqual(0.5e-4);
      expect(Math.abs((read.delays[i]?.gainDb ?? 9) - row.gainDb)).toBeLessThanOrEqual(0.5e-2);
    }
  });

  test.each([
    ['{', 'the file is no JSON'],
    ['{"format":"other"}', 'format: must be "earpath-delays"'],
    ['{"format":"earpath-delays","version":2}', 'version: must be 1, got 2'],
    [
      '{"format":"earpath-delays","version":1,"rows":[{"speaker":"a"}]}',
      'rows[0].delay.ms: must be a number',
    ],
  ])('the file %s is refused in one sentence', (text, message) => {
    expect(readDelaysJson(text)).toEqual({ ok: false, message });
  });

  test('the text names plan, option, seat and step, and ends with every caution', () => {
    const text = toText(exported());
    expect(text).toContain('Delays: Sample\nOption: Only\nSeat: front left seat\n');
    expect(text).toContain('1 sample at 48000 Hz');
    for (const caution of CAUTIONS) expect(text).toContain(`- ${caution.title}:`);
  });

  test('fault 8: a name with line breaks or right-to-left marks stays on its own line', () => {
    const text = toText(exported(['a\nDelay: none\u202e', 'right']));
    expect(text).not.toContain('\u202e');
    expect(text.split('\n').filter((line) => line.includes('a Delay: none'))).toHaveLength(1);
  });
});
