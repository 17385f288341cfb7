import {
  type CompareRow,
  compareOptions,
  type MeasuredOption,
  type MeasureKind,
} from '../../geometry';
import { optionTitle } from '../../plan/edits';
import type { PlanOption } from '../../plan/types';
import type { PaperFacts } from '../facts';
import { type Block, heading, piece } from '../page';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import { plainValue, whoName } from './plain-value';
import { unsizedIn } from './unsized';

/** Told to a customer, in this order. */
const TOLD: readonly MeasureKind[] = ['difference', 'line', 'offAxisDeg', 'misfits', 'keepClear'];
/** Columns beyond these would be too narrow to read. */
const MOST_OPTIONS = 4;

/** The chosen option beside the others: a few plain measures, the best marked by sign and weight. */
export function compareBlocks(
  facts: PaperFacts,
  measured: readonly MeasuredOption[],
  words: PrintedWords,
): Block[] {
  const { plan, option, seat, result } = facts;
  const { t, names } = words;
  const others = plan.options.filter(({ id }) => id !== option.id);
  if (others.length === 0 || !seat) return [];
  const shown = [option, ...others].slice(0, MOST_OPTIONS);
  const ids = shown.map(({ id }) => id);
  const chosen = measured.filter((one) => ids.includes(one.option));
  const rows = compareOptions(chosen, option.id, null).filter(
    ({ measure, alike, cells }) =>
      TOLD.includes(measure.kind) &&
      (measure.seat === null ||
        (measure.seat === seat.id &&
          !alike &&
          // What only one of them has cannot be compared.
          cells.filter(({ value }) => value.value !== null || value.none).length > 1)),
  );
  rows.sort((a, b) => TOLD.indexOf(a.measure.kind) - TOLD.indexOf(b.measure.kind));
  const blocks: Block[] = [heading('compare', t('customer.compare', { count: others.length }))];
  blocks.push({
    kind: 'table',
    id: 'compare-table',
    className: 'compare',
    caption: t('customer.compare', { count: others.length }),
    head: (
      <tr>
        <th scope="col">{t('customer.compare.measure', { seat: names.seat(seat.id) })}</th>
        {shown.map((one, i) => (
          <th key={one.id} scope="col" className="typed">
            {i === 0
              ? t('customer.compare.chosen', { option: optionTitle(one) })
              : optionTitle(one)}
          </th>
        ))}
      </tr>
    ),
    rows: rows.map((row) => (
      <Row
        key={row.measure.id}
        row={row}
        options={shown}
        speed={result.speedOfSound}
        words={words}
      />
    )),
  });
  const more = others.length + 1 - shown.length;
  blocks.push(
    piece(
      'compare-key',
      <p className="paper-small">
        {rows.every(({ alike }) => alike) ? t('customer.compare.alike') : t('customer.compare.key')}
        {more > 0 && ` ${t('customer.compare.more', { count: more })}`}
      </p>,
    ),
  );
  return blocks;
}

interface RowProps {
  row: CompareRow;
  options: readonly PlanOption[];
  speed: number;
  words: PrintedWords;
}

function Row({ row: { measure, cells }, options, speed, words }: RowProps) {
  const { t } = words;
  // Of speakers without sizes it is not known: then none of the options is the best.
  const unknown = (option: PlanOption) => (measure.kind === 'misfits' ? unsizedIn(option) : 0);
  const told = options.every((option) => unknown(option) === 0);
  const who = measure.who ? whoName(measure.who, words) : '';
  return (
    <tr>
      <th scope="row">{t(`customer.row.${measure.kind}` as WordKey, { who })}</th>
      {options.map((option) => {
        const cell = cells.find((one) => one.option === option.id);
        const value = cell ? plainValue(measure.kind, cell.value, speed, words) : '–';
        const count = unknown(option);
        const text = count > 0 ? t('customer.compare.unsized', { value, count }) : value;
        return (
          <td key={option.id}>
            {cell?.best && told ? (
              <strong>
                <span aria-hidden="true">◆ </span>
                <span className="unseen">{t('customer.compare.best')}: </span>
                {text}
              </strong>
            ) : (
              text
            )}
          </td>
        );
      })}
    </tr>
  );
}
