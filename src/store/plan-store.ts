/**
 * The open plan with its undo history, and the drag in progress. Three kinds of state are kept
 * apart: the plan (undoable), the gesture (a draft that becomes one undo step, or nothing), and
 * the session (session-store.ts).
 */
import { applyPatches, enablePatches, type Patch, produceWithPatches } from 'immer';
import { createStore } from 'zustand/vanilla';
import type { PlanRecipe } from '../plan/edits';
import type { Plan } from '../plan/types';
import { nonFinitePath } from './non-finite';

enablePatches();

export interface Step {
  /** What was done, in words: "move left tweeter". */
  label: string;
  forward: Patch[];
  backward: Patch[];
}

export interface PlanState {
  plan: Plan;
  /** Changes with every plan opened, so views know to start afresh. */
  openedAs: number;
  /** Why this plan may only be looked at (made by a newer version, open in another tab), or null. */
  readOnly: string | null;
  past: readonly Step[];
  future: readonly Step[];
  /** The drag in progress: what it is and the plan as it would be if let go now. */
  gesture: { label: string; draft: Plan } | null;
}

export type Recipe = PlanRecipe;

export function createPlanStore(initial: Plan) {
  const store = createStore<PlanState>(() => ({
    plan: initial,
    openedAs: 0,
    readOnly: null,
    past: [],
    future: [],
    gesture: null,
  }));
  const { getState, setState } = store;

  function commit(label: string, recipe: Recipe): void {
    const { plan, past, readOnly } = getState();
    if (readOnly) return;
    const [next, forward, backward] = produceWithPatches(plan, recipe);
    if (forward.length === 0) return;
    const bad = nonFinitePath(forward);
    if (bad !== null) {
      throw new RangeError(`plan store: "${label}" expected finite numbers, got another at ${bad}`);
    }
    setState({ plan: next, past: [...past, { label, forward, backward }], future: [] });
  }

  let gestureRecipe: Recipe | null = null;

  function cancelGesture(): void {
    gestureRecipe = null;
    if (getState().gesture) setState({ gesture: null });
  }

  return {
    ...store,
    /** Opens another plan: history starts anew and any gesture is dropped. */
    open(plan: Plan, readOnly: string | null = null): void {
      gestureRecipe = null;
      setState({
        plan,
        readOnly,
        openedAs: getState().openedAs + 1,
        past: [],
        future: [],
        gesture: null,
      });
    },
    /** Lets the open plan be changed, or only looked at for the reason given; history stays. */
    setReadOnly(readOnly: string | null): void {
      if (readOnly === getState().readOnly) return;
      gestureRecipe = null;
      setState({ readOnly, gesture: null });
    },
    /**
     * One change, one undo step. Nothing happens when the recipe changes nothing.
     * @throws RangeError when it would put a number that is not finite into the plan
     */
    edit(label: string, recipe: Recipe): void {
      cancelGesture();
      commit(label, recipe);
    },
    /** Starts a gesture (a drag, a held key). A gesture already running is cancelled. */
    beginGesture(label: string): void {
      gestureRecipe = null;
      if (getState().readOnly) return;
      setState({ gesture: { label, draft: getState().plan } });
    },
    /** Where the gesture stands now: the recipe is applied to the plan as it was at its start. */
    moveGesture(recipe: Recipe): void {
      const { gesture, plan } = getState();
      if (!gesture) return;
      const [draft, forward] = produceWithPatches(plan, recipe);
      // A pointer on the horizon gives no place: the gesture stays where it was.
      if (nonFinitePath(forward) !== null) return;
      gestureRecipe = recipe;
      setState({ gesture: { label: gesture.label, draft } });
    },
    /** Ends the gesture as one undo step. */
    commitGesture(): void {
      const { gesture } = getState();
      if (!gesture) return;
      const recipe = gestureRecipe;
      gestureRecipe = null;
      setState({ gesture: null });
      if (recipe) commit(gesture.label, recipe);
    },
    /** Back where it was, no undo step: Esc, lost focus, pointer cancel. */
    cancelGesture,
    undo(): void {
      const { past, future, plan, gesture, readOnly } = getState();
      if (readOnly) return;
      if (gesture) {
        cancelGesture();
        return;
      }
      const step = past[past.length - 1];
      if (!step) return;
      setState({
        plan: applyPatches(plan, step.backward),
        past: past.slice(0, -1),
        future: [step, ...future],
      });
    },
    redo(): void {
      const { past, future, plan, gesture, readOnly } = getState();
      if (readOnly) return;
      if (gesture) cancelGesture();
      const step = future[0];
      if (!step) return;
      setState({
        plan: applyPatches(plan, step.forward),
        past: [...past, step],
        future: future.slice(1),
      });
    },
    /** The plan as it is on screen: the gesture's draft while one runs. */
    shown(): Plan {
      const { gesture, plan } = getState();
      return gesture?.draft ?? plan;
    },
  };
}

export type PlanStore = ReturnType<typeof createPlanStore>;
