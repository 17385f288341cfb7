import { useId } from 'react';
import type { DelayExport, DelayRow } from '../../exchange';
import { formatLength, formatLevel, formatNumber, formatTime } from '../../plan/units';
import { useSession } from '../../store';
import { DelayNotes } from './delay-notes';
import { SeatsLeft } from './seats-left';

/** The numbers as they will be exported, with what the rounding leaves. */
export function DelayPreview({ all }: { all: DelayExport }) {
  const unit = useSession((state) => state.lengthUnit);
  const id = useId();
  const several = all.by === 'seats';
  if (all.rows.length === 0) return <p>This option has no speakers yet.</p>;
  return (
    <>
      <h3 className="export-title" id={`${id}-title`}>
        {`Delays to set, in steps of ${all.stepName}`}
      </h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled by keyboard too */}
      <section className="table-scroll" tabIndex={0} aria-labelledby={`${id}-title`}>
        <table className="numbers" aria-labelledby={`${id}-title`}>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Set</th>
              <th scope="col">Gain</th>
              <th scope="col">Polarity</th>
              <th scope="col">In ms</th>
              <th scope="col">Wanted</th>
              <th scope="col">Left over</th>
              {!several && <th scope="col">Path</th>}
            </tr>
          </thead>
          <tbody>
            {all.rows.map((row) => (
              <tr key={row.speaker}>
                <th scope="row">
                  <span className="first-large">{row.name}</span>
                </th>
                <td>
                  <strong>{asSet(row, all)}</strong>
                  {row.clamped && <span className="export-clamped">the most it holds</span>}
                </td>
                <td>{formatLevel(row.gainDb)}</td>
                <td>{row.inverted ? <strong>swapped</strong> : 'normal'}</td>
                <td>{formatTime(row.rounded.ms, 3)}</td>
                <td>{formatTime(row.delay.ms, 3)}</td>
                <td>{`${formatNumber(row.residual.ms * 1000)} µs`}</td>
                {!several && <td>{formatLength(row.lines[0]?.path, unit)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="footnote">
        “Left over” is what rounding to whole steps leaves: set minus wanted.{' '}
        {several
          ? 'Gains take the mean level difference of a pair over the seats, by weight, off its louder side'
          : 'Gains bring the nearer speaker of a pair down to the farther'}
        ; they hold for the direct sound alone.
        {!several && ' Path: the way round where the straight line is blocked.'} Polarity: as the
        plan says, else as is usual for the crossovers.
      </p>
      {several && <SeatsLeft all={all} />}
      <DelayNotes all={all} />
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
