import { formatRefusal, MAX_FILE_BYTES, type ReadPlan, readPlan } from '../../plan/schema';
import type { Plan } from '../../plan/types';

/** What may be opened, and what to say about it. */
export interface Openable {
  plan: Plan;
  /** Why it may only be looked at, or null. */
  readOnly: string | null;
  /** Sentences the user should see once it is open. */
  notes: string[];
}

export type FileAnswer =
  | ({ kind: 'open' } & Openable)
  /** Something is wrong, but part of it can be had if the user agrees. */
  | ({
      kind: 'offer';
      sentence: string;
      details: string[];
      /** What can be had, in a sentence, and the button for it. */
      rest: string;
      accept: string;
    } & Openable)
  | { kind: 'refused'; sentence: string };

/** Why a plan made by a newer version stays as it is. */
export const NEWER =
  'Made by a newer version of this program: here to be looked at, never written over.';

/** What can be done with a file said to hold a plan: its text or bytes. Never throws. */
export function judgeFile(input: string | Uint8Array): FileAnswer {
  const answer = readPlan(input);
  if (answer.ok) return { kind: 'open', ...openableOf(answer) };
  const sentence = formatRefusal(answer.error);
  if (!answer.withoutBad) return { kind: 'refused', sentence };
  const { dropped } = answer.withoutBad;
  return {
    kind: 'offer',
    sentence,
    details: dropped.slice(1),
    rest: 'Everything else in it is sound and can be opened.',
    accept:
      dropped.length === 1 ? 'Open without that speaker' : `Open without those ${dropped.length}`,
    ...openableOf(answer.withoutBad),
  };
}

const openableOf = ({ plan, newer, warnings }: Omit<ReadPlan, 'ok'>): Openable => ({
  plan,
  readOnly: newer ? NEWER : null,
  notes: newer ? warnings.slice(1) : warnings,
});

/** Reads a file without taking a huge one into memory first. */
export async function judgeBlob(file: Blob): Promise<FileAnswer> {
  if (file.size > MAX_FILE_BYTES)
    return {
      kind: 'refused',
      sentence:
        `the file is ${Math.ceil(file.size / 1e6)} MB long; ` +
        `plans of more than ${MAX_FILE_BYTES / 1e6} MB are not read`,
    };
  try {
    return judgeFile(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    return { kind: 'refused', sentence: `the file could not be read: ${(error as Error).message}` };
  }
}

/**
 * A refusal as it is shown: as a sentence, but with a field's path as it stands in the file.
 * @param text "options[0].id: must be …" or "the file is empty"
 */
export function shownRefusal(text: string): string {
  const path = /^[^\s:]*[\w\])]: /.test(text);
  const large = path ? text : text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?…]$/.test(large) ? large : `${large}.`;
}
