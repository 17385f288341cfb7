/** The page's state: the open plan, the session, and the numbers drawn from them. */
import { useEffect, useState, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import {
  createEvaluator,
  type EvaluateAnswer,
  type OptionResult,
  type SeatResult,
} from '../geometry';
import { demoPlan } from '../plan/demo';
import type { Plan, PlanOption } from '../plan/types';
import { keepBeside } from './keep-beside';
import { type KeepingState, keepingStore } from './keeping';
import { createPlanStore, type PlanState } from './plan-store';
import { createSessionStore, type SessionState } from './session-store';

export * from './keeping';
export type { PlanState, PlanStore, Recipe, Step } from './plan-store';
export type {
  LengthUnit,
  PaintedMap,
  Selection,
  SessionState,
  SpotMark,
  ViewName,
} from './session-store';

export const planStore = createPlanStore(demoPlan());
export const sessionStore = createSessionStore();
keepBeside(planStore, sessionStore);

const evaluate = createEvaluator();
/** `fresh`: the option that is of `plan`, the others being of an earlier one; null: all of them. */
let last: { plan: Plan; answer: EvaluateAnswer; fresh: string | null } | null = null;

/**
 * The engine's answer for the plan as shown (the draft while a gesture runs). Cheap to ask again:
 * it is computed once per plan.
 */
export function currentAnswer(): EvaluateAnswer {
  const plan = planStore.shown();
  const { gesture } = planStore.getState();
  const shown = gesture && optionInView(plan);
  const stale = last?.plan !== plan || (last.fresh !== null && last.fresh !== shown?.id);
  if (!last || stale)
    last = (shown && answerInDrag(plan, shown)) ?? { plan, answer: evaluate(plan), fresh: null };
  return last.answer;
}

const optionInView = ({ options }: Plan): PlanOption | null =>
  options.find(({ id }) => id === sessionStore.getState().option) ?? options[0] ?? null;

/**
 * In a drag only the option on the board is worked out anew: the others cost as much and are out of
 * sight. They keep their last answer until the drag ends.
 */
function answerInDrag(plan: Plan, shown: PlanOption): typeof last {
  if (!last?.answer.ok || plan.options.length < 2) return null;
  const answer = evaluate({ ...plan, options: [shown] });
  // What is refused is asked whole, so that the sentence names the right place.
  if (!answer.ok) return null;
  const results = new Map([...last.answer.options, ...answer.options].map((one) => [one.id, one]));
  const options = plan.options.flatMap(({ id }) => results.get(id) ?? []);
  return { plan, answer: { ...answer, options }, fresh: shown.id };
}

/** The option on the board: the session's, or the first where that one is gone. */
export function currentOption(answer: EvaluateAnswer = currentAnswer()): OptionResult | null {
  if (!answer.ok) return null;
  const { option } = sessionStore.getState();
  return answer.options.find((result) => result.id === option) ?? answer.options[0] ?? null;
}

/** The seat in view within an option's result: the session's, or the first. */
export function currentSeat(option: OptionResult | null): SeatResult | null {
  const { seat } = sessionStore.getState();
  return option?.seats.find((result) => result.id === seat) ?? option?.seats[0] ?? null;
}

/** Reads the committed plan state; re-renders when the selected part changes. */
export function usePlan<T>(select: (state: PlanState) => T): T {
  return useStore(planStore, select);
}

/** Reads the session; re-renders when the selected part changes. */
export function useSession<T>(select: (state: SessionState) => T): T {
  return useStore(sessionStore, select);
}

/** Reads how safe the open plan is. */
export function useKeeping<T>(select: (state: KeepingState) => T): T {
  return useStore(keepingStore, select);
}

/** At most this often tables follow a drag, ms: fast enough to read, slow enough to draw. */
const TABLE_INTERVAL = 80;

/**
 * The plan as shown, for tables: follows a drag, throttled, and every commit at once.
 */
export function useShownPlan(): Plan {
  const [plan, setPlan] = useState(planStore.shown);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    const show = () => {
      timer = null;
      setPlan(planStore.shown());
    };
    show();
    const stop = planStore.subscribe((state) => {
      if (!state.gesture) {
        if (timer) clearTimeout(timer);
        show();
      } else timer ??= setTimeout(show, TABLE_INTERVAL);
    });
    return () => {
      stop();
      if (timer) clearTimeout(timer);
    };
  }, []);
  return plan;
}

/** The engine's answer for the plan as shown, following a drag as {@link useShownPlan} does. */
export function useAnswer(): EvaluateAnswer {
  useShownPlan();
  return currentAnswer();
}

/** True while a gesture runs. */
export function useGestureRunning(): boolean {
  return useSyncExternalStore(planStore.subscribe, () => planStore.getState().gesture !== null);
}
