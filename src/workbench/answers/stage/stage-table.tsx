import type { CompareCell, CompareRow, Stage } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { seatName } from '../../../plan/names';
import { formatFrequency, NO_VALUE } from '../../../plan/units';
import { TableScroll } from '../../parts/table-scroll';
import { BestSign } from '../compare/best-sign';
import { type CompareWording, crossingName, sideAngle, valueWords } from '../compare/measure-words';
import { shortAngle } from './stage-words';

interface StageTableProps {
  options: readonly Stage['option'][];
  /** Of one seat. */
  rows: readonly CompareRow[];
  seat: string;
  board: string;
  wording: CompareWording;
}

/** Options in rows, one line each. */
export function StageTable({ options, rows, seat, board, wording }: StageTableProps) {
  const of = (...kinds: CompareRow['measure']['kind'][]) =>
    rows.filter(({ measure }) => kinds.includes(measure.kind));
  const spreads = of('pathSpread');
  const sums = of('crossoverDb');
  const octaves = of('imageOctaveDeg').filter(({ cells }) =>
    cells.some(({ value }) => value.value !== null),
  );
  const wide = of('imageSpreadDeg');
  const dipOf = (row: CompareRow) =>
    of('crossoverDipDb').find(
      ({ measure }) =>
        measure.crossing &&
        row.measure.crossing &&
        crossingName(measure.crossing) === crossingName(row.measure.crossing),
    );
  const cellOf = (row: CompareRow | undefined, id: string) =>
    row?.cells.find(({ option }) => option === id);
  return (
    <TableScroll label="Whole stage">
      <table className="numbers stage-table">
        <caption className="unseen">Each option as one stage at the {seatName(seat)}</caption>
        <thead>
          <tr>
            <th scope="col" rowSpan={2} className="text">
              Option
            </th>
            {spreads.length > 0 && (
              <th scope="colgroup" colSpan={spreads.length}>
                Path spread, {wording.unit}
              </th>
            )}
            {sums.map((row) => (
              <th key={row.measure.id} scope="colgroup" colSpan={2}>
                {row.measure.crossing && crossingName(row.measure.crossing)}, dB
              </th>
            ))}
            {octaves.length + wide.length > 0 && (
              <th scope="colgroup" colSpan={octaves.length + wide.length}>
                Image at, Hz
              </th>
            )}
          </tr>
          <tr>
            {spreads.map(({ measure }) => (
              <th key={measure.id} scope="col">
                {measure.side}
              </th>
            ))}
            {sums.flatMap(({ measure: { id } }) => [
              <th key={id} scope="col">
                at it
              </th>,
              <th key={`${id} dip`} scope="col">
                worst dip
              </th>,
            ])}
            {wide.map(({ measure }) => (
              <th key={measure.id} scope="col">
                spread
              </th>
            ))}
            {octaves.map(({ measure }) => (
              <th key={measure.id} scope="col">
                {formatFrequency(measure.octaveHz).replace(/ ?Hz$/, '')}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {options.map((option) => (
            <tr key={option.id} data-selected={options.length > 1 && option.id === board}>
              <th scope="row" dir="auto">
                {optionTitle(option)}
              </th>
              {spreads.map((row) => (
                <Plain key={row.measure.id} row={row} option={option.id} wording={wording} />
              ))}
              {sums.flatMap((row) => [
                <Plain key={row.measure.id} row={row} option={option.id} wording={wording} />,
                <Plain
                  key={`${row.measure.id} dip`}
                  row={dipOf(row)}
                  option={option.id}
                  wording={wording}
                />,
              ])}
              {wide.map((row) => (
                <Plain key={row.measure.id} row={row} option={option.id} wording={wording} />
              ))}
              {octaves.map((row) => (
                <Octave key={row.measure.id} cell={cellOf(row, option.id)} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

interface PlainProps {
  row: CompareRow | undefined;
  option: string;
  wording: CompareWording;
}

function Plain({ row, option, wording }: PlainProps) {
  const cell = row?.cells.find((one) => one.option === option);
  if (!row || !cell) return <td>{NO_VALUE}</td>;
  return (
    <td data-best={cell.best}>
      <span className="compare-value">
        {cell.best && <BestSign />}
        {valueWords(row.measure, cell.value, wording).replace(/ (mm|in|dB)$/, '')}
      </span>
    </td>
  );
}

function Octave({ cell }: { cell: CompareCell | undefined }) {
  const { value = null, atLimit = false } = cell?.value ?? {};
  if (value === null) return <td>{NO_VALUE}</td>;
  return (
    <td>
      <span aria-hidden="true">{shortAngle(value, atLimit)}</span>
      <span className="unseen">{sideAngle(value, atLimit)}</span>
    </td>
  );
}
