import { decodeMeasurement } from './decode-measurement';
import { readImpulseText } from './impulse-text';
import type { WavEncoding } from './wav/format';
import { looksLikeWav, readWav } from './wav/read-wav';

/** One channel of a file with measured impulse responses. */
export interface MeasuredTrack {
  samples: Float64Array;
  /** When the first sample kept is, ms from the file's beginning, or by the file's own times. */
  startMs: number;
}

export interface MeasuredFile {
  /** `null`: a text without times; to be asked. */
  sampleRateHz: number | null;
  stored: WavEncoding | 'text';
  /** Samples in the file, a channel. */
  length: number;
  tracks: MeasuredTrack[];
}

export type MeasuredFileAnswer =
  | ({ ok: true } & MeasuredFile)
  /** One sentence: what is wrong and where. */
  | { ok: false; message: string };

/** What is kept round the loudest point, ms. Choices of ours: a car's direct sound is not earlier. */
export const KEPT_BEFORE = 150;
export const KEPT_AFTER = 40;

/** Plans, tunes and pages begin like this: texts, but no lists of samples. */
const OTHER_TEXT = /^\s*[{<]/;

/** Reads a file with an impulse response by what is in it, whatever its name: WAV or text. */
export function readMeasuredFile(bytes: Uint8Array): MeasuredFileAnswer {
  if (bytes.length === 0) return { ok: false, message: 'it is empty' };
  // Other RIFF kinds and the long form are told by the WAV reader, which has a sentence for each.
  if (looksLikeWav(bytes) || [...KINDS].some((kind) => startsWith(bytes, kind))) {
    const wav = readWav(bytes);
    if (!wav.ok) return wav;
    const { sampleRateHz, encoding, channels } = wav;
    return {
      ok: true,
      sampleRateHz,
      stored: encoding,
      length: channels[0]?.length ?? 0,
      tracks: channels.map((samples) => aroundLoudest({ samples, startMs: 0 }, sampleRateHz)),
    };
  }
  const decoded = decodeMeasurement(bytes);
  if (!decoded.ok)
    return {
      ok: false,
      message:
        decoded.message === 'it is no text file'
          ? 'it is neither a WAV nor a text file'
          : decoded.message,
    };
  if (OTHER_TEXT.test(decoded.text))
    return { ok: false, message: 'it is a text of another kind, no list of samples' };
  const text = readImpulseText(decoded.text);
  if (!text.ok) return text;
  const { samples, startMs, sampleRateHz } = text;
  const track = { samples, startMs };
  return {
    ok: true,
    sampleRateHz,
    stored: 'text',
    length: samples.length,
    tracks: [sampleRateHz === null ? track : aroundLoudest(track, sampleRateHz)],
  };
}

const KINDS = ['RIFX', 'RF64', 'BW64'];
const startsWith = (bytes: Uint8Array, text: string): boolean =>
  [...text].every((letter, i) => bytes[i] === letter.charCodeAt(0));

/**
 * The part round the loudest point, so that long recordings cost no more than short ones. Times stay
 * those of the file.
 */
export function aroundLoudest(
  { samples, startMs }: MeasuredTrack,
  sampleRateHz: number,
): MeasuredTrack {
  let [at, most] = [0, 0];
  for (let i = 0; i < samples.length; i++) {
    const size = Math.abs(samples[i] as number);
    if (size > most) [at, most] = [i, size];
  }
  const from = Math.max(0, at - Math.round((KEPT_BEFORE * sampleRateHz) / 1000));
  const to = Math.min(samples.length, at + Math.round((KEPT_AFTER * sampleRateHz) / 1000) + 1);
  if (from === 0 && to === samples.length) return { samples, startMs };
  return { samples: samples.slice(from, to), startMs: startMs + (from * 1000) / sampleRateHz };
}
