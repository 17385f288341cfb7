/** What was kept of a measurement, against the engine's answer. */
import { describe, expect, test } from 'vitest';
import {
  compareMeasured,
  evaluatePlan,
  type MeasuredArrival,
  type MicrophonePlace,
} from '../../../src/geometry';
import { chiSquareBound } from '../../../src/geometry/measure/chi-square';
import { demoPlan } from '../../../src/plan/demo';

const answer = evaluatePlan(demoPlan());
if (!answer.ok) throw new Error(answer.error.message);
const result = answer.options[0];
if (!result) throw new Error('no option');
const SEAT = 'front-left';
const seat = result.seats.find(({ id }) => id === SEAT);
if (!seat) throw new Error('no seat');

/** As planned but for `off`, ms by speaker, through a loop of `loop` ms. */
const taken = (
  at: MicrophonePlace,
  loop: number,
  off: Readonly<Record<string, number>> = {},
): MeasuredArrival[] =>
  seat.arrivals.map(({ speaker, time, ears }) => ({
    speaker,
    seat: SEAT,
    at,
    time:
      (at === 'head' ? time : ears[at === 'left-ear' ? 'left' : 'right'].time) +
      loop +
      (off[speaker] ?? 0),
    sd: 0.006,
    method: 'edge',
    sampleRateHz: 48000,
  }));

describe('kept arrivals', () => {
  test('as planned agree at every place, each with its own loop', () => {
    const sets = compareMeasured([...taken('head', 7.25), ...taken('left-ear', 9.5)], result, 20);
    expect(sets.map(({ at }) => at)).toEqual(['head', 'left-ear']);
    for (const [i, loop] of [7.25, 9.5].entries()) {
      expect(Math.abs((sets[i]?.offsetMs ?? 0) - loop)).toBeLessThan(1e-9);
      expect(sets[i]).toMatchObject({ agrees: true, outliers: [], whole: { within: true } });
      expect(sets[i]?.rmsMs).toBeLessThan(1e-9);
    }
  });

  test('half a millisecond off in one channel name it, and the whole no longer fits', () => {
    const [set] = compareMeasured(taken('head', 7.25, { 'midbass-right': 0.5 }), result, 20);
    expect(set?.outliers).toEqual(['midbass-right']);
    expect(set?.whole?.within).toBe(false);
    const off = set?.channels.find(({ id }) => id === 'midbass-right');
    expect(Math.abs((off?.differenceMs ?? 0) - 0.5)).toBeLessThan(1e-6);
  });

  test('what the processor delayed meanwhile is taken off again', () => {
    const delayed = taken('head', 3).map((one, i) => ({
      ...one,
      time: one.time + i * 0.7,
      delay: i * 0.7,
    }));
    const [set] = compareMeasured(delayed, result, 20);
    expect(set?.rmsMs).toBeLessThan(1e-9);
  });

  test('each cause counts by what the common loop leaves of it', () => {
    const doubts = { spot: 3, seat: 10, temperatureC: 5 };
    const [all] = compareMeasured(taken('head', 3), result, 20, doubts);
    const paths = all?.channels.map(({ path }) => path) ?? [];
    const mean = paths.reduce((sum, one) => sum + one, 0) / paths.length;
    for (const { parts, path, sdMs } of all?.channels ?? []) {
      expect(parts.spot).toBe(3);
      expect(parts.reading).toBeCloseTo(0.006 * result.speedOfSound, 9);
      // 5 K at 20 °C are 0.853 % of the speed of sound.
      expect(parts.temperature).toBeCloseTo((Math.abs(path - mean) * 0.5 * 5) / 293.15, 9);
      expect(parts.seat).toBeLessThan(20);
      const together = Math.sqrt(
        parts.spot ** 2 + parts.seat ** 2 + parts.temperature ** 2 + parts.reading ** 2,
      );
      expect(sdMs * result.speedOfSound).toBeCloseTo(together, 9);
    }
    // A single speaker's loop takes everything: neither seat nor temperature is left.
    const [one] = compareMeasured(taken('head', 3).slice(0, 1), result, 20, doubts);
    expect(one?.channels[0]?.parts).toMatchObject({ seat: 0, temperature: 0 });
    expect(one).toMatchObject({ whole: null, tooFew: expect.stringContaining('single channel') });
  });

  test('a microphone off its place stays within the uncertainty told for the seat', () => {
    // The head of the answer is moved, the measurement is not: as if the microphone stood elsewhere.
    const near = evaluatePlan({
      ...demoPlan(),
      seats: [{ id: SEAT, head: [seat.head[0] + 8, seat.head[1] - 6, seat.head[2] + 6] }],
    });
    if (!near.ok || !near.options[0]) throw new Error('refused');
    const [set] = compareMeasured(taken('head', 3), near.options[0], 20);
    expect(set?.agrees).toBe(true);
    expect(set?.rmsMs).toBeGreaterThan(0.001);
  });

  test('of speakers and seats that are no more are passed over', () => {
    const [one] = taken('head', 3);
    if (!one) throw new Error('none');
    expect(compareMeasured([{ ...one, speaker: 'gone' }], result, 20)).toEqual([]);
    expect(compareMeasured([{ ...one, seat: 'gone' }], result, 20)).toEqual([]);
  });
});

test('bounds of χ² are those of the tables (Abramowitz and Stegun, table 26.8)', () => {
  // 95 %: 1, 2, 3, 5, 10, 30 degrees.
  for (const [degrees, bound] of [
    [1, 3.84146],
    [2, 5.99147],
    [3, 7.81473],
    [5, 11.0705],
    [10, 18.307],
    [30, 43.773],
  ] as const)
    expect(Math.abs(chiSquareBound(0.95, degrees) / bound - 1)).toBeLessThan(0.006);
  // 99.9 %: 1, 2, 5.
  for (const [degrees, bound] of [
    [1, 10.828],
    [2, 13.816],
    [5, 20.515],
  ] as const)
    expect(Math.abs(chiSquareBound(0.999, degrees) / bound - 1)).toBeLessThan(0.013);
});
