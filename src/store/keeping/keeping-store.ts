import { createStore } from 'zustand/vanilla';

/** How safe the open plan is, for the page to show. */
export interface KeepingState {
  status: 'kept' | 'saving' | 'memory-only' | 'failed';
  /** One sentence for a banner; null while all is well. */
  message: string | null;
  /** Told once, until dismissed: a damaged snapshot, a plan thrown away elsewhere. */
  notice: string | null;
  /** Of the open plan; null while it is not kept (the demo before its first edit). */
  planId: string | null;
  /** Another tab writes this plan; it can be taken over. */
  elsewhere: boolean;
  /** Rises whenever the list of kept plans may have changed. */
  listed: number;
}

export const createKeepingStore = () =>
  createStore<KeepingState>(() => ({
    status: 'kept',
    message: null,
    notice: null,
    planId: null,
    elsewhere: false,
    listed: 0,
  }));

export type KeepingStore = ReturnType<typeof createKeepingStore>;

export const SENTENCES = {
  memoryOnly:
    'This browser keeps nothing for this page: the plan is lost when the page is closed. Save it to a file.',
  noRoom:
    'There is no room left to keep the plan: it is in memory only. Save it to a file, or throw away plans you no longer need.',
  failed: 'The plan could not be kept: it is in memory only. Save it to a file.',
  outdated:
    'A newer version of this page is open in another tab. This one keeps nothing more: save to a file, then reload.',
  lost: 'The browser has closed its storage: the plan is in memory only. Save it to a file, then reload.',
  elsewhere: 'This plan is open in another tab. It can be looked at here, or taken over.',
  takenOver: 'Another tab has taken this plan over. It can be looked at here, or taken back.',
  conflict:
    'Another tab has changed this plan. What you see here is no longer kept: save it to a file, or take the plan over as it is kept.',
  newer: 'This plan was made by a newer version. It can be looked at, but not changed or kept.',
} as const;
