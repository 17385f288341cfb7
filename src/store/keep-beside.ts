import type { PlanStore } from './plan-store';
import type { SessionStore } from './session-store';

/**
 * Lets go of the option drawn beside the board when it is gone, is the one on the board, or another
 * plan is opened.
 * @returns stops doing so
 */
export function keepBeside(planStore: PlanStore, sessionStore: SessionStore): () => void {
  const close = () => sessionStore.setState({ beside: null });
  const check = () => {
    const { beside, option } = sessionStore.getState();
    if (beside === null) return;
    const { options } = planStore.getState().plan;
    const onBoard = options.find(({ id }) => id === option) ?? options[0];
    if (onBoard?.id === beside || !options.some(({ id }) => id === beside)) close();
  };
  const stops = [
    planStore.subscribe((now, before) => {
      if (now.openedAs !== before.openedAs) close();
      else if (now.plan !== before.plan) check();
    }),
    sessionStore.subscribe(check),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
