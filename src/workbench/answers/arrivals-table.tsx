import type { EarArrival } from '../../geometry';
import { formatAngle, formatNumber, lengthNumber } from '../../plan/units';
import { useSession } from '../../store';
import { LineSign } from '../parts/marks';
import { thingName } from '../parts/names';
import { TableScroll } from '../parts/table-scroll';
import type { Board } from '../parts/use-board';
import { list } from './pair-words';
import { SpeakerHead, SpeakerRow } from './speaker-button';

/** What each speaker does at the seat in view. */
export function ArrivalsTable({ board }: { board: Board }) {
  const unit = useSession((session) => session.lengthUnit);
  const { cabin, option, seat } = board;
  if (!option || !seat) return null;
  const ear = ({ direct, line }: EarArrival) => (
    <td>
      {line === 'blocked' && <LineSign line="blocked" wordless />}
      {line === 'blocked' && <span className="unseen">blocked, </span>}
      {lengthNumber(direct, unit)}
    </td>
  );
  return (
    <>
      <TableScroll label="Arrivals">
        <table className="numbers">
          <caption className="unseen">Arrivals</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Path, {unit}</th>
              <th scope="col">Time, ms</th>
              <th scope="col" className="text">
                Line
              </th>
              <th scope="col">Off axis</th>
              <th scope="col">sideways</th>
              <th scope="col">upward</th>
              <th scope="col">Level, dB</th>
              <th scope="col">Left ear</th>
              <th scope="col">Right ear</th>
              <th scope="col" className="text">
                Blocked by
              </th>
            </tr>
          </thead>
          <tbody>
            {option.speakers.map((speaker) => {
              const arrival = seat.arrivals.find((a) => a.speaker === speaker.id);
              if (!arrival) return null;
              const things = arrival.blockedBy.map((id) => thingName(cabin, id));
              return (
                <SpeakerRow key={speaker.id} id={speaker.id}>
                  <SpeakerHead speaker={speaker} among={option.speakers} />
                  <td className="strong">{lengthNumber(arrival.path, unit)}</td>
                  <td>{formatNumber(arrival.time, 2)}</td>
                  <td className="text">
                    <LineSign line={arrival.line} />
                  </td>
                  <td title={arrival.reasons?.join('; ')}>{formatAngle(arrival.offAxisDeg)}</td>
                  <td>{formatAngle(arrival.offAxisHorizontalDeg)}</td>
                  <td>{formatAngle(arrival.offAxisVerticalDeg)}</td>
                  <td>{formatNumber(arrival.levelDb, 1)}</td>
                  {ear(arrival.ears.left)}
                  {ear(arrival.ears.right)}
                  <td className="text dim">{things.length > 0 ? list(things) : 'nothing'}</td>
                </SpeakerRow>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
      <p className="footnote">
        Path and time run from the speaker’s reference point to the middle of the head in a straight
        line, ears to each ear: the way round an obstacle is not computed yet. Off axis is the angle
        between the speaker’s axis and that line; sideways is positive to the speaker’s own right.
        Level is spreading alone, against 1 m on axis in a free field; the level in a cabin does not
        follow it.
      </p>
    </>
  );
}
