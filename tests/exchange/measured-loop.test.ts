/** The whole way: a car as predicted, measured through a WAV file, and held against the prediction. */
import { describe, expect, test } from 'vitest';
import { readWav, writeWav } from '../../src/exchange';
import { arrivalReadings, compareArrivals, evaluatePlan, firstArrivals } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { response, sinc } from '../geometry/measure/synthetic';

const RATE = 48000;
const LOOP_MS = 11.37;

const answer = evaluatePlan(demoPlan());
if (!answer.ok) throw new Error(answer.error.message);
const result = answer.options[0];
const seat = result?.seats[0];
if (!result || !seat) throw new Error('no seat');

/** Every channel measured after a loop nobody knows; one speaker stands elsewhere than planned. */
function measured(moved: string | null, byMm: number) {
  return (seat?.arrivals ?? []).map(({ speaker, time }, i) => {
    const ms = time + LOOP_MS + (speaker === moved ? byMm / (result?.speedOfSound ?? 1) : 0);
    const made = response([{ shape: sinc, at: (ms * RATE) / 1000, level: 0.5 }], 36, 700 + i, 2400);
    const file = readWav(writeWav({ sampleRateHz: RATE, channels: [made] }, 'float32'));
    if (!file.ok) throw new Error(file.message);
    const samples = file.channels[0] ?? [];
    return { id: speaker, response: { sampleRateHz: file.sampleRateHz, samples } };
  });
}

function compared(moved: string | null, byMm: number) {
  const arrivals = (seat?.arrivals ?? []).map(({ speaker, time }) => ({ speaker, time }));
  return compareArrivals(
    firstArrivals(measured(moved, byMm)).map(({ id, edge }) => {
      if ('problem' in edge) throw new Error(edge.problem);
      return {
        id,
        measuredMs: edge.ms,
        measuredSdMs: edge.sdMs ?? Number.NaN,
        predictedMs: arrivals.find(({ speaker }) => speaker === id)?.time ?? Number.NaN,
        // 5 mm of tape and model.
        predictedSdMs: 5 / (result?.speedOfSound ?? 1),
      };
    }),
  );
}

describe('a car measured through the loop', () => {
  test('that is as planned agrees with its prediction', () => {
    const all = compared(null, 0);
    expect(all.channels.length).toBeGreaterThanOrEqual(6);
    expect(all).toMatchObject({ agrees: true, outliers: [] });
    // The edge of so sharp an impulse lies up to a sample before its peak.
    expect(Math.abs(all.offsetMs - LOOP_MS)).toBeLessThan(1 / 48);
    expect(all.rmsMs).toBeLessThan(0.5 / 48);
  });

  test('with a speaker 60 mm farther off names it, and gives the path back', () => {
    const all = compared('tweeter-left', 60);
    expect(all.outliers).toEqual(['tweeter-left']);
    const channels = (seat?.arrivals ?? []).map(({ speaker, path }) => ({
      id: speaker,
      path,
      measuredSdMs: 0.004,
    }));
    const [reading] = arrivalReadings(all, {
      seat: seat?.id ?? '',
      speedOfSound: result?.speedOfSound ?? 0,
      channels,
      accepted: ['tweeter-left'],
    });
    expect(Math.abs((reading?.pathDifference ?? 0) - 60)).toBeLessThan(5);
  });
});
