import { useMemo } from 'react';
import type { Stage } from '../../geometry';
import { planStore, useAnswer } from '../../store';
import type { Board } from './use-board';

/**
 * The option on the board with plan, cabin and answer that belong together, as studies want it;
 * `null` while the plan is refused or the board has no option. The same object as long as nothing
 * changed, so that a study can be kept by it.
 */
export function useStage(board: Board): Stage | null {
  const answer = useAnswer();
  // What the answer was computed for: the plan a hook follows may be a few frames behind in a drag.
  const plan = planStore.shown();
  const id = board.result?.id;
  return useMemo(() => {
    if (!answer.ok) return null;
    const option = plan.options.find((one) => one.id === id);
    const result = answer.options.find((one) => one.id === id);
    return option && result ? { plan, cabin: answer.cabin, option, result } : null;
  }, [answer, plan, id]);
}
