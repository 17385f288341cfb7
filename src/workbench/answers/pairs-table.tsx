import { pairName } from '../../plan/names';
import { formatLevel, formatTime, signedLength, withSign } from '../../plan/units';
import { useSession } from '../../store';
import { plainReasons } from '../parts/plain-reason';
import { TableScroll } from '../parts/table-scroll';
import type { Board } from '../parts/use-board';

/** Left minus right of every pair at the seat in view. */
export function PairsTable({ board }: { board: Board }) {
  const unit = useSession((session) => session.lengthUnit);
  const { option, seat } = board;
  if (!option || !seat) return null;
  if (seat.pairs.length === 0)
    return <p className="quiet-text">There is no pair in this option.</p>;
  return (
    <>
      <TableScroll label="Pairs">
        <table className="numbers pairs">
          <caption className="unseen">Pairs, left minus right</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Pair
              </th>
              <th scope="col">Difference</th>
              <th scope="col">in time</th>
              <th scope="col">in level</th>
              <th scope="col" className="text">
                Nearer
              </th>
            </tr>
          </thead>
          <tbody>
            {seat.pairs.map((pair) => (
              <tr key={pair.pair}>
                <th scope="row">{pairName(pair.pair, option.speakers)}</th>
                <td className="strong">{signedLength(pair.difference, unit)}</td>
                <td>{withSign(formatTime(pair.differenceTime))}</td>
                <td>{withSign(formatLevel(pair.levelDifferenceDb))}</td>
                <td className="text">
                  {pair.difference === null
                    ? plainReasons(pair.reasons, option.speakers).join(' ')
                    : Math.abs(pair.difference) < 0.5
                      ? 'neither'
                      : pair.difference < 0
                        ? 'left'
                        : 'right'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
      <p className="footnote">
        Difference is the left path minus the right one, each by its shortest free way to the middle
        of the head: a minus says the left is nearer. Level is free-field spreading along that way
        only; Levels has it by frequency, with what each loses off its axis and round what is in the
        way.
      </p>
    </>
  );
}
