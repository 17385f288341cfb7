import { createStore } from 'zustand/vanilla';

/** How far the drawings and the comparison have got; `null`: nothing is being worked out. */
export const preparing = createStore<{ steps: { done: number; total: number } | null }>(() => ({
  steps: null,
}));
