import { useRef } from 'react';
import type { CabinModel, OptionResult, Refusal, SeatResult } from '../../geometry';
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
  /** The option as the plan has it now, whether or not it can be worked out. */
  option: PlanOption | null;
  result: OptionResult | null;
  seat: SeatResult | null;
}

/**
 * The option and seat in view with their numbers. Where the engine refuses the plan, `refusal` is
 * its sentence and cabin and numbers are the last good ones, so that the page keeps its footing;
 * `board` is `null` while there has been no good answer yet.
 */
export function useBoard(): { board: Board | null; refusal: Refusal | null } {
  const answer = useAnswer();
  const { options } = useShownPlan();
  const chosen = useSession((session) => session.option);
  const openedAs = usePlan((state) => state.openedAs);
  // Named so that a new choice of seat draws anew.
  useSession((session) => session.seat);
  const good = useRef<{ of: number; board: Board } | null>(null);
  const option = options.find(({ id }) => id === chosen) ?? options[0] ?? null;
  if (!answer.ok) {
    const last = good.current?.of === openedAs ? good.current.board : null;
    return { board: last && { ...last, option }, refusal: answer.error };
  }
  const result = currentOption(answer);
  const board = { cabin: answer.cabin, option, result, seat: currentSeat(result) };
  good.current = { of: openedAs, board };
  return { board, refusal: null };
}

/** True while the plan may only be looked at. */
export const useLocked = (): boolean => usePlan((state) => state.readOnly !== null);
