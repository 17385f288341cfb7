/** A plan without a template, and its result: hand-made so that every number can be checked. */
import {
  evaluatePlan,
  type OptionResult,
  type PlanInput,
  type SpeakerInput,
} from '../../src/geometry';

export type SamplePlan = PlanInput & { title: string };

/** 20 °C, 50 %, 101.325 kPa: 343.987 mm/ms by Cramer's equation. */
const AIR = { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 };

/** Speakers straight ahead of one head at the distances given, mm, left and right in turn. */
export function samplePlan(
  distances: readonly number[],
  change: Partial<SpeakerInput>[] = [],
): SamplePlan {
  return {
    title: 'Sample',
    air: AIR,
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'front-left', head: [0, 0, 0] }],
    options: [
      {
        id: 'a',
        title: 'Only',
        speakers: distances.map((distance, i) => ({
          id: `speaker-${i}`,
          role: 'midrange',
          pair: `pair-${Math.floor(i / 2)}`,
          side: i % 2 ? ('right' as const) : ('left' as const),
          position: [-distance, 0, 0],
          aim: { kind: 'seat', seat: 'front-left' },
          ...change[i],
        })),
      },
    ],
    alignment: { seat: 'front-left', sampleRateHz: 48000 },
  };
}

/** The first option's result. */
export function resultOf(plan: PlanInput): OptionResult {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  const [result] = answer.options;
  if (!result) throw new Error('no option');
  return result;
}
