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
  const early = all.rows
    .filter((row) => row.clamped)
    .map(
      (row) =>
        `${names.get(row.speaker)} still arrives ${formatTime(Math.abs(row.residual.ms), 3)} early`,
    );
  const blocked = all.rows
    .filter((row) => row.line === 'blocked')
    .map((row) => {
      const things = row.blockedBy.map((id) => thingName(cabin, id));
      return `${names.get(row.speaker)} (${things.join(', ')})`;
    });
  if (early.length === 0 && blocked.length === 0) return null;
  return (
    <ul className="export-notes">
      {early.length > 0 && (
        <li className="notice">
          <strong>{`Longer than ${formatTime(all.largestMs, 3)}, the most that can be set`}</strong>
          <span>{`${early.join(', ')}.`}</span>
        </li>
      )}
      {blocked.length > 0 && (
        <li className="notice">
          <strong>Not a free line</strong>
          <span>
            {`${blocked.join(', ')}.`}
          </span>
        </li>
      )}
    </ul>
  );
}
