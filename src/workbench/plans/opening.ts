/** A file on its way in: what was read, what is asked, what is to be said afterwards. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../../plan/types';
import { planStore, sessionStore } from '../../store';
import { type FileAnswer, judgeBlob, type Openable } from './judge-file';

interface Opening {
  /** A file that needs an answer from the user, or that was refused. */
  asked: { fileName: string; answer: Exclude<FileAnswer, { kind: 'open' }> } | null;
  /** What to know of the plan just opened. */
  notes: { fileName: string; sentences: readonly string[] } | null;
}

const opening = createStore<Opening>(() => ({ asked: null, notes: null }));

export const useOpening = <T>(select: (state: Opening) => T): T => useStore(opening, select);

/** Opens a plan that is not yet kept: the one that was open stays kept under its own title. */
export function openPlan(plan: Plan, readOnly: string | null = null): void {
  planStore.open(plan, readOnly);
  sessionStore.setState({ option: plan.options[0]?.id ?? '', seat: '', selection: null });
}

/**
 * Reads a file and opens it, asks, or says why not; until it is opened nothing changes.
 * @returns true when it was opened
 */
export async function openFile(file: File): Promise<boolean> {
  const answer = await judgeBlob(file);
  if (answer.kind === 'open') {
    take(file.name, answer);
    return true;
  }
  opening.setState({ asked: { fileName: file.name, answer } });
  return false;
}

/** Says why nothing was opened, where there is no file to read. */
export const refuseFile = (fileName: string, sentence: string): void =>
  opening.setState({ asked: { fileName, answer: { kind: 'refused', sentence } } });

/** The user agrees to what was offered. */
export function acceptOffer(): void {
  const { asked } = opening.getState();
  if (asked?.answer.kind === 'offer') take(asked.fileName, asked.answer);
  opening.setState({ asked: null });
}

export const declineOffer = (): void => opening.setState({ asked: null });

export const dismissNotes = (): void => opening.setState({ notes: null });

function take(fileName: string, { plan, readOnly, notes }: Openable): void {
  openPlan(plan, readOnly);
  opening.setState({ notes: notes.length > 0 ? { fileName, sentences: notes } : null });
}
