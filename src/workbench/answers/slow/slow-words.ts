import type { MotionDelays, Receiver, SlowMotion, SpeakerInput } from '../../../geometry';
import { seatName, speakerName } from '../../../plan/names';
import { formatTime } from '../../../plan/units';
import { capital } from '../capital';
import { namesOf } from './strip-words';

export const RECEIVER_WORDS: Readonly<Record<Receiver, string>> = {
  left: 'left ear',
  head: 'head',
  right: 'right ear',
};

/** First and last arrival at the middle of the head; `null` without speakers. */
function span({ reaches }: SlowMotion): { first: number; apart: number } | null {
  const heads = reaches.filter(({ at }) => at === 'head');
  const [first, last] = [heads[0], heads[heads.length - 1]];
  return first && last ? { first: first.time, apart: last.time - first.time } : null;
}

/**
 * "Without delays the first sound reaches the head after 1.88 ms and the last 2.20 ms later; with
 * them all are there within 0.02 ms."
 */
export function outcomeWords(both: Readonly<Record<MotionDelays, SlowMotion>>): string {
  const [none, late] = [span(both.none), span(both.aligned)];
  if (!none || !late) return 'No sound is on its way.';
  const { seat, alignedFor, problem } = both.aligned;
  const before =
    both.none.waves.length === 1
      ? `The sound reaches the head after ${formatTime(none.first)}`
      : `Without delays the first sound reaches the head after ${formatTime(none.first)} and the last ${formatTime(none.apart)} later`;
  if (problem || both.none.waves.length === 1) return `${before}.`;
  if (alignedFor === seat)
    return `${before}; with them all are there within ${formatTime(late.apart)}.`;
  const whose =
    alignedFor === null
      ? 'with the compromise over several seats'
      : `with the delays for the ${seatName(alignedFor)}`;
  return `${before}; ${whose} the last comes ${formatTime(late.apart)} after the first.`;
}

/** What stands in the way, and what that does to the picture; nothing where all lines are free. */
export function roundWords(motion: SlowMotion, among: readonly SpeakerInput[]): string[] {
  const heads = motion.reaches.filter(({ at }) => at === 'head');
  return heads.flatMap(({ speaker, comes, time, free }) => {
    if (comes === 'straight') return [];
    const one = among.find(({ id }) => id === speaker);
    const name = capital(one ? speakerName(one, among) : speaker);
    if (comes === 'unknown')
      return `${name}: something stands in the way and no way round it is known, so its sound comes later than drawn.`;
    return `${name}: something stands in the way. What arrives comes round it (the dot), ${formatTime(time - free)} after the drawn sphere has passed.`;
  });
}

/** "2.3 ms. Left tweeter and left mid are there; 2 of 6." */
export function stillWords(
  motion: SlowMotion,
  time: number,
  among: readonly SpeakerInput[],
): string {
  const there = motion.reaches.filter((reach) => reach.at === 'head' && reach.time <= time);
  const clock = formatTime(time);
  const of = motion.waves.length;
  if (there.length === 0) return `${clock}. No sound has reached the head yet.`;
  if (there.length === of) return `${clock}. All ${of} have reached the head.`;
  const [last] = there.slice(-1);
  const name = last ? capital(namesOf([last.speaker], among)) : '';
  return `${clock}. ${name} came last; ${there.length} of ${of} have reached the head.`;
}

/** The next moment something reaches an ear or the head after `time`; `null` after the last. */
export function nextArrival(motions: readonly SlowMotion[], time: number): number | null {
  const later = motions.flatMap(({ reaches }) =>
    reaches.flatMap((reach) => (reach.at === 'head' && reach.time > time ? reach.time : [])),
  );
  return later.length > 0 ? Math.min(...later) : null;
}
