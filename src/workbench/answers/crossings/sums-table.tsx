import { polaritiesOf, type SideSum } from '../../../geometry';
import { roleName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { formatNumber, NO_VALUE } from '../../../plan/units';
import { SideMark } from '../../parts/marks';
import { plainReasons } from '../../parts/plain-reason';
import { TableScroll } from '../../parts/table-scroll';
import { crossoverWords, frequencyList, polesWords } from './crossing-words';

interface SumsTableProps {
  option: PlanOption;
  sums: readonly SideSum[];
  nameOf: (sum: SideSum) => string;
}

/** Every hand-over on both sides, in numbers; a reason where there is none. */
export function SumsTable({ option, sums, nameOf }: SumsTableProps) {
  const poles = polaritiesOf(option);
  const pole = (id: string | null) => {
    const speaker = option.speakers.find((one) => one.id === id);
    return speaker && { name: roleName(speaker.role), swapped: poles.get(speaker.id) ?? false };
  };
  return (
    <TableScroll label="All hand-overs">
      <table className="numbers">
        <caption>All hand-overs at this seat</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Hand-over
            </th>
            <th scope="col" className="text">
              Side
            </th>
            <th scope="col">From ideal, dB</th>
            <th scope="col" className="text">
              Nulls
            </th>
            <th scope="col">Upper later, ms</th>
            <th scope="col" className="text">
              Poles
            </th>
          </tr>
        </thead>
        <tbody>
          {sums.map((sum, i) => {
            const { side, result, late, low, high, crossing } = sum;
            const { crossover, proposed } = crossing;
            const [below, above] = [pole(low), pole(high)];
            const reasons = plainReasons(sum.reasons, option.speakers);
            const first = sums[i - 1]?.crossing !== crossing;
            return (
              <tr key={`${crossover.below} ${crossover.above} ${side}`}>
                {first && (
                  <th
                    scope="rowgroup"
                    className="crossing-name"
                    rowSpan={sums.filter((one) => one.crossing === crossing).length}
                  >
                    {nameOf(sum)}
                    <span className="crossing-filter">
                      {crossoverWords(crossover)}, {proposed ? 'proposed' : 'listed'}
                    </span>
                  </th>
                )}
                <th scope="row">
                  <SideMark side={side} />
                  <span className="unseen">{side}</span>
                </th>
                <td className="strong">{formatNumber(result?.atCrossover.deviationDb, 1)}</td>
                <td className={reasons.length > 0 ? 'text wrap' : 'text'}>
                  {!result
                    ? NO_VALUE
                    : result.nulls.length === 0
                      ? 'none'
                      : frequencyList(result.nulls.map(({ frequencyHz }) => frequencyHz))}
                  {reasons.length > 0 && (
                    <span className="crossing-filter">{reasons.join(' ')}</span>
                  )}
                </td>
                <td>{formatNumber(late, 3)}</td>
                <td className="text">{below && above ? polesWords(below, above) : NO_VALUE}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}
