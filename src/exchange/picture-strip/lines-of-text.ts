/** A letter is about so wide as a part of the type's size: sans-serif faces, on the wide side. */
const LETTER = 0.54;

/** Text broken into lines that fit `width` at type of `size` (same unit); a longer word stands alone. */
export function linesOfText(text: string, width: number, size: number): string[] {
  const most = Math.max(1, Math.floor(width / (size * LETTER)));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line ? `${line} ${word}` : word;
    if (line && longer.length > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line ? [...lines, line] : lines;
}
