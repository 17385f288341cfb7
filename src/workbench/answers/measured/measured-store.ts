/**
 * The responses read while the sheet is open or closed. Only what is taken from them is kept in the
 * plan; the sound itself stays here until the page or another plan is opened.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { MeasuredFile, MeasuredTrack } from '../../../exchange/measured-file';
import { aroundLoudest } from '../../../exchange/measured-file';
import { speakerInName } from '../../../exchange/speaker-in-name';
import type { ArrivalChoice, MicrophonePlace, SpeakerInput } from '../../../geometry';

/** One channel of one file. */
export interface Track {
  key: string;
  file: string;
  /** Counted from 1, of so many in the file. */
  channel: number;
  of: number;
  stored: MeasuredFile['stored'];
  /** Samples in the file. */
  length: number;
  /** `null` until it is answered. */
  sampleRateHz: number | null;
  /** The file does not tell its rate. */
  asksRate: boolean;
  sound: MeasuredTrack;
  /** The id of the speaker it was measured of; `null`: not said. */
  speaker: string | null;
}

export interface MeasuredState {
  openedAs: number;
  tracks: readonly Track[];
  /** Files that could not be read, each with why. */
  refused: readonly { file: string; message: string }[];
  /** Files being read: how many are done, and which one is at it. */
  reading: { done: number; total: number; file: string } | null;
  at: MicrophonePlace;
  /** Whether the processor delayed the channels as the plan says while they were measured. */
  delayed: 'off' | 'plan';
  choice: ArrivalChoice;
  /** What was done last, for those who cannot see it. */
  said: string;
}

const fresh = (openedAs: number): MeasuredState => ({
  openedAs,
  tracks: [],
  refused: [],
  reading: null,
  at: 'head',
  delayed: 'off',
  choice: 'surer',
  said: '',
});

export const measuredStore = createStore<MeasuredState>(() => fresh(-1));

export const useMeasuredState = <T>(select: (state: MeasuredState) => T): T =>
  useStore(measuredStore, select);

/** Another plan was opened: what was measured of the last one's car goes. */
export function startAfresh(openedAs: number): void {
  if (measuredStore.getState().openedAs !== openedAs) measuredStore.setState(fresh(openedAs));
}

let keys = 0;

/** Takes a file that was read; one of the same name is replaced, and keeps its speakers. */
export function takeFile(
  file: string,
  { tracks, sampleRateHz, stored, length }: MeasuredFile,
  speakers: readonly SpeakerInput[],
): void {
  const before = measuredStore.getState().tracks;
  const named = tracks.length === 1 ? speakerInName(file, speakers) : null;
  const added = tracks.map((sound, i): Track => {
    const earlier = before.find((one) => one.file === file && one.channel === i + 1);
    return {
      key: `${++keys}`,
      file,
      channel: i + 1,
      of: tracks.length,
      stored,
      length,
      sampleRateHz,
      asksRate: sampleRateHz === null,
      sound,
      speaker: earlier?.speaker ?? named,
    };
  });
  measuredStore.setState({ tracks: [...before.filter((one) => one.file !== file), ...added] });
}

const change = (key: string, fields: (track: Track) => Partial<Track>): void =>
  measuredStore.setState(({ tracks }) => ({
    tracks: tracks.map((one) => (one.key === key ? { ...one, ...fields(one) } : one)),
  }));

export const bindTrack = (key: string, speaker: string | null): void =>
  change(key, () => ({ speaker }));

/** Answers what rate a text was sampled at, Hz. */
export const answerRate = (key: string, sampleRateHz: number): void =>
  change(key, ({ sound }) => ({ sampleRateHz, sound: aroundLoudest(sound, sampleRateHz) }));

export const leaveOut = (key: string): void =>
  measuredStore.setState(({ tracks }) => ({ tracks: tracks.filter((one) => one.key !== key) }));
