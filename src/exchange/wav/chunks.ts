/** The outermost layer of a RIFF file: its head, and the chunks in it. */

/** Why a file is refused, and at which byte. */
export class WavRefused extends Error {
  constructor(
    readonly byte: number,
    message: string,
  ) {
    super(message);
  }
}

export interface Chunk {
  id: string;
  /** Where its head stands; what it holds begins 8 bytes on, at `start`. */
  at: number;
  start: number;
  /** Bytes it holds, without padding. */
  size: number;
}

/** A file of more is no sound file: a limit of ours, so that millions of empty chunks cost nothing. */
const MOST_CHUNKS = 10_000;

const idAt = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

export const isText = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/**
 * The chunks of a RIFF WAVE file, each checked to lie inside the file and inside what the file says
 * of its own length. What stands behind that length is not the file's and is passed over.
 * @throws WavRefused
 */
export function chunksOf(view: DataView): Chunk[] {
  if (view.byteLength < 12)
    throw new WavRefused(0, `the file is only ${view.byteLength} bytes long, so it is no WAV file`);
  const kind = idAt(view, 0);
  const named = NOT_READ[kind];
  if (named) throw new WavRefused(0, named);
  if (kind !== 'RIFF') throw new WavRefused(0, 'the file does not begin with "RIFF": no WAV file');
  if (idAt(view, 8) !== 'WAVE')
    throw new WavRefused(8, `a RIFF file, but of ${shown(idAt(view, 8))} and not of "WAVE"`);
  const end = 8 + view.getUint32(4, true);
  if (end > view.byteLength)
    throw new WavRefused(
      4,
      `the file says it is ${end} bytes long, but there are only ${view.byteLength}: it was cut short, or never finished`,
    );
  const chunks: Chunk[] = [];
  let at = 12;
  while (at < end) {
    if (at + 8 > end) {
      // A lone padding byte at the end, or two, is a common slip and harms nothing.
      if (end - at < 4) break;
      throw new WavRefused(
        at,
        `${end - at} bytes are left where the next chunk needs 8 for its head`,
      );
    }
    const [id, size] = [idAt(view, at), view.getUint32(at + 4, true)];
    if (at + 8 + size > end)
      throw new WavRefused(
        at + 4,
        `the ${shown(id)} chunk says it holds ${size} bytes, but there are only ${end - at - 8} left`,
      );
    if (chunks.length === MOST_CHUNKS)
      throw new WavRefused(at, `more than ${MOST_CHUNKS} chunks, so this is no sound file`);
    chunks.push({ id, at, start: at + 8, size });
    at += 8 + size + (size % 2);
  }
  return chunks;
}

const NOT_READ: Readonly<Record<string, string>> = {
  RIFX: 'a WAV file with its bytes the other way round (RIFX), which is not read; save it as RIFF',
  RF64: 'a WAV file of the long kind (RF64), which is not read; save it as plain WAV',
  BW64: 'a WAV file of the long kind (BW64), which is not read; save it as plain WAV',
};

/** As text in quotes; signs that cannot be printed become "?". */
const shown = (id: string): string => `"${id.replace(/[^ -~]/g, '?')}"`;
