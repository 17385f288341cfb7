/** A plan on its way in: what was read, what is asked, what is to be said afterwards. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../../plan/types';
import { flushKeeping, openKept, planStore, sessionStore } from '../../store';
import type { FileAnswer, Openable } from './judge-file';

interface Opening {
  /** Something that needs an answer from the user, or that was refused. */
  asked: {
    name: string;
    answer: Exclude<FileAnswer, { kind: 'open' }>;
    /** The text that could not be read, to be offered back. */
    raw?: string | null;
  } | null;
  /** What to know of the plan just opened. */
  notes: { name: string; sentences: readonly string[] } | null;
}

const opening = createStore<Opening>(() => ({ asked: null, notes: null }));

export const useOpening = <T>(select: (state: Opening) => T): T => useStore(opening, select);

/** Opens a plan that is not yet kept. The one on screen is kept first, to its last edit. */
export async function openPlan(plan: Plan, readOnly: string | null = null): Promise<void> {
  await flushKeeping();
  planStore.open(plan, readOnly);
  lookAfresh(plan);
}

/** Opens a kept plan, or says why not; until it is open nothing changes. */
export async function openKeptPlan(planId: string, title: string): Promise<boolean> {
  const answer = await openKept(planId);
  if (answer.ok) lookAfresh(planStore.getState().plan);
  else {
    const { message: sentence, raw } = answer;
    opening.setState({ asked: { name: title, answer: { kind: 'refused', sentence }, raw } });
  }
  return answer.ok;
}

/**
 * Reads a file and opens it, asks, or says why not; until it is opened nothing changes.
 * @returns true when it was opened
 */
export async function openFile(file: File): Promise<boolean> {
  const { judgeBlob } = await import('./judge-file');
  return openRead(file.name, await judgeBlob(file));
}

/**
 * Opens what was read, asks, or says why not; until it is opened nothing changes.
 * @returns true when it was opened
 */
export async function openRead(name: string, answer: FileAnswer): Promise<boolean> {
  if (answer.kind === 'open') {
    await take(name, answer);
    return true;
  }
  opening.setState({ asked: { name, answer } });
  return false;
}

/** Says why nothing was opened, where there is no file to read. */
export const refuseFile = (name: string, sentence: string): void =>
  opening.setState({ asked: { name, answer: { kind: 'refused', sentence } } });

/** The user agrees to what was offered. */
export async function acceptOffer(): Promise<void> {
  const { asked } = opening.getState();
  opening.setState({ asked: null });
  if (asked?.answer.kind === 'offer') await take(asked.name, asked.answer);
}

export const declineOffer = (): void => opening.setState({ asked: null });

export const dismissNotes = (): void => opening.setState({ notes: null });

async function take(name: string, { plan, readOnly, notes }: Openable): Promise<void> {
  await openPlan(plan, readOnly);
  opening.setState({ notes: notes.length > 0 ? { name, sentences: notes } : null });
}

/** Another plan: its first option, the seat it is aligned for, nothing selected. */
function lookAfresh(plan: Plan): void {
  sessionStore.setState({
    option: plan.options[0]?.id ?? '',
    seat: plan.alignment.seat ?? '',
    selection: null,
  });
  opening.setState({ notes: null });
}
