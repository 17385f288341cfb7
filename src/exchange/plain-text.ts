/** Plain text to print: lines, columns, numbers with a sign. */

/** One line of text: control and direction-changing signs would tear the table apart. */
export const oneLine = (text: string): string =>
  text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ').trim();

/** Always with its sign, never "-0". */
export function signed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  if (Number(text) === 0) return (0).toFixed(digits);
  return value > 0 ? `+${text}` : text;
}

/** Rows of cells as lines: the first column to the left, all others to the right. */
export function alignColumns(cells: readonly (readonly string[])[]): string[] {
  const widths = (cells[0] ?? []).map((_, c) =>
    Math.max(...cells.map((row) => row[c]?.length ?? 0)),
  );
  return cells.map((row) =>
    row
      .map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}

/** Lines of at most 90 signs, the later ones indented under the first. */
export function wrap(text: string): string[] {
  const lines = [''];
  for (const word of oneLine(text).split(' ')) {
    const last = lines[lines.length - 1] ?? '';
    if (last && last.length + 1 + word.length > 90) lines.push(`  ${word}`);
    else lines[lines.length - 1] = last ? `${last} ${word}` : word;
  }
  return lines;
}
