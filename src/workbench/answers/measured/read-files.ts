import { fileOpen } from 'browser-fs-access';
import { type MeasuredFileAnswer, readMeasuredFile } from '../../../exchange/measured-file';
import { MAX_WAV_BYTES } from '../../../exchange/wav/read-wav';
import type { SpeakerInput } from '../../../geometry';
import { measuredStore, takeFile } from './measured-store';

/** More than these at once are a wrong folder rather than a measurement. Choice of ours. */
const MOST_FILES = 80;

let stop: (() => void) | null = null;

/** Ends the reading; what was read so far stays. */
export const cancelReading = (): void => stop?.();

/** Reads files one after the other, each told when it is in or why it is not. */
export async function readFiles(
  files: readonly File[],
  speakers: readonly SpeakerInput[],
): Promise<void> {
  if (files.length === 0 || measuredStore.getState().reading) return;
  if (files.length > MOST_FILES) {
    const message = `no more than ${MOST_FILES} are read at once`;
    measuredStore.setState({ refused: [{ file: `${files.length} files`, message }] });
    return;
  }
  const { openedAs } = measuredStore.getState();
  measuredStore.setState({ refused: [], said: '' });
  let read = 0;
  let cancelled = false;
  for (const [done, file] of files.entries()) {
    measuredStore.setState({ reading: { done, total: files.length, file: file.name } });
    const answer = await readOne(file);
    if (answer === null) cancelled = true;
    if (cancelled || measuredStore.getState().openedAs !== openedAs) break;
    if (answer?.ok) {
      takeFile(file.name, answer, speakers);
      read++;
    } else if (answer)
      measuredStore.setState(({ refused }) => ({
        refused: [...refused, { file: file.name, message: answer.message }],
      }));
  }
  const count = `${read} of ${files.length} ${files.length === 1 ? 'file' : 'files'} read.`;
  measuredStore.setState({ reading: null, said: cancelled ? `Stopped: ${count}` : count });
}

/** `null`: cancelled. */
function readOne(file: File): Promise<MeasuredFileAnswer | null> {
  if (file.size > MAX_WAV_BYTES)
    return Promise.resolve({
      ok: false,
      message: `it is ${Math.ceil(file.size / 1e6)} MB long; no more than ${MAX_WAV_BYTES / 1e6} MB are read`,
    });
  return new Promise((resolve) => {
    const worker = startWorker();
    const end = (answer: MeasuredFileAnswer | null): void => {
      worker?.terminate();
      stop = null;
      resolve(answer);
    };
    stop = () => end(null);
    if (!worker) {
      void here(file).then(end);
      return;
    }
    worker.addEventListener('message', ({ data }: MessageEvent<MeasuredFileAnswer>) => end(data));
    // A worker that will not load: the page reads it itself.
    worker.addEventListener('error', () => void here(file).then(end));
    worker.postMessage(file);
  });
}

function startWorker(): Worker | null {
  try {
    return new Worker(new URL('./read.worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return null;
  }
}

async function here(file: File): Promise<MeasuredFileAnswer> {
  try {
    return readMeasuredFile(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    return { ok: false, message: `it could not be read: ${(error as Error).message}` };
  }
}

/** Asks for files by the system's own window. */
export async function chooseFiles(speakers: readonly SpeakerInput[]): Promise<void> {
  try {
    const files = await fileOpen({
      description: 'Measured impulse responses',
      extensions: ['.wav', '.txt', '.csv', '.tsv', '.dat', '.ir'],
      multiple: true,
      id: 'impulses',
    });
    await readFiles(files, speakers);
  } catch (error) {
    // Closing the file window is no fault.
    if ((error as DOMException).name !== 'AbortError')
      measuredStore.setState({
        refused: [{ file: 'The files', message: (error as Error).message }],
      });
  }
}
