/** Plans to and from files, through the browser's own file windows. */
import { fileOpen, fileSave } from 'browser-fs-access';
import { safeFileName, writePlan } from '../../plan/schema';
import type { Plan } from '../../plan/types';
import { openFile } from './opening';

const PLAN_FILE = {
  description: 'Plan',
  extensions: ['.json'],
  mimeTypes: ['application/json'],
  id: 'plans',
};

export type FileOutcome = { kind: 'done' } | { kind: 'closed' } | { kind: 'failed'; why: string };

/** Closing the file window is no fault. */
const outcomeOf = (error: unknown): FileOutcome =>
  (error as Error).name === 'AbortError'
    ? { kind: 'closed' }
    : { kind: 'failed', why: (error as Error).message };

export async function savePlanFile(plan: Plan): Promise<FileOutcome> {
  try {
    const blob = new Blob([writePlan(plan)], { type: 'application/json' });
    await fileSave(blob, { ...PLAN_FILE, fileName: `${safeFileName(plan.title)}.json` });
    return { kind: 'done' };
  } catch (error) {
    return outcomeOf(error);
  }
}

/** The text of a plan nobody could read, as it is: nothing is lost. */
export async function saveRawText(title: string, text: string): Promise<FileOutcome> {
  try {
    const blob = new Blob([text], { type: 'application/json' });
    await fileSave(blob, { ...PLAN_FILE, fileName: `${safeFileName(title)}.json` });
    return { kind: 'done' };
  } catch (error) {
    return outcomeOf(error);
  }
}

/** Lets the user pick a file and opens it; a refusal or a question is shown by the page. */
export async function pickPlanFile(): Promise<FileOutcome> {
  try {
    const file = await fileOpen(PLAN_FILE);
    return (await openFile(file)) ? { kind: 'done' } : { kind: 'closed' };
  } catch (error) {
    return outcomeOf(error);
  }
}
