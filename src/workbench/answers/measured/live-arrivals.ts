import {
  type ArrivalChoice,
  type ChosenArrival,
  chooseArrival,
  type FirstArrival,
  type MeasuredArrival,
  type MicrophonePlace,
  type SpeakerInput,
} from '../../../geometry';
import { formatNumber } from '../../../plan/units';
import { knownArrivals } from './known-arrivals';
import type { Track } from './measured-store';

export interface LiveRow {
  track: Track;
  /** The speaker it is bound to, as the option has it. */
  speaker: SpeakerInput | null;
  /** Why it does not count, as a clause; `null` where it does or only waits for its speaker. */
  problem: string | null;
  found: FirstArrival | null;
  chosen: ChosenArrival | null;
}

export interface LiveSettings {
  seat: string;
  at: MicrophonePlace;
  choice: ArrivalChoice;
  /** What each channel was delayed by while measuring, ms, by speaker; left out: nothing. */
  delays?: Readonly<Record<string, number>>;
}

/** First arrivals of the responses read, as far as they are bound to speakers of the option. */
export function liveArrivals(
  tracks: readonly Track[],
  speakers: readonly SpeakerInput[],
  { seat, at, choice, delays = {} }: LiveSettings,
): { rows: LiveRow[]; taken: MeasuredArrival[] } {
  const rate = usualRate(tracks);
  const bound = new Set<string>();
  const rows = tracks.map((track): LiveRow => {
    const speaker = speakers.find(({ id }) => id === track.speaker) ?? null;
    const bare = { track, speaker, found: null, chosen: null };
    if (track.sampleRateHz === null)
      return { ...bare, problem: 'the file does not say its sample rate' };
    if (!speaker) return { ...bare, problem: null };
    if (bound.has(speaker.id))
      return { ...bare, problem: 'another file above is already bound to this speaker' };
    if (track.sampleRateHz !== rate)
      return {
        ...bare,
        problem: `it has ${khz(track.sampleRateHz)} where most have ${khz(rate)}: measured in another run`,
      };
    bound.add(speaker.id);
    return { ...bare, problem: null };
  });
  const counting = rows.filter(({ speaker, problem }) => speaker && problem === null);
  for (const group of alike(counting)) {
    const found = knownArrivals(
      group.map(({ track, speaker }) => ({
        id: speaker?.id ?? '',
        response: { ...track.sound, sampleRateHz: rate },
        bandHz: speaker?.bandHz,
      })),
    );
    group.forEach((row, i) => {
      const one = found[i] as FirstArrival;
      row.found = one;
      row.chosen = chooseArrival(one, rate, { wanted: choice, alone: group.length === 1 });
      if ('problem' in one.edge) row.problem = one.edge.problem;
    });
  }
  const taken = counting.flatMap(({ chosen, track }): MeasuredArrival[] =>
    chosen
      ? [
          {
            speaker: chosen.id,
            seat,
            at,
            time: chosen.time,
            sd: chosen.sd,
            ...(delays[chosen.id] ? { delay: delays[chosen.id] } : {}),
            method: chosen.method,
            sampleRateHz: rate,
            file: track.file,
          },
        ]
      : [],
  );
  return { rows, taken };
}

/** Speakers of one role play the same band and sound alike: only those are correlated. */
function alike(rows: readonly LiveRow[]): LiveRow[][] {
  const groups = new Map<string, LiveRow[]>();
  for (const row of rows) {
    const role = row.speaker?.role ?? '';
    groups.set(role, [...(groups.get(role) ?? []), row]);
  }
  return [...groups.values()];
}

/** "44.1 kHz". */
export const khz = (hz: number): string =>
  `${formatNumber(hz / 1000, hz % 1000 === 0 ? 0 : hz % 100 === 0 ? 1 : 3)} kHz`;

/** The rate most bound tracks have; of several the first. */
function usualRate(tracks: readonly Track[]): number {
  const counts = new Map<number, number>();
  for (const { sampleRateHz, speaker } of tracks)
    if (sampleRateHz !== null && speaker !== null)
      counts.set(sampleRateHz, (counts.get(sampleRateHz) ?? 0) + 1);
  return [...counts].reduce((best, one) => (one[1] > best[1] ? one : best), [48000, 0])[0];
}
