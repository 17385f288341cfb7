import { linearTicks, roundedRange } from '../../parts/chart/ticks';
import type { Found, Measure, Proposal } from './found';

export interface FrontAxis {
  measure: Measure;
  range: readonly [number, number];
  ticks: readonly number[];
}

/** The two aims that weigh most, the earlier column first where they weigh alike; `null`: one aim. */
export function weightiest({ columns, weights }: Found): readonly [Measure, Measure] | null {
  const order = columns
    .filter((measure) => weights[measure] > 0)
    .sort((a, b) => weights[b] - weights[a]);
  const [x, y] = order;
  return x && y ? [x, y] : null;
}

/** A proposal on the chart; `null` where it has no value on one of the axes. */
export function pointOf(
  { measures }: Pick<Proposal, 'measures'>,
  [x, y]: readonly [Measure, Measure],
): readonly [number, number] | null {
  const [a, b] = [measures[x], measures[y]];
  return typeof a === 'number' && typeof b === 'number' ? [a, b] : null;
}

export function axisOver(measure: Measure, values: readonly number[], most: number): FrontAxis {
  const range = roundedRange(values);
  return { measure, range, ticks: linearTicks(range, most) };
}
