import { useMemo } from 'react';
import type { CabinModel, OptionResult, SeatResult } from '../geometry';
import type { Plan, PlanOption } from '../plan/types';
import { currentOption, currentSeat, useAnswer, useSession, useShownPlan } from '../store';

/** What a paper is about. */
export interface PaperFacts {
  plan: Plan;
  cabin: CabinModel;
  option: PlanOption;
  result: OptionResult;
  /** Every option's result, in the plan's order. */
  results: readonly OptionResult[];
  /** `null`: the plan has no seat. */
  seat: SeatResult | null;
}

export type FactsAnswer = { ok: true; facts: PaperFacts } | { ok: false; reason: string };

/** The plan as it is now with its numbers: the option and the seat chosen on the board. */
export function usePaperFacts(): FactsAnswer {
  const plan = useShownPlan();
  const answer = useAnswer();
  const chosen = useSession((session) => session.option);
  const sitting = useSession((session) => session.seat);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session is read inside by the store.
  return useMemo(() => {
    if (!answer.ok) return { ok: false, reason: answer.error.message };
    const result = currentOption(answer);
    const option = plan.options.find(({ id }) => id === result?.id);
    if (!result || !option) return { ok: false, reason: 'it holds no option' };
    const facts: PaperFacts = {
      plan,
      cabin: answer.cabin,
      option,
      result,
      results: answer.options,
      seat: currentSeat(result),
    };
    return { ok: true, facts };
  }, [plan, answer, chosen, sitting]);
}
