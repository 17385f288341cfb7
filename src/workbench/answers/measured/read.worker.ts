/** Reads files beside the page, so that long ones do not hold it up. */
import { type MeasuredFileAnswer, readMeasuredFile } from '../../../exchange/measured-file';

interface Post {
  postMessage(message: MeasuredFileAnswer, transfer: Transferable[]): void;
}

addEventListener('message', async ({ data }: MessageEvent<File>) => {
  const answer = await answerFor(data);
  const transfer = answer.ok ? answer.tracks.map(({ samples }) => samples.buffer) : [];
  (globalThis as unknown as Post).postMessage(answer, transfer);
});

async function answerFor(file: File): Promise<MeasuredFileAnswer> {
  try {
    return readMeasuredFile(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    return { ok: false, message: `it could not be read: ${(error as Error).message}` };
  }
}
