/**
 * Single CSV cells: text that no spreadsheet runs, and reading it back.
 */

/**
 * Signs that start a formula (= + - @, and the wide forms some spreadsheets take for them) or that
 * are skipped before one (tab, carriage return, line feed), behind any number of apostrophes: an
 * apostrophe of the text's own is doubled, so reading back gives exactly what was written.
 * The common list is OWASP's page on CSV injection.
 */
const RUNS = /^'*[=+\-@\t\r\n＝＋－＠]/;
const GUARDED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/** The text with a leading apostrophe where a spreadsheet would otherwise run it. */
export const safeText = (text: string): string => (RUNS.test(text) ? `'${text}` : text);

/** Takes off the apostrophe {@link safeText} put on. */
export const readText = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell);

/** A number with a decimal point or comma, or null. Thousands separators are not guessed at. */
export function readNumber(cell: string): number | null {
  const text = cell.trim().replace(/^([^.]*),([^.,]*)$/, '$1.$2');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}
