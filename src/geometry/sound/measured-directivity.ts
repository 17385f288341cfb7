import type { OffAxisResponse } from '../input';

export type { OffAxisResponse };

export interface MeasuredDirectivity {
  /** Angles measured, rising from 0. */
  readonly anglesDeg: readonly number[];
  /** Frequencies every angle covers, Hz. */
  readonly rangeHz: readonly [number, number];
  /**
   * Level re on axis at an angle and frequency, dB: linear in angle and in the logarithm of
   * frequency between the nearest measured points; the measured value where there is one.
   * `null` outside the angles or frequencies measured: nothing is made up there.
   */
  levelDbAt(offAxisDeg: number, frequencyHz: number): number | null;
}

export type MeasuredAnswer =
  | { ok: true; directivity: MeasuredDirectivity }
  | { ok: false; message: string };

const refuse = (message: string): MeasuredAnswer => ({ ok: false, message });

/**
 * Directivity from responses measured at several angles, in any order. The speaker is taken to
 * radiate alike all round its axis, as one row of measurements says nothing else.
 * Refused, in one sentence, when the axis itself is missing, an angle appears twice or is none,
 * frequencies do not rise, or the measurements do not cover what is asked of them.
 * @param bandHz the band every angle has to cover; left out: whatever all of them cover
 * @param upToDeg the angle they have to reach; left out: the largest measured
 */
export function measuredDirectivity(
  responses: readonly OffAxisResponse[],
  bandHz?: readonly [number, number],
  upToDeg?: number,
): MeasuredAnswer {
  const sorted = [...responses].sort((a, b) => a.offAxisDeg - b.offAxisDeg);
  const problem = sorted.map(malformed).find((sentence) => sentence !== null);
  if (problem) return refuse(problem);
  const anglesDeg = sorted.map((response) => response.offAxisDeg);
  const twice = anglesDeg.find((angle, i) => angle === anglesDeg[i + 1]);
  if (twice !== undefined) return refuse(`there are two responses at ${twice}° off the axis`);
  const [axis] = sorted;
  if (axis?.offAxisDeg !== 0) return refuse('the response on the axis (0°) is missing');

  const from = Math.max(...sorted.map(({ frequencyHz }) => frequencyHz[0] as number));
  const to = Math.min(...sorted.map(({ frequencyHz }) => frequencyHz.at(-1) as number));
  if (!(from < to)) return refuse('the responses have no frequencies in common');
  if (bandHz && (from > bandHz[0] || to < bandHz[1])) {
    const short = sorted.find(
      ({ frequencyHz: f }) => (f[0] as number) > bandHz[0] || (f.at(-1) as number) < bandHz[1],
    ) as OffAxisResponse;
    return refuse(
      `the response at ${short.offAxisDeg}° runs from ${short.frequencyHz[0]} to ${short.frequencyHz.at(-1)} Hz and does not cover the band from ${bandHz[0]} to ${bandHz[1]} Hz`,
    );
  }
  const largest = anglesDeg.at(-1) as number;
  if (upToDeg !== undefined && largest < upToDeg)
    return refuse(
      `the responses reach ${largest}° off the axis and do not cover ${Number(upToDeg.toFixed(1))}°`,
    );

  const levelDbAt = (offAxisDeg: number, frequencyHz: number): number | null => {
    const angle = Math.abs(offAxisDeg);
    if (!(angle <= largest) || !(frequencyHz >= from && frequencyHz <= to)) return null;
    const i = below(anglesDeg, angle);
    const [near, far] = [sorted[i], sorted[i + 1]] as [OffAxisResponse, OffAxisResponse?];
    const nearDb = levelAt(near, frequencyHz);
    const onAxisDb = levelAt(axis, frequencyHz);
    if (!far || angle === near.offAxisDeg) return nearDb - onAxisDb;
    const t = (angle - near.offAxisDeg) / (far.offAxisDeg - near.offAxisDeg);
    return nearDb + (levelAt(far, frequencyHz) - nearDb) * t - onAxisDb;
  };
  return { ok: true, directivity: { anglesDeg, rangeHz: [from, to], levelDbAt } };
}

function malformed({ offAxisDeg, frequencyHz, levelDb }: OffAxisResponse): string | null {
  if (!(offAxisDeg >= 0 && offAxisDeg <= 180))
    return `an angle off the axis is from 0° to 180°, got ${offAxisDeg}°`;
  const at = `the response at ${offAxisDeg}°`;
  if (frequencyHz.length < 2) return `${at} has fewer than two frequencies`;
  if (frequencyHz.length !== levelDb.length)
    return `${at} has ${frequencyHz.length} frequencies and ${levelDb.length} levels`;
  for (const [i, frequency] of frequencyHz.entries()) {
    if (!(frequency > (frequencyHz[i - 1] ?? 0)) || !Number.isFinite(frequency))
      return `${at}: frequencies must rise from above 0 Hz, got ${frequency} Hz`;
    if (!Number.isFinite(levelDb[i])) return `${at} has no level at ${frequency} Hz`;
  }
  return null;
}

/** Index of the last value not above `x`; `values` rise and the first is not above it. */
function below(values: readonly number[], x: number): number {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((values[middle] as number) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Level of one response at a frequency it covers: straight lines over log frequency. */
function levelAt({ frequencyHz, levelDb }: OffAxisResponse, frequency: number): number {
  const i = below(frequencyHz, frequency);
  const [f, next] = [frequencyHz[i] as number, frequencyHz[i + 1]];
  const level = levelDb[i] as number;
  if (next === undefined || frequency === f) return level;
  const t = Math.log(frequency / f) / Math.log(next / f);
  return level + ((levelDb[i + 1] as number) - level) * t;
}
