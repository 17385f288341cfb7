export type { ChartAxis, ChartMark, ChartSeries, LineChartProps, Tone } from './chart-types';
export { LineChart } from './line-chart';
