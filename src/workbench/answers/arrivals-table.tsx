import type { EarArrival } from '../../geometry';
import { formatAngle, formatLength, formatLevel, formatTime } from '../../plan/units';
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
    <td className={line === 'clear' ? undefined : 'sign-blocked'}>
      {formatLength(direct, unit)}
      {line === 'blocked' && ' blocked'}
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
              <th scope="col">Path</th>
              <th scope="col">Time</th>
              <th scope="col" className="text">
                Line
              </th>
              <th scope="col">Off axis</th>
              <th scope="col">to its right</th>
              <th scope="col">upward</th>
              <th scope="col">Level</th>
              <th scope="col">Left ear</th>
              <th scope="col">Right ear</th>
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
                  <td className="strong">{formatLength(arrival.path, unit)}</td>
                  <td>{formatTime(arrival.time)}</td>
                  <td className="text">
                    <LineSign line={arrival.line} />
                    {things.length > 0 && <span className="by"> by {list(things)}</span>}
                  </td>
                  <td title={arrival.reasons?.join('; ')}>{formatAngle(arrival.offAxisDeg)}</td>
                  <td>{formatAngle(arrival.offAxisHorizontalDeg)}</td>
                  <td>{formatAngle(arrival.offAxisVerticalDeg)}</td>
                  <td>{formatLevel(arrival.levelDb)}</td>
                  {ear(arrival.ears.left)}
                  {ear(arrival.ears.right)}
                </SpeakerRow>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
      <p className="footnote">
        Path and time run from the speaker’s reference point to the middle of the head, in a
        straight line: the way round an obstacle is not computed yet. Off axis is the angle between
        the speaker’s axis and that line. Level is spreading alone, against 1 m on axis in a free
        field; the level in a cabin does not follow it.
      </p>
    </>
  );
}
