import { type KeyboardEvent, type ReactNode, useId } from 'react';
import type { CabinModel } from '../../../geometry';
import { pairName } from '../../../plan/names';
import { formatNumber, type LengthUnit } from '../../../plan/units';
import { TableScroll } from '../../parts/table-scroll';
import { capital } from '../capital';
import type { Found, Measure, Proposal } from './found';
import { changeText, MEASURE_NAMES, measureText } from './measure-words';
import { chooseProposal } from './search-store';
import { spotWord, takeAnswer } from './take-answer';
import { shortPlace, spotTitle } from './where-words';

export interface ProposalsTableProps {
  found: Found;
  list: readonly Proposal[];
  chosen: string | null;
  cabin: CabinModel;
  unit: LengthUnit;
  caption: string;
  /** Also the row of where the pair stands now, and how each changes from it. */
  withNow?: boolean;
  head?: (measure: Measure | 'score') => ReactNode;
  sort?: (measure: Measure | 'score') => 'ascending' | 'descending' | undefined;
}

/**
 * Proposals, one a row. One is chosen by click or arrow keys; Enter or N on it takes it as an
 * option.
 */
export function ProposalsTable(props: ProposalsTableProps) {
  const { found, list, chosen, cabin, unit, caption, withNow, head, sort } = props;
  const name = useId();
  const word = capital(spotWord(found));
  const several = found.pairs.length > 1;
  const now = withNow ? found.now : null;
  // One radio of a group is in the tab order: the chosen one, or the first.
  const onKeyDown = (event: KeyboardEvent, one: Proposal) => {
    const takes = event.key === 'Enter' || event.key.toLowerCase() === 'n';
    if (!takes || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    takeAnswer(found, one);
  };
  return (
    <TableScroll label={caption}>
      <table className="numbers search-table" data-several={several}>
        <caption className="unseen">{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              {word}
            </th>
            <th scope="col" className="text">
              Where
            </th>
            {found.columns.map((measure) => (
              <th key={measure} scope="col" aria-sort={sort?.(measure)}>
                {head?.(measure) ?? MEASURE_NAMES[measure]}
              </th>
            ))}
            <th scope="col" aria-sort={sort?.('score')}>
              {head?.('score') ?? 'Score'}
            </th>
          </tr>
        </thead>
        <tbody>
          {now && (
            <tr className="search-now">
              <th scope="row" className="text">
                Now
              </th>
              <td className="text">As they stand</td>
              {found.columns.map((measure) => (
                <td key={measure}>{measureText(measure, now.measures[measure], unit)}</td>
              ))}
              <td>{formatNumber(now.score, 2)}</td>
            </tr>
          )}
          {list.map((one) => (
            <tr
              key={one.key}
              data-selected={one.key === chosen}
              onClick={() => chooseProposal(one.key)}
            >
              <th scope="row">
                <label className="tick search-pick">
                  <input
                    type="radio"
                    name={name}
                    value={one.key}
                    checked={one.key === chosen}
                    onChange={() => chooseProposal(one.key)}
                    onKeyDown={(event) => onKeyDown(event, one)}
                    aria-label={`${word} ${one.key}: ${titleOf(one)}`}
                  />
                  {one.key}
                </label>
              </th>
              <td className="text search-where">
                {one.spots.map((spot) => (
                  <span key={spot.pair}>
                    {several
                      ? `${capital(pairName(spot.pair, found.option.speakers))}: ${spotTitle(spot)}`
                      : capital(spotTitle(spot))}
                    {!several && (
                      <span className="search-small">{shortPlace(spot, cabin, unit)}</span>
                    )}
                  </span>
                ))}
              </td>
              {found.columns.map((measure) => (
                <td key={measure}>
                  {measureText(measure, one.measures[measure], unit)}
                  {now && (
                    <span className="search-small">
                      {changeText(measure, one.measures[measure], now.measures[measure], unit)}
                    </span>
                  )}
                </td>
              ))}
              <td className="strong">{formatNumber(one.score, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

export const titleOf = ({ spots }: Proposal): string => spots.map(spotTitle).join(', ');
