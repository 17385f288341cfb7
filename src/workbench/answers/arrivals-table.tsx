import type { Arrival, EarArrival } from '../../geometry';
import {
  formatAngle,
  formatFrequency,
  formatNumber,
  type LengthUnit,
  lengthNumber,
  withSign,
} from '../../plan/units';
import { useSession } from '../../store';
import { LineSign } from '../parts/marks';
import { TableScroll } from '../parts/table-scroll';
import type { Board } from '../parts/use-board';
import { ReasonNotes } from './reason-notes';
import { SpeakerHead, SpeakerRow } from './speaker-button';
import { middleOctave, things } from './way-words';
import { wordingFor } from './wording';

/** What each speaker does at the seat in view. */
export function ArrivalsTable({ board }: { board: Board }) {
  const unit = useSession((session) => session.lengthUnit);
  const { cabin, option, seat } = board;
  if (!option || !seat) return null;
  const wording = wordingFor(cabin, option.speakers, unit);
  const rows = option.speakers.flatMap((speaker) => {
    const arrival = seat.arrivals.find((a) => a.speaker === speaker.id);
    return arrival
      ? [{ speaker, arrival, octave: middleOctave(arrival.bands, speaker.bandHz) }]
      : [];
  });
  return (
    <>
      <TableScroll label="Arrivals">
        <table className="numbers arrivals">
          <caption className="unseen">Arrivals</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Path, {unit}</th>
              <th scope="col">longer</th>
              <th scope="col">Time, ms</th>
              <th scope="col" className="text">
                Line
              </th>
              <th scope="col">Off axis</th>
              <th scope="col">sideways</th>
              <th scope="col">upward</th>
              <th scope="col">Level, dB</th>
              <th scope="col" className="text">
                Way
              </th>
              <th scope="col">
                Off-axis <br />
                loss, dB
              </th>
              <th scope="col">
                Loss in <br />
                the way, dB
              </th>
              <th scope="col">at</th>
              <th scope="col">Left ear, {unit}</th>
              <th scope="col">Right ear, {unit}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ speaker, arrival, octave }) => (
              <SpeakerRow key={speaker.id} id={speaker.id}>
                <SpeakerHead speaker={speaker} among={option.speakers} />
                <td className="strong">{lengthNumber(arrival.path, unit)}</td>
                <td>{longer(arrival, unit)}</td>
                <td>{formatNumber(arrival.time, 2)}</td>
                <td className="text">
                  <LineSign line={arrival.line} />
                </td>
                <td>{formatAngle(arrival.offAxisDeg)}</td>
                <td>{formatAngle(arrival.offAxisHorizontalDeg)}</td>
                <td>{formatAngle(arrival.offAxisVerticalDeg)}</td>
                <td>{formatNumber(arrival.levelDb, 1)}</td>
                <td className="text dim">{wayInWords(arrival, (ids) => things(ids, wording))}</td>
                <td>{formatNumber(octave?.directivityDb, 1)}</td>
                <td>{formatNumber(octave && minus(octave.obstructionDb), 1)}</td>
                <td>{formatFrequency(octave?.frequencyHz)}</td>
                <EarCell ear={arrival.ears.left} unit={unit} />
                <EarCell ear={arrival.ears.right} unit={unit} />
              </SpeakerRow>
            ))}
          </tbody>
        </table>
      </TableScroll>
      <ReasonNotes
        speakers={option.speakers}
        of={rows.map(({ speaker, arrival, octave }) => ({
          speaker,
          reasons: [
            ...(arrival.reasons ?? []),
            ...(octave?.reason ? [octave.reason] : []),
            ...(octave ? [] : ['the plan gives it no band that holds an octave, so no losses']),
          ],
        }))}
      />
      <p className="footnote">
        Path and time run from the speaker’s reference point to the middle of the head by the
        shortest free way, to the ears likewise; longer is what that adds to the straight line. A
        near miss has something within 0.6 of the first Fresnel radius at the bottom of the
        speaker’s band. Off axis is the angle between the speaker’s axis and the straight line;
        sideways is positive to the speaker’s own right. Level is spreading along the way alone,
        against 1 m on axis in a free field; the level in a cabin does not follow it. The losses are
        those of one octave, nearest the middle of the band: a piston’s (or what was measured) off
        the axis, and Kurze and Anderson’s for a hard edge in the way, of which soft bodies take
        less. Levels has every band.
      </p>
    </>
  );
}

function wayInWords(
  { line, detour, round, blockedBy, grazedBy }: Arrival,
  named: (ids: readonly string[]) => string,
): string {
  if (line === 'clear') return 'straight';
  if (line === 'grazing') return `close to ${named(grazedBy)}`;
  if (detour === null) return `none: blocked by ${named(blockedBy)}`;
  return `round ${named(round.length > 0 ? round : blockedBy)}`;
}

/** How much longer than straight, with a digit more where it is less than one. */
function longer({ line, path, direct }: Arrival, unit: LengthUnit): string {
  if (line !== 'blocked') return lengthNumber(0, unit, 0);
  const more = path - direct;
  return withSign(lengthNumber(more, unit, unit === 'mm' && more < 0.95 ? 1 : undefined));
}

const minus = (db: number | null): number | null => (db === null ? null : -db);

function EarCell({ ear: { path, line }, unit }: { ear: EarArrival; unit: LengthUnit }) {
  return (
    <td>
      {line !== 'clear' && <LineSign line={line} wordless />}
      {line !== 'clear' && (
        <span className="unseen">{line === 'blocked' ? 'blocked, ' : 'near miss, '}</span>
      )}
      {lengthNumber(path, unit)}
    </td>
  );
}
