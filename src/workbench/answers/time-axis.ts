/** One time axis for all speakers of a strip chart, ms against pixels. */
export interface TimeAxis {
  /** Time at the left and right edge, ms. */
  from: number;
  to: number;
  ticks: readonly { time: number; label: string }[];
  /** Pixels from the left edge of the strip. */
  x: (time: number) => number;
}

/** Steps a reader counts in without thinking, ms. */
const STEPS = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;

/**
 * An axis of `width` pixels that shows every time in `times` (ms) with `margin` pixels to spare at
 * both ends, ticks at round times at least `apart` pixels from one another. It need not start at
 * zero: what is read is where marks stand to each other. With no finite time it runs from 0 to 1.
 */
export function timeAxis(
  times: readonly number[],
  width: number,
  margin = 16,
  apart = 52,
): TimeAxis {
  const finite = times.filter(Number.isFinite);
  let low = finite.length > 0 ? Math.min(...finite) : 0;
  let high = finite.length > 0 ? Math.max(...finite) : 1;
  // A lone time, or all at once: half a millisecond either way keeps the scale readable.
  if (high - low < 0.2) {
    low -= 0.5;
    high += 0.5;
  }
  const inner = Math.max(1, width - 2 * margin);
  const perPixel = (high - low) / inner;
  const from = low - margin * perPixel;
  const to = from + Math.max(1, width) * perPixel;
  const step = STEPS.find((s) => s / perPixel >= apart) ?? 100;
  const digits = step < 0.1 ? 2 : step < 1 ? 1 : 0;
  const ticks: { time: number; label: string }[] = [];
  for (let n = Math.ceil(from / step); n * step <= to; n += 1) {
    // From the count, not by adding up: 0.1 + 0.2 is not 0.3.
    if (n >= 0) ticks.push({ time: n * step, label: (n * step).toFixed(digits) });
  }
  return { from, to, ticks, x: (time) => (time - from) / perPixel };
}
