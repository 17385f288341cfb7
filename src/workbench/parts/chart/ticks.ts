/** Nominal octaves of hearing, Hz. Source: IEC 61260-1:2014. */
const OCTAVES = [16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000] as const;
const DECADES = [10, 100, 1000, 10000] as const;

/**
 * Frequencies to write under a logarithmic axis: octaves where they have `apart` pixels each, else
 * every second octave, else decades.
 */
export function frequencyTicks(
  [low, high]: readonly [number, number],
  width: number,
  apart = 38,
): number[] {
  const inside = (list: readonly number[]) => list.filter((hz) => hz >= low && hz <= high);
  const octaves = inside(OCTAVES);
  const room = width / Math.max(Math.log2(high / low), 1e-9);
  if (room >= apart) return octaves;
  if (room * 2 >= apart) {
    // 63, 250, 1k: the ones engineers count by.
    return octaves.filter((hz) => OCTAVES.indexOf(hz as 16) % 2 === 0);
  }
  return inside(DECADES);
}

/** "63", "31.5", "1k", "12.5k". */
export function frequencyLabel(hz: number): string {
  const text = (value: number) => String(Number(value.toFixed(2)));
  return hz < 1000 ? text(hz) : `${text(hz / 1000)}k`;
}

/** A step of 1, 2 or 5 times a power of ten, so that at most `most` steps span the range. */
export function niceStep(span: number, most: number): number {
  const rough = Math.max(span, 1e-9) / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((f) => f * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Round values within the range, at most `most` + 1 of them. */
export function linearTicks([low, high]: readonly [number, number], most: number): number[] {
  const step = niceStep(high - low, most);
  const ticks: number[] = [];
  // From the count, not by adding up: 0.1 + 0.2 is not 0.3.
  for (let n = Math.ceil(low / step - 1e-9); n * step <= high + step * 1e-9; n += 1)
    ticks.push(n === 0 ? 0 : n * step);
  return ticks;
}

/** Decimals that tell ticks of this step apart. */
export const digitsOf = (step: number): number =>
  Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)));

/** The range that holds all values, out to the next round one; 0 to 1 without any. */
export function roundedRange(values: readonly number[]): [number, number] {
  const finite = values.filter(Number.isFinite);
  if (finite.length === 0) return [0, 1];
  const [low, high] = [Math.min(...finite), Math.max(...finite)];
  if (high - low < 1e-9) return [low - 1, high + 1];
  const step = niceStep(high - low, 5);
  return [Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step];
}
