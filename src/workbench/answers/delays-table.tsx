import { seatName } from '../../plan/names';
import { formatNumber } from '../../plan/units';
import { useShownPlan } from '../../store';
import { TableScroll } from '../parts/table-scroll';
import type { Board } from '../parts/use-board';
import { SpeakerHead, SpeakerRow } from './speaker-button';

/** What each channel needs so that all speakers arrive together at the seat in view. */
export function DelaysTable({ board }: { board: Board }) {
  const { sampleRateHz, seat: aligned, by } = useShownPlan().alignment;
  const { option, seat } = board;
  if (!option || !seat) return null;
  return (
    <>
      <TableScroll label="Delays and gains">
        <table className="numbers">
          <caption className="unseen">Delays and gains</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Delay, ms</th>
              <th scope="col">Samples</th>
              <th scope="col">rounded</th>
              <th scope="col">that is, ms</th>
              <th scope="col">left over, µs</th>
              <th scope="col">Gain, dB</th>
            </tr>
          </thead>
          <tbody>
            {option.speakers.map((speaker) => {
              const delay = seat.delays.find((d) => d.speaker === speaker.id);
              if (!delay) return null;
              return (
                <SpeakerRow key={speaker.id} id={speaker.id}>
                  <SpeakerHead speaker={speaker} among={option.speakers} />
                  <td className="strong">{formatNumber(delay.delay, 3)}</td>
                  <td>{formatNumber(delay.samples, 2)}</td>
                  <td>{formatNumber(Math.round(delay.samples))}</td>
                  <td>{formatNumber(delay.roundedDelay, 3)}</td>
                  <td>{formatNumber(delay.residual * 1000, 1)}</td>
                  <td>{formatNumber(delay.gainDb, 1)}</td>
                </SpeakerRow>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
      <p className="footnote">
        Samples at {formatNumber(sampleRateHz)} Hz. The farthest speaker gets no delay. Gain brings
        the nearer of a pair down to the farther, by free-field spreading only: a starting point, to
        be checked by ear and by measuring.
        {by === 'seats' ? (
          <>
            {' '}
            These align for the {seatName(seat.id)} alone; the plan’s own choice is a compromise
            over several seats, under Seats.
          </>
        ) : (
          aligned !== undefined &&
          aligned !== seat.id && (
            <>
              {' '}
              These align for the {seatName(seat.id)}; the plan’s own choice is the{' '}
              {seatName(aligned)}.
            </>
          )
        )}
      </p>
    </>
  );
}
