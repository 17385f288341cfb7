/** A plan without a template, and its result: hand-made so that every number can be checked. */
import {
  type DelayExport,
  type DelayExportSettings,
  delayExport,
  type ExportedStage,
} from '../../src/exchange';
import { evaluatePlan, type PlanInput, type SpeakerInput } from '../../src/geometry';

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

/** The first option of a plan with its answer. */
export function stageOf(plan: SamplePlan): ExportedStage {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('no option');
  return { plan, cabin: answer.cabin, option, result };
}

/** The delays of a plan's first option: for its first seat, one sample a step, unless told. */
export function delaysOf(
  plan: SamplePlan,
  settings: Partial<DelayExportSettings> = {},
): DelayExport {
  const all = delayExport(stageOf(plan), {
    for: { by: 'seat', seat: 'front-left' },
    step: { kind: 'samples', rateHz: 48000 },
    ...settings,
  });
  if ('problem' in all) throw new Error(all.problem);
  return all;
}
