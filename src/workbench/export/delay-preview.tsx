import type { DelayExport, DelayRow } from '../../exchange';
import { speakerName } from '../../plan/names';
import { formatLength, formatLevel, formatNumber, formatTime } from '../../plan/units';
import { useSession } from '../../store';

/** The numbers as they will be exported, with what the rounding leaves. */
export function DelayPreview({ all }: { all: DelayExport }) {
  const unit = useSession((state) => state.lengthUnit);
  const named = all.rows.map((row) => ({
    id: row.speaker,
    role: row.role,
    ...(row.side && { side: row.side }),
  }));
  if (all.rows.length === 0) return <p>This option has no speakers yet.</p>;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled by keyboard too */}
      <section className="table-scroll" tabIndex={0} aria-label="Delays to set, table">
        <table className="numbers">
          <caption>{`Delays to set, in steps of ${all.stepName}`}</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Path</th>
              <th scope="col">Wanted</th>
              <th scope="col">Set</th>
              <th scope="col">In ms</th>
              <th scope="col">Left over</th>
              <th scope="col">Gain</th>
            </tr>
          </thead>
          <tbody>
            {all.rows.map((row, i) => (
              <tr key={row.speaker}>
                <th scope="row">
                  {speakerName(named[i] ?? { id: row.speaker, role: row.role }, named)}
                </th>
                <td>{formatLength(row.path, unit)}</td>
                <td>{formatTime(row.delay.ms, 3)}</td>
                <td>
                  <strong>{asSet(row, all)}</strong>
                  {row.clamped && <span className="export-clamped"> the most it holds</span>}
                </td>
                <td>{formatTime(row.rounded.ms, 3)}</td>
                <td>{`${formatNumber(row.residual.ms * 1000)} µs`}</td>
                <td>{formatLevel(row.gainDb)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="footnote">
        “Left over” is what rounding to whole steps leaves: set minus wanted. Gains bring the nearer
        speaker of a pair down to the farther; they hold for the direct sound alone.
      </p>
      {all.notes.length > 0 && (
        <ul className="export-notes">
          {all.notes.map((note) => (
            <li key={note} className="notice">
              {note}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** The rounded delay in the unit the processor is set in. */
function asSet({ rounded }: DelayRow, { step }: DelayExport): string {
  if (step.kind === 'samples')
    return `${formatNumber(rounded.samples)} ${Math.round(rounded.samples) === 1 ? 'sample' : 'samples'}`;
  if (step.kind === 'time') return formatTime(rounded.ms, decimals(step.ms));
  return `${formatNumber(rounded.mm, decimals(step.mm))} mm`;
}

/** As many digits as the step itself has, at most four. */
const decimals = (step: number): number =>
  Math.min(4, (String(Number(step.toFixed(4))).split('.')[1] ?? '').length);
