import type { DelayExport } from '../../exchange';
import { formatTime } from '../../plan/units';
import { useAnswer } from '../../store';
import { thingName } from '../parts/names';

export interface DelayNotesProps {
  all: DelayExport;
  /** Speaker names by id. */
  names: ReadonlyMap<string, string>;
}

/** What to know about these numbers in particular: delays held back, lines blocked. */
export function DelayNotes({ all, names }: DelayNotesProps) {
  const answer = useAnswer();
  const cabin = answer.ok ? answer.cabin : null;
  const clamped = all.rows.filter((row) => row.clamped);
  const blocked = all.rows.filter((row) => row.line === 'blocked');
  if (clamped.length === 0 && blocked.length === 0) return null;
  return (
    <ul className="export-notes">
      {clamped.length > 0 && (
        <li className="notice">
          <strong>{`Longer than ${formatTime(all.largestMs, 3)}, the most that can be set`}</strong>
          {clamped
            .map(
              (row) =>
                `${names.get(row.speaker)} still arrives ${formatTime(Math.abs(row.residual.ms), 3)} early`,
            )
            .join(', ')}
          .
        </li>
      )}
      {blocked.length > 0 && (
        <li className="notice">
          <strong>Not a free line</strong>
          {blocked
            .map(
              (row) =>
                `${names.get(row.speaker)} (${row.blockedBy.map((id) => thingName(cabin, id)).join(', ')})`,
            )
            .join(', ')}
          .
          {all.detail === 'straight-line' &&
            ' Paths are straight lines even where blocked; sound going round arrives a little later.'}
        </li>
      )}
    </ul>
  );
}
