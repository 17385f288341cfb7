import type { Compromise, Stage } from '../../../geometry';
import { seatName, speakerName } from '../../../plan/names';
import { formatNumber, lengthNumber } from '../../../plan/units';
import { useSession } from '../../../store';
import { trimmed } from '../../parts/field-kind';
import { TableScroll } from '../../parts/table-scroll';
import { SpeakerHead, SpeakerRow } from '../speaker-button';
import { type SeatWording, worstOf } from './seat-words';

export interface CompromiseProps {
  answer: Compromise;
  stage: Stage;
  wording: SeatWording;
}

/** What error each seat is left with, and by which speaker. */
export function CompromiseSeats({ answer, stage }: CompromiseProps) {
  const unit = useSession((session) => session.lengthUnit);
  const { speakers } = stage.option;
  return (
    <TableScroll label="What each seat is left with">
      <table className="numbers">
        <caption>What each seat is left with</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Seat
            </th>
            <th scope="col">Weight</th>
            <th scope="col">Error up to, ms</th>
            <th scope="col">that is, {unit}</th>
            <th scope="col" className="text">
              Worst speaker
            </th>
            <th scope="col">rounded, ms</th>
          </tr>
        </thead>
        <tbody>
          {answer.seats.map((seat) => {
            const worst = worstOf(seat);
            const speaker = speakers.find(({ id }) => id === worst?.speaker);
            return (
              <tr key={seat.id}>
                <th scope="row">{seatName(seat.id)}</th>
                <td>{trimmed(seat.weight, 2)}</td>
                <td className="strong">{formatNumber(seat.largestError, 3)}</td>
                <td>{lengthNumber(seat.largestError * stage.result.speedOfSound, unit)}</td>
                <td className="text">
                  {worst && speaker
                    ? `${speakerName(speaker, speakers)}, ${worst.error > 0 ? 'late' : 'early'}`
                    : 'none'}
                </td>
                <td>{formatNumber(seat.roundedLargestError, 3)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}

/** The delays and gains of the compromise. */
export function CompromiseDelays({ answer, stage }: CompromiseProps) {
  const { speakers } = stage.option;
  return (
    <TableScroll label="Delays and gains of the compromise">
      <table className="numbers">
        <caption>Its delays and gains</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Speaker
            </th>
            <th scope="col">Delay, ms</th>
            <th scope="col">Samples</th>
            <th scope="col">rounded</th>
            <th scope="col">that is, ms</th>
            <th scope="col">Gain, dB</th>
          </tr>
        </thead>
        <tbody>
          {answer.channels.map((channel) => {
            const speaker = speakers.find(({ id }) => id === channel.speaker);
            if (!speaker) return null;
            return (
              <SpeakerRow key={speaker.id} id={speaker.id}>
                <SpeakerHead speaker={speaker} among={speakers} />
                <td className="strong">{formatNumber(channel.delay, 3)}</td>
                <td>{formatNumber(channel.samples, 2)}</td>
                <td>{formatNumber(Math.round(channel.samples))}</td>
                <td>{formatNumber(channel.roundedDelay, 3)}</td>
                <td>{formatNumber(channel.gainDb, 1)}</td>
              </SpeakerRow>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}
