import type { CompareCell as Cell, Measure } from '../../../geometry';
import { BestSign } from './best-sign';
import { changeWords, sureWords } from './change-words';
import { type CompareWording, valueNote, valueWords } from './measure-words';

interface CompareCellProps {
  measure: Measure;
  cell: Cell;
  wording: CompareWording;
}

/** One option's value, whether it is the best, and how it differs from the baseline's. */
export function CompareCell({ measure, cell, wording }: CompareCellProps) {
  const note = valueNote(measure, cell.value, wording);
  const change = changeWords(measure, cell, wording);
  const sure = sureWords(cell);
  const shown = change !== '' && change !== 'baseline';
  return (
    <td className="text wrap" data-best={cell.best}>
      <span className="compare-value">
        {cell.best && <BestSign />}
        {valueWords(measure, cell.value, wording)}
      </span>
      {note && <span className="compare-note">{note}</span>}
      {shown && (
        <span className="compare-change" data-unsure={sure !== ''}>
          {change}
          {sure && `, ${sure}`}
        </span>
      )}
    </td>
  );
}
