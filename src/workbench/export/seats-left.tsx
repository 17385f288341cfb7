import { useId } from 'react';
import type { DelayExport } from '../../exchange';
import { formatLength, formatNumber, formatTime } from '../../plan/units';
import { useSession } from '../../store';

/** What a compromise leaves at each of its seats, with the delays as they will be set. */
export function SeatsLeft({ all }: { all: DelayExport }) {
  const unit = useSession((state) => state.lengthUnit);
  const id = useId();
  return (
    <>
      <h3 className="export-title" id={`${id}-title`}>
        What each seat is left with
      </h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled by keyboard too */}
      <section className="table-scroll" tabIndex={0} aria-labelledby={`${id}-title`}>
        <table className="numbers" aria-labelledby={`${id}-title`}>
          <thead>
            <tr>
              <th scope="col" className="text">
                Seat
              </th>
              <th scope="col">Counts</th>
              <th scope="col">At most early or late</th>
              <th scope="col">The same as a path</th>
              <th scope="col">Before rounding</th>
            </tr>
          </thead>
          <tbody>
            {all.seats.map((seat) => (
              <tr key={seat.id}>
                <th scope="row">
                  <span className="first-large">{seat.name}</span>
                </th>
                <td>{formatNumber(seat.weight, (seat.weight ?? 0) % 1 === 0 ? 0 : 2)}</td>
                <td>
                  <strong>{formatTime(seat.largestErrorSetMs, 3)}</strong>
                </td>
                <td>{formatLength(seat.largestErrorSetMs * all.speedOfSound, unit)}</td>
                <td>{formatTime(seat.largestErrorMs, 3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="footnote">
        Told from the middle of the first and the last to arrive at that seat: two speakers may be
        twice this apart. The file has the error of every speaker at every seat.
      </p>
    </>
  );
}
