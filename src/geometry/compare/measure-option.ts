import { createImageStudy } from '../study/image';
import type { Stage } from '../study/stage';
import type { Measure, Value, Values } from './measure';
import { measureSeat } from './measure-seat';
import { measureStage } from './measure-stage';
import { type Misfits, measureDelay, measureFit, measurePillars, misfitsOf } from './measure-whole';

/** Everything an option is compared by, at every seat. */
export interface MeasuredOption {
  option: string;
  measures: readonly Measure[];
  values: Values;
  misfits: Misfits;
  stage: Stage;
}

export interface CompareProgress {
  done: number;
  total: number;
}

/** Keeps what a head's single sounds would do, for all options and trials alike. */
export const imageStudy = createImageStudy();

/** {@link measureInSteps} at one go. */
export function measureOptions(stages: readonly Stage[]): MeasuredOption[] {
  const steps = measureInSteps(stages);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const kept = new WeakMap<Stage['result'], MeasuredOption>();

/**
 * Measures options one seat at a time, so that a caller can stop. What was measured is kept with
 * its answer as long as plan and cabin are the same.
 */
export function* measureInSteps(
  stages: readonly Stage[],
): Generator<CompareProgress, MeasuredOption[]> {
  const total = stages.reduce((sum, { result }) => sum + result.seats.length + 1, 0);
  let done = 0;
  const measured: MeasuredOption[] = [];
  for (const stage of stages) {
    const { option, result, cabin } = stage;
    const known = kept.get(result);
    if (known && isSame(known.stage, stage)) {
      measured.push({ ...known, stage });
      done += result.seats.length + 1;
      continue;
    }
    const { measures, values, put } = collector();
    for (const { id } of result.seats) {
      measureSeat(stage, id, put);
      measureStage(stage, id, imageStudy, put);
      yield { done: ++done, total };
    }
    const misfits = misfitsOf({ cabin, option, placed: result.placed });
    measureFit(misfits, put);
    measurePillars(stage, put);
    measureDelay(stage, put);
    const one = { option: option.id, measures, values, misfits, stage };
    kept.set(result, one);
    measured.push(one);
    yield { done: ++done, total };
  }
  return measured;
}

/** The answer is of the option, but delays are set by the plan. */
const isSame = (a: Stage, b: Stage): boolean =>
  a.option === b.option && a.cabin === b.cabin && a.plan.alignment === b.plan.alignment;

export function collector() {
  const measures: Measure[] = [];
  const values = new Map<string, Value>();
  const put = (measure: Measure, value: Value): void => {
    if (!values.has(measure.id)) measures.push(measure);
    values.set(measure.id, value);
  };
  return { measures, values, put };
}
