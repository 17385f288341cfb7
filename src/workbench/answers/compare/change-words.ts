import { type CompareCell, KINDS, type Measure, type MeasuredOption } from '../../../geometry';
import { amount, type CompareWording } from './measure-words';

export type Option = MeasuredOption['stage']['option'];

/** How a cell differs from the baseline's: "better by 133 mm", "alike", "worse". */
export function changeWords(
  measure: Measure,
  { change, against }: Pick<CompareCell, 'change' | 'against'>,
  wording: CompareWording,
): string {
  if (against === 'baseline') return 'baseline';
  if (against === 'alike') return 'alike';
  if (against === 'unknown' || change === null) return '';
  const by = changeAmount(measure, change, wording);
  if (against === 'other') return by ? `${by} further ${change < 0 ? 'left' : 'right'}` : 'differs';
  return by ? `${against} by ${by}` : against;
}

/** How much; empty where a number says nothing: a line, a reflection that is not there. */
export function changeAmount(measure: Measure, change: number, wording: CompareWording): string {
  if (!Number.isFinite(change) || measure.kind === 'line') return '';
  if (KINDS[measure.kind].unit === 'speakers') return String(Math.abs(change));
  return amount(measure, Math.abs(change), wording);
}

/** Said of a difference no larger than it is uncertain. */
export const WITHIN = 'within what a tape can tell';

/** How sure a cell's difference is; empty where it is sure, or nothing has been tried. */
export function sureWords({ against, beyond, uncertainty }: CompareCell): string {
  if (against !== 'better' && against !== 'worse' && against !== 'other') return '';
  if (beyond === false) return WITHIN;
  return beyond === null && uncertainty ? 'how sure is not known' : '';
}
