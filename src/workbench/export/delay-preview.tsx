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
      <p className={all.fits ? 'export-whom' : 'export-error'}>{longestWords(all)}</p>
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

/** What the processor has to hold, and whether it does as far as that is known. */
export function longestWords({ longest, largestMs, fits }: DelayExport): string {
  const needs = `The longest delay is ${formatTime(longest.ms, 3)} (${formatNumber(longest.samples)} samples, ${formatNumber(longest.mm)} mm)`;
  if (largestMs === null) return `${needs}; look up whether the processor holds that.`;
  return fits
    ? `${needs}; the processor holds up to ${formatTime(largestMs, 3)}.`
    : `${needs}, and the processor holds no more than ${formatTime(largestMs, 3)}.`;
}

/** The rounded delay in the unit the processor is set in. */
function asSet({ rounded }: DelayRow, { step }: DelayExport): string {
  if (step.kind === 'samples')
    return `${formatNumber(rounded.samples)} ${Math.round(rounded.samples) === 1 ? 'sample' : 'samples'}`;
  if (step.kind === 'time') return formatTime(rounded.ms, decimals(step.ms));
  const { mm, unit = 'mm' } = step;
  const amount = { mm: rounded.mm, cm: rounded.cm, in: rounded.inches }[unit];
  return `${formatNumber(amount, decimals(mm / MM_PER[unit]))} ${unit}`;
}

const MM_PER = { mm: 1, cm: 10, in: 25.4 } as const;

/** As many digits as the step itself has, at most four. */
const decimals = (step: number): number =>
  Math.min(4, (String(Number(step.toFixed(4))).split('.')[1] ?? '').length);
