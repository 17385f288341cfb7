import { useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useTheme } from '../use-theme';
import { useWidth } from '../use-width';
import './chart.css';
import { nearest } from './chart-data';
import { ChartKey } from './chart-key';
import { chartOptions } from './chart-options';
import { chartSentence, shown } from './chart-sentence';
import { ChartTable } from './chart-table';
import type { LineChartProps } from './chart-types';
import { chartTokens } from './tokens';

/** How far from the pointer a value is still read out, pixels. */
const REACH = 24;

/**
 * Lines or stems against one axis. Follows the page's look and width; what stands under the pointer
 * is read out as text, and every number can be had as a table.
 */
export function LineChart(props: LineChartProps) {
  const { label, x, y, series, marks, height } = props;
  const [outer, width] = useWidth<HTMLDivElement>(320);
  const host = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLParagraphElement>(null);
  const theme = useTheme();
  const drawn = series.some((one) => one.ys.some((value) => value !== null));

  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme is read from the document
  useEffect(() => {
    const element = host.current;
    if (!element || !drawn) return;
    const tokens = chartTokens(element);
    const { options, data } = chartOptions({ label, x, y, series, marks, height }, tokens, width);
    const quiet = axesInWords(x.label, y.label);
    // What was read out belongs to a chart that is gone.
    if (readout.current) readout.current.textContent = quiet;
    const read = (u: uPlot) => {
      if (!readout.current) return;
      const { left = -1 } = u.cursor;
      const text = left < 0 ? null : atPointer(u, left, { x, y, series });
      readout.current.textContent = text ?? quiet;
    };
    const chart = new uPlot(
      { ...options, hooks: { ...options.hooks, setCursor: [read] } },
      data,
      element,
    );
    return () => chart.destroy();
  }, [label, x, y, series, marks, height, width, theme, drawn]);

  if (!drawn) return <p className="quiet-text">There is nothing to draw.</p>;
  return (
    <figure className="chart" ref={outer}>
      <div className="chart-head">
        <p className="chart-read" ref={readout} aria-hidden="true">
          {axesInWords(x.label, y.label)}
        </p>
        <ChartKey series={series} />
      </div>
      <div
        className="chart-host"
        ref={host}
        role="img"
        aria-label={chartSentence(props)}
        style={{ minHeight: height }}
      />
      <ChartTable {...props} />
    </figure>
  );
}

const axesInWords = (x: string, y: string): string => `${y} against ${x}`;

/** "1 kHz: left −3.2 dB, right −4.1 dB"; `null` where no value is near. */
function atPointer(
  u: uPlot,
  left: number,
  { x, y, series }: Pick<LineChartProps, 'x' | 'y' | 'series'>,
): string | null {
  const gap = (a: number, b: number) => Math.abs(u.valToPos(a, 'x') - u.valToPos(b, 'x'));
  const at = u.posToVal(left, 'x');
  const found = series.flatMap((one) => {
    const value = nearest(one, at, gap, REACH);
    return value ? [{ one, value }] : [];
  });
  const closest = found.reduce<(typeof found)[number] | null>(
    (best, next) => (best && gap(best.value.x, at) <= gap(next.value.x, at) ? best : next),
    null,
  );
  if (!closest) return null;
  const same = found.filter(({ value }) => gap(value.x, closest.value.x) < 1);
  const words = same.map(({ one, value }) => `${one.label} ${shown(y, value.y)}`);
  return `${shown(x, closest.value.x)}: ${words.join(', ')}`;
}
