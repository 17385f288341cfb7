import type { PairSensitivity } from '../../../geometry';
import { type CauseId, largestEffect } from './causes';

export interface MattersWording {
  /** 10 mm, in the user's unit. */
  step: string;
  /** 10 °C, in the user's unit. */
  warmth: string;
  length: (mm: number) => string;
  time: (ms: number) => string;
  /** "mids" */
  pair: (id: string) => string;
  /** What the time is in path, mm. */
  speed: number;
}

/** A cause at the head of a sentence. */
const causeWords = (cause: CauseId, { step, warmth }: MattersWording): string =>
  ({
    'both-u': `${step} of both along the panel`,
    'both-v': `${step} of both across the panel`,
    'left-u': `The left one ${step} off along the panel`,
    'left-v': `The left one ${step} off across the panel`,
    'right-u': `The right one ${step} off along the panel`,
    'right-v': `The right one ${step} off across the panel`,
    seat: `${step} of seat travel`,
    temperature: `${warmth} of temperature`,
  })[cause];

/** "10 mm of seat travel changes the mids more than anything else: 8 mm." */
export function mattersSentence(pair: PairSensitivity, wording: MattersWording): string {
  const name = wording.pair(pair.pair);
  const most = largestEffect(pair);
  if (!most) return `What matters to the ${name} cannot be told.`;
  const { cause, change } = most;
  const time = Math.abs(change.differenceTime);
  const much =
    cause === 'temperature'
      ? `${wording.time(time)}, as much as ${wording.length(time * wording.speed)}`
      : wording.length(Math.abs(change.difference));
  return `${causeWords(cause, wording)} changes the ${name} more than anything else: ${much}.`;
}
