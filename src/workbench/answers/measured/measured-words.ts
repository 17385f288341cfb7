import {
  AGREE_MS,
  type ChosenBecause,
  type MeasuredChannelResult,
  type MeasuredSet,
  type MicrophonePlace,
} from '../../../geometry';
import { seatName } from '../../../plan/names';
import type { ReadingEnd } from '../../../plan/types';
import { formatLength, formatTime, type LengthUnit } from '../../../plan/units';
import { capital } from '../capital';

export const PLACES: readonly { value: MicrophonePlace; label: string }[] = [
  { value: 'head', label: 'middle of the head' },
  { value: 'left-ear', label: 'left ear' },
  { value: 'right-ear', label: 'right ear' },
];

export const placeName = (at: MicrophonePlace): string =>
  PLACES.find(({ value }) => value === at)?.label ?? at;

/** "at the middle of the head on the front left seat". */
export const whereWords = (at: MicrophonePlace, seat: string): string =>
  `at the ${placeName(at)}, ${seatName(seat)}`;

export const BECAUSE: Readonly<Record<ChosenBecause, string>> = {
  asked: 'as you asked',
  'only-edge': 'too little in common to correlate',
  alone: 'which needs no other channel',
  reference: 'the clearest of its kind',
  agree: `both agree within ${AGREE_MS} ms`,
  unlike: 'too unlike its twin to correlate',
  noise: 'noise raised the threshold',
  disagree: 'they disagree: look at the drawing',
};

export interface Wording {
  unit: LengthUnit;
  /** mm/ms */
  speed: number;
  name: (speaker: string) => string;
}

const about = (ms: number, { unit, speed }: Wording): string =>
  `${formatTime(ms, 2)} (${formatLength(ms * speed, unit)})`;

/** Who stands out, each in a sentence. */
export function outlierWords(set: MeasuredSet, wording: Wording): string[] {
  return set.outliers.flatMap((id) => {
    const one = set.channels.find((channel) => channel.id === id);
    return one ? [outlierSentence(one, wording)] : [];
  });
}

function outlierSentence(one: MeasuredChannelResult, wording: Wording): string {
  const { differenceMs, sdMs } = one;
  const way = differenceMs > 0 ? 'later' : 'earlier';
  return (
    `${capital(wording.name(one.id))} arrives ${about(Math.abs(differenceMs), wording)} ${way} than predicted, ` +
    `where ±${about(2 * sdMs, wording)} was to be expected.`
  );
}

/** What to look at first, by what usually does it. Common practice, no source. */
export const OUTLIER_CAUSES =
  'Look at its delay and polarity in the processor, at the drawing of its response (is that its ' +
  'direct sound?), and then for the speaker itself: does it stand where the plan says?';

/** Whether all of it is what was to be expected. */
export function wholeWords(set: MeasuredSet, wording: Wording): string {
  const { channels, outliers, whole, agrees, tooFew, expected } = set;
  if (tooFew !== null) return `${capital(tooFew)}.`;
  const { unit } = wording;
  const [least, most] = expected.map((mm) => formatLength(mm, unit)) as [string, string];
  const range = least === most ? `±${least}` : `±${least} to ±${most}`;
  const n = channels.length;
  if (agrees && whole?.within)
    return `All ${n} channels arrive as predicted: no difference is larger than was to be expected (${range} of path), and together they are not either.`;
  const beyond = channels.filter(({ within, outlier }) => !within && !outlier);
  if (outliers.length > 0) {
    const others = n - outliers.length;
    return beyond.length === 0
      ? `The other ${others} arrive as predicted, within what was to be expected (${range} of path). As a whole the measurement does not fit the plan.`
      : `Of the other ${others}, ${beyond.length === 1 ? 'one is' : `${beyond.length} are`} somewhat farther off than was to be expected (${range} of path). As a whole the measurement does not fit the plan.`;
  }
  if (beyond.length > 0) {
    const who = list(beyond.map(({ id }) => wording.name(id)));
    return whole?.within
      ? `${capital(who)} ${beyond.length === 1 ? 'is' : 'are'} a little farther off than was to be expected (${range} of path); all together still fit, which happens to one in twenty.`
      : `${capital(who)} ${beyond.length === 1 ? 'is' : 'are'} farther off than was to be expected (${range} of path), and so is the whole.`;
  }
  return `No single difference is larger than was to be expected (${range} of path), but together they are: something is off in many channels, such as the seat, the microphone or the temperature.`;
}

export const loopWords = ({ offsetMs, offsetSdMs }: MeasuredSet): string =>
  `The measuring loop and whatever stands before the sound in the files take ${formatTime(offsetMs, 3)} ` +
  `(±${formatTime(2 * offsetSdMs, 3)}), the same for all; that is taken off.`;

/** "a, b and c". */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

export function endName(
  end: ReadingEnd,
  name: (speaker: string) => string,
  reference: (id: string) => string | null,
): string {
  switch (end.kind) {
    case 'speaker':
      return name(end.speaker);
    case 'head':
      return `head, ${seatName(end.seat)}`;
    case 'ear':
      return `${end.side} ear, ${seatName(end.seat)}`;
    case 'reference':
      return reference(end.reference) ?? `“${end.reference}”, which this cabin does not have`;
  }
}
