/**
 * A drag as a small machine: start, move, commit, cancel. It knows the plan store and nothing of
 * React, pointers or drawing. One drag is one undo step; a drag cut short leaves nothing behind.
 */
import type { PlanStore, Recipe } from '../../store';
import type { Ray } from '../pick/ray';

export interface DragInput {
  /** Line of sight through where the grabbed point should be. */
  ray: Ray;
  /** Shift held: obstacles go up and down. */
  vertical: boolean;
  /** The seat whose head is under the pointer, or null. */
  head: string | null;
}

/** What is dragged, and what a place of the pointer means for the plan. */
export interface Drag {
  /** What the undo list calls it: "move left tweeter". */
  label: string;
  /** The change this place means, from the plan as it was at the start; null: stay as it is. */
  move(input: DragInput): Recipe | null;
}

export type DragStore = Pick<
  PlanStore,
  'beginGesture' | 'moveGesture' | 'commitGesture' | 'cancelGesture' | 'getState'
>;

export interface DragRun {
  move(input: DragInput): void;
  commit(): void;
  cancel(): void;
  /** False once committed, cancelled, or ended by another gesture. */
  running(): boolean;
}

/** Starts a drag; `null` where the plan may only be looked at. */
export function runDrag(drag: Drag, store: DragStore): DragRun | null {
  store.beginGesture(drag.label);
  if (!store.getState().gesture) return null;
  let over = false;
  // Another gesture, an undo or an opened plan may end ours: then it must not write any more.
  const ours = () => !over && store.getState().gesture?.label === drag.label;
  return {
    move(input) {
      if (!ours()) return;
      const recipe = drag.move(input);
      if (recipe) store.moveGesture(recipe);
    },
    commit() {
      if (ours()) store.commitGesture();
      over = true;
    },
    cancel() {
      if (ours()) store.cancelGesture();
      over = true;
    },
    running: ours,
  };
}
