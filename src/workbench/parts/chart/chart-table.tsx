import { NO_VALUE } from '../../../plan/units';
import { TableScroll } from '../table-scroll';
import { alignSeries } from './chart-data';
import { shown } from './chart-sentence';
import type { LineChartProps } from './chart-types';

/** The numbers of a chart, behind a word. */
export function ChartTable({ label, x, y, series }: LineChartProps) {
  const { xs, ys } = alignSeries(series);
  return (
    <details className="chart-table">
      <summary>Show as a table</summary>
      <TableScroll label={`${label}, as a table`}>
        <table className="numbers">
          <caption className="unseen">
            {label}: {y.label}
          </caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                {x.label}
              </th>
              {series.map((one) => (
                <th scope="col" key={one.label}>
                  {one.label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {xs.map((at, row) => (
              <tr key={at}>
                <th scope="row">{shown(x, at)}</th>
                {series.map((one, i) => {
                  const value = ys[i]?.[row];
                  return (
                    <td key={one.label}>
                      {value === undefined ? '' : value === null ? NO_VALUE : shown(y, value)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </details>
  );
}
