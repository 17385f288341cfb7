import { useRef } from 'react';
import type { CabinModel, OptionResult, SeatResult } from '../../geometry';
import type { PlanOption } from '../../plan/types';
import {
  currentOption,
  currentSeat,
  useAnswer,
  usePlan,
  useSession,
  useShownPlan,
} from '../../store';

/** What is on the board, as tables show it: follows a drag, a few times a second. */
export interface Board {
  cabin: CabinModel;
  /** The option as the plan has it. */
  option: PlanOption | null;
  result: OptionResult | null;
  seat: SeatResult | null;
}

/**
 * The option and seat in view with their numbers. Where the engine refuses the plan, `refusal` is
 * its sentence and `board` the last good one, so that the page keeps its footing.
 */
export function useBoard(): {
  board: Board | null;
  refusal: { message: string; path: string } | null;
} {
  const answer = useAnswer();
  const plan = useShownPlan();
  // Named so that a new choice of option or seat draws anew.
  useSession((session) => session.option);
  useSession((session) => session.seat);
  const good = useRef<Board | null>(null);
  if (!answer.ok) return { board: good.current, refusal: answer.error };
  const result = currentOption(answer);
  const board = {
    cabin: answer.cabin,
    option: plan.options.find((option) => option.id === result?.id) ?? null,
    result,
    seat: currentSeat(result),
  };
  good.current = board;
  return { board, refusal: null };
}

/** True while the plan may only be looked at. */
export const useLocked = (): boolean => usePlan((state) => state.readOnly !== null);
