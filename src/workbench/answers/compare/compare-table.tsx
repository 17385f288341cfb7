import {
  type CompareRow,
  KINDS,
  type MeasureGroup,
  type Stage,
  type Verdict,
} from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { formatNumber } from '../../../plan/units';
import { sessionStore } from '../../../store';
import { TableScroll } from '../../parts/table-scroll';
import { BestSign } from './best-sign';
import { CompareCell } from './compare-cell';
import { type CompareWording, GROUP_NAMES, measureName, whoName } from './measure-words';

interface CompareTableProps {
  caption: string;
  options: readonly Stage['option'][];
  rows: readonly CompareRow[];
  verdicts: readonly Verdict[];
  /** Of the option on the board. */
  board: string | null;
  baseline: string;
  onBaseline: (id: string) => void;
  wording: CompareWording;
}

/** Options in columns, measures in rows. */
export function CompareTable(props: CompareTableProps) {
  const { caption, options, rows, verdicts, board, baseline, onBaseline, wording } = props;
  const groups = (Object.keys(GROUP_NAMES) as MeasureGroup[]).flatMap((group) => {
    const own = rows.filter(({ measure }) => KINDS[measure.kind].group === group);
    return own.length > 0 ? [{ group, own }] : [];
  });
  return (
    <TableScroll label="Options compared">
      <table className="numbers compare-table">
        <caption className="unseen">{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              <span className="unseen">Measure</span>
            </th>
            {options.map((option) => (
              <th key={option.id} scope="col" className="text wrap">
                <span className="compare-title" dir="auto">
                  {optionTitle(option)}
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">On the board</th>
            {options.map((option) => (
              <td key={option.id} className="text">
                {/* One button for both states, so that pressing it does not lose the focus. */}
                <button
                  type="button"
                  aria-pressed={option.id === board}
                  onClick={() => sessionStore.setState({ option: option.id, selection: null })}
                >
                  {option.id === board ? 'This one' : 'Put it here'}
                  <span className="unseen"> ({optionTitle(option)})</span>
                </button>
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row">Differences from</th>
            {options.map((option) => (
              <td key={option.id} className="text">
                <label className="compare-baseline">
                  <input
                    type="radio"
                    name="compare-baseline"
                    checked={option.id === baseline}
                    onChange={() => onBaseline(option.id)}
                  />
                  this one<span className="unseen"> ({optionTitle(option)})</span>
                </label>
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row">By your weights</th>
            {options.map(({ id }) => (
              <VerdictCell key={id} verdict={verdicts.find(({ option }) => option === id)} />
            ))}
          </tr>
        </tbody>
        {groups.map(({ group, own }) => (
          <tbody key={group}>
            <tr className="compare-group">
              <th scope="rowgroup" className="text" colSpan={options.length + 1}>
                <span>{GROUP_NAMES[group]}</span>
              </th>
            </tr>
            {own.map(({ measure, cells }) => (
              <tr key={measure.id}>
                <th scope="row">{measureName(measure)}</th>
                {cells.map((cell) => (
                  <CompareCell key={cell.option} measure={measure} cell={cell} wording={wording} />
                ))}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </TableScroll>
  );
}

function VerdictCell({ verdict }: { verdict: Verdict | undefined }) {
  const unfit = verdict && (verdict.misfits > 0 || verdict.keepClear > 0);
  return (
    <td className="text wrap" data-best={verdict?.best ?? false}>
      <span className="compare-value">
        {verdict?.best && <BestSign />}
        {formatNumber(verdict?.score, 2)}
      </span>
      {verdict && verdict.unweighed.length > 0 && (
        <span className="compare-note">
          {verdict.unweighed.map(whoName).join(', ')} not weighed
        </span>
      )}
      {unfit && (
        <span className="compare-note">
          {verdict.keepClear > 0 ? 'in a place kept clear' : 'does not fit'}
        </span>
      )}
    </td>
  );
}
