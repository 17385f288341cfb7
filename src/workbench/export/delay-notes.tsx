import type { DelayExport, DelayRow, ExportedSeat } from '../../exchange';
import { formatTime } from '../../plan/units';

/** What to know about these numbers in particular: delays held back, lines that are not free. */
export function DelayNotes({ all }: { all: DelayExport }) {
  const early = all.rows
    .filter((row) => row.clamped)
    .map((row) => `${row.name} still arrives ${formatTime(Math.abs(row.residual.ms), 3)} early`);
  const lines = all.rows.flatMap((row) => linesOf(row, all.seats));
  if (early.length === 0 && lines.length === 0) return null;
  return (
    <ul className="export-notes">
      {early.length > 0 && (
        <li className="notice">
          <strong>{`Longer than ${formatTime(all.largestMs, 3)}, the most that can be set`}</strong>
          <span>{`${early.join(', ')}.`}</span>
        </li>
      )}
      {lines.length > 0 && (
        <li className="notice">
          <strong>Not a free line</strong>
          {lines.map((line) => (
            <span key={line}>{`${line}.`}</span>
          ))}
        </li>
      )}
    </ul>
  );
}

const linesOf = (row: DelayRow, seats: readonly ExportedSeat[]): string[] =>
  row.lines
    .filter(({ line }) => line !== 'clear')
    .map(({ seat, words }) => {
      const to = seats.length > 1 ? ` to the ${seats.find(({ id }) => id === seat)?.name}` : '';
      return `${row.name}${to}: ${words}`;
    });
