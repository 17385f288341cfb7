/** Sentences that go with an export: what is special about these very numbers and spots. */
import type { DelayRow, ExportedSeat } from './delay-types';
import { inARow } from './thing-name';

/** What to know about the numbers: delays that cannot be set, lines that are not free. */
export function notesOn(
  rows: readonly DelayRow[],
  seats: readonly ExportedSeat[],
  largestMs: number,
): string[] {
  const notes: string[] = [];
  for (const row of rows.filter(({ clamped }) => clamped))
    notes.push(
      `The ${row.name} would need ${row.delay.ms.toFixed(3)} ms but ${short(largestMs)} ms is the most ` +
        `that can be set: it still arrives ${Math.abs(row.residual.ms).toFixed(3)} ms early.`,
    );
  for (const row of rows) {
    for (const { seat, line, words } of row.lines) {
      if (line === 'clear') continue;
      const to = seats.length > 1 ? ` to the ${seats.find(({ id }) => id === seat)?.name}` : '';
      notes.push(`The straight line from the ${row.name}${to} is ${words}.`);
    }
  }
  return notes;
}

/** Which speaker reaches into which keep-clear zones. */
export const keepClearWords = (rows: readonly DelayRow[]): string[] =>
  rows
    .filter(({ keepClear }) => keepClear.length > 0)
    .map(
      ({ name, keepClear }) =>
        `The ${name} reaches into: ${inARow(keepClear.map((zone) => zone.name))}.`,
    );

/** A length of time told in another unit is seldom round in ms. */
const short = (ms: number): number => Number(ms.toFixed(3));
