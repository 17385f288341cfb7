import { type Chunk, chunksOf, isText, WavRefused } from './chunks';
import { BYTES_PER_SAMPLE, type WavEncoding } from './format';
import { readFormat } from './read-format';

export interface ReadWav {
  sampleRateHz: number;
  /** One for each channel, full scale ±1; floats as they stand, which may be beyond. */
  channels: Float64Array[];
  encoding: WavEncoding;
}

export type WavAnswer =
  | ({ ok: true } & ReadWav)
  /** One sentence, with the byte it is about counted from 0. */
  | { ok: false; message: string; byte: number };

/** Limits of ours: a minute of 8 channels at 192 kHz in 24 bits is 276 MB, a response far less. */
export const MAX_WAV_BYTES = 300_000_000;
/** Samples over all channels; as numbers they take eight bytes each. */
export const MAX_WAV_SAMPLES = 50_000_000;

/**
 * Reads RIFF WAV: integers of 16, 24 or 32 bits, floats of 32 or 64, in the plain and in the
 * extensible form (sources: `format.ts`). Chunks it does not know are passed over. Nothing is taken
 * into memory before its size is known to be there.
 */
export function readWav(bytes: Uint8Array): WavAnswer {
  try {
    return { ok: true, ...read(bytes) };
  } catch (error) {
    if (!(error instanceof WavRefused)) throw error;
    return { ok: false, byte: error.byte, message: `byte ${error.byte}: ${error.message}` };
  }
}

function read(bytes: Uint8Array): ReadWav {
  if (bytes.length > MAX_WAV_BYTES)
    throw new WavRefused(
      0,
      `the file is ${Math.ceil(bytes.length / 1e6)} MB long; no more than ${MAX_WAV_BYTES / 1e6} MB are read`,
    );
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = chunksOf(view);
  const one = (id: string): Chunk | undefined => {
    const [first, second] = chunks.filter((chunk) => chunk.id === id);
    if (second)
      throw new WavRefused(second.at, `a second "${id}" chunk, after that at ${first?.at}`);
    return first;
  };
  const [fmt, data] = [one('fmt '), one('data')];
  if (!fmt)
    throw new WavRefused(12, 'there is no "fmt " chunk, which tells how samples are stored');
  if (!data) throw new WavRefused(12, 'there is no "data" chunk, so there is no sound in it');
  if (data.at < fmt.at)
    throw new WavRefused(data.at, 'the "data" chunk stands before the "fmt " chunk');
  const { encoding, channelCount, sampleRateHz } = readFormat(view, fmt);
  const block = channelCount * BYTES_PER_SAMPLE[encoding];
  const frames = Math.floor(data.size / block);
  if (frames === 0) throw new WavRefused(data.at + 4, 'the "data" chunk holds no sample');
  if (frames * block !== data.size)
    throw new WavRefused(
      data.at + 4,
      `${data.size} bytes of sound are no whole number of samples: each takes ${block} bytes over all channels`,
    );
  if (frames * channelCount > MAX_WAV_SAMPLES)
    throw new WavRefused(
      data.at + 4,
      `${frames} samples on ${channelCount} channels are more than are read (${MAX_WAV_SAMPLES / 1e6} million in all)`,
    );
  const channels = samplesOf(view, data.start, frames, channelCount, encoding);
  return { sampleRateHz, channels, encoding };
}

function samplesOf(
  view: DataView,
  start: number,
  frames: number,
  channelCount: number,
  encoding: WavEncoding,
): Float64Array[] {
  const get = READERS[encoding];
  const width = BYTES_PER_SAMPLE[encoding];
  return Array.from({ length: channelCount }, (_, c) => {
    const samples = new Float64Array(frames);
    for (let i = 0; i < frames; i++) {
      const at = start + (i * channelCount + c) * width;
      const value = get(view, at);
      if (!Number.isFinite(value))
        throw new WavRefused(at, `sample ${i} of channel ${c + 1} is ${value}, which is no number`);
      samples[i] = value;
    }
    return samples;
  });
}

const READERS: Readonly<Record<WavEncoding, (view: DataView, at: number) => number>> = {
  int16: (view, at) => view.getInt16(at, true) / 2 ** 15,
  int24: (view, at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 65536) / 2 ** 23,
  int32: (view, at) => view.getInt32(at, true) / 2 ** 31,
  float32: (view, at) => view.getFloat32(at, true),
  float64: (view, at) => view.getFloat64(at, true),
};

/** Whether bytes begin as a RIFF file does: to tell a WAV from text, whatever its name. */
export const looksLikeWav = (bytes: Uint8Array): boolean => isText(bytes, 0, 'RIFF');
