import { useMemo } from 'react';
import type { Stage } from '../../../geometry';
import { planStore, useAnswer } from '../../../store';

/** An option by its id, with plan, cabin and answer that belong together; `null` where there is none. */
export function useStageOf(id: string | null): Stage | null {
  const answer = useAnswer();
  const plan = planStore.shown();
  return useMemo(() => {
    if (!answer.ok || id === null) return null;
    const option = plan.options.find((one) => one.id === id);
    const result = answer.options.find((one) => one.id === id);
    return option && result ? { plan, cabin: answer.cabin, option, result } : null;
  }, [answer, plan, id]);
}
