/** What tune was asked for last: dialog and paper show the same one. Holds while the plan is open. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { StepChoice } from '../exchange';

export interface TuneChoice {
  /** Whom it serves, as picked; left out: as the plan is aligned. */
  whom?: string;
  /** Left out: whole samples at the plan's own rate. */
  step?: StepChoice;
}

interface Kept extends TuneChoice {
  /** Of which opening of a plan it was chosen. */
  of: number;
}

const tuneChoiceStore = createStore<Kept>(() => ({ of: -1 }));

/** What was chosen for the plan opened as number `of`, and nothing of an earlier one's. */
export function useTuneChoice(of: number): TuneChoice {
  const kept = useStore(tuneChoiceStore);
  return kept.of === of ? kept : NOTHING;
}

const NOTHING: TuneChoice = {};

/** Keeps a choice for the plan opened as number `of`. */
export function chooseTune(of: number, part: TuneChoice): void {
  tuneChoiceStore.setState(
    (kept) => (kept.of === of ? { ...kept, ...part } : { of, ...part }),
    true,
  );
}
