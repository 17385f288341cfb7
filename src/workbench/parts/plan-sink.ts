import { planStore, type Recipe } from '../../store';
import type { NumberSink } from './number-field';

/**
 * Sends a field's numbers to the plan: typing is one undo step, holding an arrow key one as well.
 * @param label what is done, in words, for undo: "move left tweeter"
 */
export function planSink(label: string, recipe: (value: number) => Recipe): NumberSink {
  const mine = () => planStore.getState().gesture?.label === label;
  return {
    commit: (value) => planStore.edit(label, recipe(value)),
    nudge: (value) => {
      if (!mine()) planStore.beginGesture(label);
      planStore.moveGesture(recipe(value));
    },
    settle: (keep) => {
      if (!mine()) return;
      if (keep) planStore.commitGesture();
      else planStore.cancelGesture();
    },
  };
}
