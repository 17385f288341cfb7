import { useMemo, useRef } from 'react';
import {
  type MeasuredOption,
  measureInSteps,
  type Stage,
  type Trials,
  trialsInSteps,
} from '../../../geometry';
import { planStore, useAnswer } from '../../../store';
import { useSettled } from '../../parts/use-settled';
import { useSteps } from '../steps/use-steps';

/** Every option of the plan with its answer, as they stood when no drag ran. */
export function useStages(): { stages: readonly Stage[]; waiting: boolean } {
  const answer = useAnswer();
  const plan = planStore.shown();
  const stages = useMemo(
    () =>
      answer.ok
        ? plan.options.flatMap((option): Stage[] => {
            const result = answer.options.find(({ id }) => id === option.id);
            return result ? [{ plan, cabin: answer.cabin, option, result }] : [];
          })
        : [],
    [answer, plan],
  );
  const { settled, waiting } = useSettled(stages);
  return { stages: settled, waiting };
}

/** Options measured, and how sure their differences are, both in steps; the table stands first. */
export function useComparison(stages: readonly Stage[], chosen: readonly string[], seat: string) {
  const key = chosen.join('\n');
  const asked = useMemo(() => {
    const ids = key.split('\n');
    return stages.filter(({ option }) => ids.includes(option.id));
  }, [stages, key]);
  const start = useMemo(() => () => measureInSteps(asked), [asked]);
  const measuring = useSteps<MeasuredOption[]>(start);
  const done = measuring.work.state === 'done' ? measuring.work.value : null;
  // What stood before stays in sight while a change is worked out.
  const last = useRef<MeasuredOption[] | null>(null);
  if (done) last.current = done;
  const startTrials = useMemo(
    () => (done && seat ? () => trialsInSteps(done, seat) : null),
    [done, seat],
  );
  const trying = useSteps<Trials>(startTrials);
  return {
    measured: last.current,
    measuring,
    /** What is shown is of an earlier plan. */
    stale: !done,
    trials: done && trying.work.state === 'done' ? trying.work.value : null,
    trying,
  };
}
