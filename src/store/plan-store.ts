/**
 * The open plan with its undo history, and the drag in progress. Three kinds of state are kept
 * apart: the plan (undoable), the gesture (a draft that becomes one undo step, or nothing), and
 * the session (session-store.ts).
 */
import { applyPatches, type Draft, enablePatches, type Patch, produceWithPatches } from 'immer';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../plan/types';

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

export type Recipe = (draft: Draft<Plan>) => void;

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
    const [next, forward, backward] = produceWithPatches(plan, recipe as (d: Draft<Plan>) => void);
    if (forward.length === 0) return;
    setState({ plan: next, past: [...past, { label, forward, backward }], future: [] });
  }

  let gestureRecipe: Recipe | null = null;

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
    /** One change, one undo step. Nothing happens when the recipe changes nothing. */
    edit(label: string, recipe: Recipe): void {
      if (getState().gesture) this.cancelGesture();
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
      gestureRecipe = recipe;
      const [draft] = produceWithPatches(plan, recipe as (d: Draft<Plan>) => void);
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
    cancelGesture(): void {
      gestureRecipe = null;
      if (getState().gesture) setState({ gesture: null });
    },
    undo(): void {
      const { past, future, plan, gesture, readOnly } = getState();
      if (readOnly) return;
      if (gesture) return this.cancelGesture();
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
      if (gesture) this.cancelGesture();
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
