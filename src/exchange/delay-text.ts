import { seatName } from '../plan/names';
import type { DelayExport, DelayRow } from './delay-export';

/** One line of text: control and direction-changing signs would tear the table apart. */
const oneLine = (text: string): string =>
  text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ').trim();

const COLUMNS: readonly (readonly [string, (row: DelayRow) => string])[] = [
  ['speaker', (row) => `${row.name} (${oneLine(row.speaker)})`],
  ['path mm', (row) => row.path.toFixed(1)],
  ['set ms', (row) => row.rounded.ms.toFixed(3)],
  ['samples', (row) => row.rounded.samples.toFixed(2)],
  ['mm', (row) => row.rounded.mm.toFixed(1)],
  ['cm', (row) => row.rounded.cm.toFixed(2)],
  ['in', (row) => row.rounded.inches.toFixed(2)],
  ['left over ms', (row) => signed(row.residual.ms, 4)],
  ['left over mm', (row) => signed(row.residual.mm, 2)],
  ['gain dB', (row) => signed(row.gainDb, 2)],
  [
    '',
    (row) =>
      [row.clamped && 'CLAMPED', row.line === 'blocked' && 'BLOCKED'].filter(Boolean).join(' '),
  ],
];

function signed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  if (Number(text) === 0) return (0).toFixed(digits);
  return value > 0 ? `+${text}` : text;
}

/** The export as plain text to print or paste: a table, what to know, and the cautions. */
export function toText(all: DelayExport): string {
  const cells = [
    COLUMNS.map(([heading]) => heading),
    ...all.rows.map((row) => COLUMNS.map(([, cell]) => cell(row))),
  ];
  const widths = COLUMNS.map((_, c) => Math.max(...cells.map((row) => row[c]?.length ?? 0)));
  const table = cells.map((row) =>
    row
      .map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
  const limit = all.largestMs === null ? '' : `, at most ${all.largestMs} ms`;
  return [
    `Delays: ${oneLine(all.planTitle) || 'untitled plan'}`,
    `Option: ${oneLine(all.option.title)}`,
    `Seat: ${oneLine(seatName(all.seat))}`,
    `Sound travels ${all.speedOfSound.toFixed(2)} mm in a ms (${all.temperatureC} °C)`,
    `Set in steps of ${all.stepName}${limit}; samples at ${all.sampleRateHz} Hz`,
    '',
    ...(all.rows.length > 0 ? table : ['No speakers in this option.']),
    ...(all.notes.length > 0 ? ['', ...all.notes.map((note) => `Note: ${oneLine(note)}`)] : []),
    '',
    'Before cutting, drilling or driving',
    ...all.cautions.flatMap(({ title, text }) => wrap(`- ${title}: ${text}`)),
    '',
  ].join('\n');
}

/** Lines of at most 90 signs, the later ones indented under the first. */
function wrap(text: string): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1] ?? '';
    if (last && last.length + 1 + word.length > 90) lines.push(`  ${word}`);
    else lines[lines.length - 1] = last ? `${last} ${word}` : word;
  }
  return lines;
}
