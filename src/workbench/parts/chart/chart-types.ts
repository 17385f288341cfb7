/** Told apart by dash, marker and label as well as by colour. */
export type Tone = 'left' | 'right' | 'ink' | 'quiet' | 'accent';

export interface ChartAxis {
  /** With its unit: "Frequency, Hz". */
  label: string;
  /** A frequency axis: octaves evenly spaced. Only for x. */
  log?: boolean;
  /** Left out: what the data needs, rounded outwards. */
  range?: readonly [number, number];
  /** A value in words, for reading out and for the table. Left out: one decimal. */
  format?: (value: number) => string;
}

export interface ChartSeries {
  /** Short: stands at the line's end. */
  label: string;
  /** Rising. */
  xs: readonly number[];
  /** One for each of `xs`; `null` breaks the line. */
  ys: readonly (number | null)[];
  tone: Tone;
  dash?: boolean;
  /** Marks every value: a square for left, a circle for right, a lozenge for the rest. */
  points?: boolean;
  /** Points that are outlines. */
  hollow?: boolean;
  /** A bar from the bottom up to each value instead of a line through them. */
  stems?: boolean;
}

/** An upright line across the chart, with its name. */
export interface ChartMark {
  x: number;
  label: string;
}

export interface LineChartProps {
  /** What is drawn, in a sentence without its full stop. */
  label: string;
  x: ChartAxis;
  y: ChartAxis;
  series: readonly ChartSeries[];
  marks?: readonly ChartMark[];
  /** Pixels, the x axis included. */
  height: number;
}
