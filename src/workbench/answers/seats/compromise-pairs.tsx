import { pairName, seatName } from '../../../plan/names';
import { formatNumber } from '../../../plan/units';
import { TableScroll } from '../../parts/table-scroll';
import type { CompromiseProps } from './compromise-tables';
import { pairSentence } from './seat-words';

const signed = (ms: number): string => `${ms >= 0.0005 ? '+' : ''}${formatNumber(ms, 2)}`;

/** Each pair's difference at every seat, before and after, and which no delay can save. */
export function CompromisePairs({ answer, stage, wording }: CompromiseProps) {
  const { speakers } = stage.option;
  const { pairs, seats } = answer;
  if (pairs.length === 0) return null;
  return (
    <>
      <ul className="pair-verdicts">
        {pairs.map((pair) => (
          <li key={pair.pair} data-opposite={pair.opposite}>
            {pairSentence(pair, wording)}
          </li>
        ))}
      </ul>
      <TableScroll label="Left minus right of each pair">
        <table className="numbers">
          <caption>Left minus right, ms: as built, and with the delays</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Pair
              </th>
              {seats.map(({ id }) => (
                <th key={id} scope="col">
                  {seatName(id)}
                </th>
              ))}
              <th scope="col" className="text">
                Signs
              </th>
              <th scope="col">Any delay leaves</th>
            </tr>
          </thead>
          <tbody>
            {pairs.map((pair) => (
              <tr key={pair.pair}>
                <th scope="row">{pairName(pair.pair, speakers)}</th>
                {pair.differences.map((one) => (
                  <td key={one.seat}>
                    <span className="dim">{signed(one.differenceTime)} → </span>
                    <span className="strong">{signed(one.remaining)}</span>
                  </td>
                ))}
                <td className="text">{pair.opposite ? 'opposite' : 'alike'}</td>
                <td>{formatNumber(pair.leftOver, 2)} or more</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </>
  );
}
