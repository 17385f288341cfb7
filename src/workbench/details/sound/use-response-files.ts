import { fileOpen } from 'browser-fs-access';
import { useState } from 'react';
import { decodeMeasurement } from '../../../exchange/decode-measurement';
import type { FileChoice, ResponseFile } from '../../../exchange/response-files';

/** A file chosen, with what the user said of it. */
export interface ChosenFile extends ResponseFile {
  key: number;
  choice: FileChoice;
}

/** More than these at once are a wrong folder rather than a measurement. Choice of ours. */
const MOST_FILES = 80;

let keys = 0;

/** The files chosen or dropped so far, and why the last ones could not be taken. */
export function useResponseFiles() {
  const [files, setFiles] = useState<ChosenFile[]>([]);
  const [refused, setRefused] = useState<string[]>([]);

  async function add(chosen: readonly File[]): Promise<void> {
    const problems: string[] = [];
    const read: ChosenFile[] = [];
    if (chosen.length > MOST_FILES) {
      setRefused([`${chosen.length} files at once; ${MOST_FILES} are the most`]);
      return;
    }
    for (const file of chosen) {
      const answer = await textOf(file);
      if (answer.ok) read.push({ key: ++keys, name: file.name, text: answer.text, choice: {} });
      else problems.push(`${file.name}: ${answer.message}`);
    }
    setRefused(problems);
    // A file chosen again takes the place of the one before.
    setFiles((before) => [
      ...before.filter(({ name }) => !read.some((one) => one.name === name)),
      ...read,
    ]);
  }

  async function choose(): Promise<void> {
    try {
      await add(
        await fileOpen({
          description: 'Measured responses',
          extensions: ['.txt', '.csv', '.frd', '.dat', '.tsv'],
          multiple: true,
          id: 'responses',
        }),
      );
    } catch (error) {
      // Closing the file window is no fault.
      if ((error as DOMException).name !== 'AbortError') setRefused([(error as Error).message]);
    }
  }

  return {
    files,
    refused,
    add,
    choose,
    remove: (key: number) => setFiles((all) => all.filter((one) => one.key !== key)),
    say: (key: number, choice: FileChoice) =>
      setFiles((all) =>
        all.map((one) =>
          one.key === key ? { ...one, choice: { ...one.choice, ...choice } } : one,
        ),
      ),
    clear: () => {
      setFiles([]);
      setRefused([]);
    },
  };
}

async function textOf(file: File) {
  try {
    return decodeMeasurement(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    return { ok: false as const, message: `it could not be read: ${(error as Error).message}` };
  }
}
