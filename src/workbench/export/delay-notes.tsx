import type { DelayExport } from '../../exchange';
import type { Line } from '../../geometry';
import { formatTime } from '../../plan/units';

/** What to know about these numbers in particular: delays held back, lines that are not free. */
export function DelayNotes({ all }: { all: DelayExport }) {
  const early = all.rows
    .filter((row) => row.clamped)
    .map((row) => `${row.name} still arrives ${formatTime(Math.abs(row.residual.ms), 3)} early`);
  const blocked = linesOf(all, 'blocked');
  const near = linesOf(all, 'grazing');
  return (
    <>
      {(early.length > 0 || blocked.length > 0) && (
        <ul className="export-notes">
          {early.length > 0 && (
            <li className="notice">
              <strong>
                {`Longer than ${formatTime(all.largestMs, 3)}, the most that can be set`}
              </strong>
              <span>{`${early.join(', ')}.`}</span>
            </li>
          )}
          {blocked.length > 0 && (
            <li className="notice">
              <strong>Not a free line: the delays count the way round</strong>
              {blocked.map((line) => (
                <span key={line}>{line}</span>
              ))}
            </li>
          )}
        </ul>
      )}
      {near.length > 0 && (
        <details className="export-near">
          <summary>{`Near misses: ${near.length} ${near.length > 1 ? 'lines' : 'line'}`}</summary>
          <ul>
            {near.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** "Left mid to the front right seat: blocked by …": one for each such line. */
const linesOf = ({ rows, seats }: DelayExport, wanted: Line): string[] =>
  rows.flatMap((row) =>
    row.lines
      .filter(({ line }) => line === wanted)
      .map(({ seat, words }) => {
        const to = seats.length > 1 ? ` to the ${seats.find(({ id }) => id === seat)?.name}` : '';
        return `${row.name.charAt(0).toUpperCase()}${row.name.slice(1)}${to}: ${words}.`;
      }),
  );
