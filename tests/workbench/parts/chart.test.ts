import { describe, expect, test } from 'vitest';
import { alignSeries, nearest } from '../../../src/workbench/parts/chart/chart-data';
import { chartOptions } from '../../../src/workbench/parts/chart/chart-options';
import { chartSentence } from '../../../src/workbench/parts/chart/chart-sentence';
import type { ChartSeries } from '../../../src/workbench/parts/chart/chart-types';
import { rowsFor, spreadOut } from '../../../src/workbench/parts/chart/draw-notes';
import {
  digitsOf,
  frequencyLabel,
  frequencyTicks,
  linearTicks,
  niceStep,
  roundedRange,
} from '../../../src/workbench/parts/chart/ticks';

const line = (fields: Partial<ChartSeries> = {}): ChartSeries => ({
  label: 'left',
  xs: [100, 1000],
  ys: [-3, -1],
  tone: 'left',
  ...fields,
});

describe('the numbers along a chart', () => {
  test('frequencies stand at octaves where there is room, at every second or decades where not', () => {
    expect(frequencyTicks([100, 2000], 400)).toEqual([125, 250, 500, 1000, 2000]);
    expect(frequencyTicks([20, 20000], 250)).toEqual([63, 250, 1000, 4000, 16000]);
    expect(frequencyTicks([20, 20000], 120)).toEqual([100, 1000, 10000]);
  });

  test('frequencies are written short', () => {
    expect([31.5, 125, 1000, 12500].map(frequencyLabel)).toEqual(['31.5', '125', '1k', '12.5k']);
  });

  test('other numbers stand at round steps within the range, free of rounding dust', () => {
    expect(linearTicks([-0.02, 1.01], 3)).toEqual([0, 0.5, 1]);
    expect(linearTicks([-12, 3], 3)).toEqual([-10, -5, 0]);
    expect(niceStep(7, 7)).toBe(1);
    expect(niceStep(11, 5)).toBe(5);
    expect([0.05, 0.5, 5, 20].map(digitsOf)).toEqual([2, 1, 0, 0]);
  });

  test('a range holds its values out to the next round one, and is never empty', () => {
    expect(roundedRange([-6.9, 3.4])).toEqual([-10, 5]);
    expect(roundedRange([2, 2])).toEqual([1, 3]);
    expect(roundedRange([])).toEqual([0, 1]);
    expect(roundedRange([Number.NaN, 4, 4.5])[0]).toBeLessThanOrEqual(4);
  });
});

describe('the data of a chart', () => {
  test('series with values at other places share one axis without losing a gap', () => {
    const aligned = alignSeries([
      line({ xs: [1, 3], ys: [10, null] }),
      line({ xs: [2, 3], ys: [20, 30] }),
    ]);
    expect(aligned.xs).toEqual([1, 2, 3]);
    // undefined: nothing of its own there; null: a gap.
    expect(aligned.ys).toEqual([
      [10, undefined, null],
      [undefined, 20, 30],
    ]);
  });

  test('the pointer reads the nearest value, and none that is far', () => {
    const gap = (a: number, b: number) => Math.abs(a - b);
    expect(nearest(line({ xs: [0, 10], ys: [1, 2] }), 7, gap, 5)).toEqual({ x: 10, y: 2 });
    expect(nearest(line({ xs: [0, 10], ys: [1, 2] }), 5.5, gap, 2)).toBeNull();
  });

  test('a sentence tells what is drawn to those who cannot see it', () => {
    const x = { label: 'frequency', format: (hz: number) => `${hz} Hz` };
    const y = { label: 'Level', format: (db: number) => `${db} dB` };
    const series = [line(), line({ label: 'right', ys: [null, null] })];
    const marks = [{ x: 500, label: 'beams' }];
    expect(chartSentence({ label: 'Levels', x, y, series, marks, height: 100 })).toBe(
      'Levels: Level against frequency; left between -3 dB and -1 dB; ' +
        'right without a known value; beams at 500 Hz.',
    );
  });
});

describe('what is written into a chart', () => {
  test('names at the lines’ ends are pushed apart and stay inside', () => {
    expect(spreadOut([50, 52, 10], 15, 200)).toEqual([50, 65, 10]);
    const low = spreadOut([198, 199], 15, 200);
    expect(Math.max(...low)).toBeLessThanOrEqual(200);
    expect(Math.abs((low[1] ?? 0) - (low[0] ?? 0))).toBeGreaterThanOrEqual(15);
  });

  test('names of marks that would cover one another take another row', () => {
    expect(
      rowsFor([
        { from: 0, to: 50 },
        { from: 40, to: 90 },
        { from: 60, to: 100 },
      ]),
    ).toEqual([0, 1, 0]);
  });

  test('the range asked for is kept, and stems have no line through them', () => {
    const tokens = {
      tones: { left: '#001', right: '#002', ink: '#003', quiet: '#004', accent: '#005' },
      paper: '#fff',
      grid: '#ccc',
      text: '#333',
      font: 'sans-serif',
    };
    const { options, data } = chartOptions(
      {
        label: 'x',
        x: { label: 'Hz', log: true, range: [50, 5000] },
        y: { label: 'dB', range: [-20, 5] },
        series: [line(), line({ label: 'r', tone: 'right', dash: true, stems: true })],
        height: 200,
      },
      tokens,
      600,
    );
    const range = (key: string) => {
      const scale = options.scales?.[key]?.range;
      return typeof scale === 'function' ? (scale as unknown as () => number[])() : null;
    };
    expect(range('x')).toEqual([50, 5000]);
    expect(range('y')).toEqual([-20, 5]);
    expect(options.series[1]?.paths).toBeUndefined();
    expect(options.series[2]).toMatchObject({ stroke: '#002', dash: [6, 4] });
    expect(options.series[2]?.paths).toBeDefined();
    expect(data[0]).toEqual([100, 1000]);
  });
});
