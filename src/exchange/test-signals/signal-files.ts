import { strToU8, Zip, ZipDeflate, zipSync } from 'fflate';
import { type OptionInput, type SignalChannel, type TestSignal, testSignal } from '../../geometry';
import { safeFileName } from '../../plan/schema';
import type { DelayExport } from '../delay-types';
import { type WrittenEncoding, writeWav } from '../wav/write-wav';
import { signalNotes } from './signal-notes';

export interface SignalFilesSettings {
  /** Whole Hz; the plan's own as a rule. */
  sampleRateHz: number;
  /** The delays as set are in the signals, for a processor that has none set. */
  withDelays: boolean;
  encoding: WrittenEncoding;
}

/** One file of the set: written only when asked, since a set may take a hundred megabytes. */
export interface SignalFile {
  name: string;
  /** What is in it, in words. */
  what: string;
  write(): Uint8Array;
}

export interface SignalFiles {
  files: SignalFile[];
  /** Channels without a burst, and why. */
  silent: TestSignal['silent'];
}

/** How often every channel sounds in files of one, of all in turn, and of all together. Choices of ours. */
const TIMES = { alone: 5, inTurn: 1, together: 5 } as const;

/**
 * The set of WAV files to check a tune by ear and by microphone: clicks and bursts of all channels
 * in turn and together, one WAV channel for each in the order of the export, the same of every
 * channel alone, and a text that says what is what. The same tune gives the same bytes.
 * @throws RangeError as `testSignal` does
 */
export function testSignalFiles(
  all: DelayExport,
  option: OptionInput,
  { sampleRateHz, withDelays, encoding }: SignalFilesSettings,
): SignalFiles {
  const bands = new Map(option.speakers.map(({ id, bandHz }) => [id, bandHz]));
  const channels = all.rows.map(({ speaker, rounded }): SignalChannel => {
    const bandHz = bands.get(speaker);
    return { id: speaker, delay: rounded.ms, ...(bandHz && { bandHz }) };
  });
  type Kind = 'click' | 'burst';
  const signal = (
    of: readonly SignalChannel[],
    kind: Kind,
    order: 'in-turn' | 'together',
    times: number,
  ) => testSignal(of, { kind, order, times, sampleRateHz, withDelays });
  const wav = (made: TestSignal) =>
    writeWav({ sampleRateHz, channels: made.channels.map(({ samples }) => samples) }, encoding);

  // Made once here, briefly, so that whatever cannot be is said before anything is written.
  const bursts = signal(channels, 'burst', 'together', 1);
  const silent = new Set(bursts.silent.map(({ id }) => id));
  const files: SignalFile[] = [];
  const put = (name: string, what: string, write: () => Uint8Array) =>
    files.push({ name: `${safeFileName(name)}.wav`, what, write });
  if (channels.length > 0)
    for (const kind of ['click', 'burst'] as const) {
      if (kind === 'burst' && silent.size === channels.length) continue;
      put(`${kind}s in turn`, `${kind}s, one channel each second`, () =>
        wav(signal(channels, kind, 'in-turn', TIMES.inTurn)),
      );
      put(`${kind}s together`, `${kind}s of all channels, every second`, () =>
        wav(signal(channels, kind, 'together', TIMES.together)),
      );
    }
  for (const [i, channel] of channels.entries()) {
    const { name = '' } = all.rows[i] ?? {};
    const number = String(i + 1).padStart(2, '0');
    for (const kind of ['click', 'burst'] as const) {
      if (kind === 'burst' && silent.has(channel.id)) continue;
      put(`${number} ${name} ${kind}`, `${kind}s of the ${name} alone, every second`, () =>
        wav(signal([channel], kind, 'together', TIMES.alone)),
      );
    }
  }
  const text = signalNotes({ all, bursts, withDelays, files });
  files.unshift({ name: 'what is what.txt', what: 'this list', write: () => strToU8(text) });
  return { files, silent: bursts.silent };
}

/** The ZIP format's first day: the same set gives the same bytes. */
const NO_DATE = new Date(1980, 0, 1);

/** The whole set as one ZIP; silence packs to nearly nothing. */
export const zipOf = (files: readonly SignalFile[]): Uint8Array =>
  zipSync(Object.fromEntries(files.map(({ name, write }) => [name, write()])), { mtime: NO_DATE });

export interface ZipWatch {
  /** Called after every file. */
  told: (done: number, of: number) => void;
  /** Ends it early. */
  stop?: AbortSignal;
}

/**
 * The same ZIP, a file at a time with a breath between, so that a page can show how far it is and
 * let go of it. @returns `null` when stopped
 */
export async function zipInSteps(
  files: readonly SignalFile[],
  { told, stop }: ZipWatch,
): Promise<Uint8Array[] | null> {
  const parts: Uint8Array[] = [];
  const zip = new Zip((error, part) => {
    if (error) throw error;
    parts.push(part);
  });
  for (const [i, { name, write }] of files.entries()) {
    const file = new ZipDeflate(name, { level: 6 });
    file.mtime = NO_DATE;
    zip.add(file);
    file.push(write(), true);
    told(i + 1, files.length);
    await new Promise((next) => setTimeout(next));
    if (stop?.aborted) return null;
  }
  zip.end();
  return parts;
}
