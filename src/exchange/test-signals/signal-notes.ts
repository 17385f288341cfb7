import type { TestSignal } from '../../geometry';
import type { DelayExport } from '../delay-types';
import { alignColumns, oneLine, wrap } from '../plain-text';

interface Noted {
  all: DelayExport;
  bursts: TestSignal;
  withDelays: boolean;
  files: readonly { name: string; what: string }[];
}

/** What is in the files, which channel is which, and how to use them without harm. */
export function signalNotes({ all, bursts, withDelays, files }: Noted): string {
  const why = new Map(bursts.silent.map(({ id, why }) => [id, why]));
  return [
    `Test signals: ${oneLine(all.planTitle) || 'untitled plan'}`,
    `Option: ${oneLine(all.option.title)}`,
    `${bursts.sampleRateHz} samples a second; highest sample of each channel ${(20 * Math.log10(bursts.peak)).toFixed(1)} dB of full scale`,
    '',
    ...wrap(BEWARE),
    '',
    ...wrap(
      withDelays
        ? 'The delays below are in the signals: set none in the processor. With the delays right, ' +
            'everything is heard at once at the seat they were made for.'
        : 'No delays are in the signals: they show the delays set in the processor.',
    ),
    ...wrap(
      'Gains, polarity and crossovers are not in them. Each sound stands in the middle of its ' +
        'second: a click is one sample, a burst is a tone in the middle of the channel’s band under a ' +
        'raised cosine (Hann).',
    ),
    '',
    ...wrap(BY_EAR),
    '',
    ...wrap(BY_MICROPHONE),
    '',
    ...(all.rows.length > 0
      ? alignColumns([
          ['channel', 'WAV channel', 'delay ms', 'burst Hz', 'cycles'],
          ...all.rows.map(({ name, speaker, rounded }, i) => {
            const burst = bursts.channels[i]?.burst;
            return [
              `${name} (${oneLine(speaker)})`,
              String(i + 1),
              withDelays ? rounded.ms.toFixed(3) : 'none',
              burst ? burst.frequencyHz.toFixed(0) : 'no burst',
              burst ? String(burst.cycles) : '',
            ];
          }),
        ])
      : ['No speakers in this option.']),
    ...all.rows.flatMap(({ name, speaker }) =>
      why.has(speaker) ? wrap(`The ${name} has no burst: ${why.get(speaker)}.`) : [],
    ),
    '',
    ...alignColumns([['file', ''], ...files.map(({ name, what }) => [name, what])]),
    '',
  ].join('\n');
}

/** Common practice, no source. */
const BEWARE =
  'Before playing: turn the volume all the way down and begin softly; a click says nothing of how ' +
  'loud it will be. Set the crossovers first, so that no tweeter gets what it cannot bear. Keep ears ' +
  'away from the speakers.';

const BY_EAR =
  'By ear: sit as you drive, head against the restraint. Play the clicks together: with the delays ' +
  'right they melt into one short click in front of you; two clicks, or one with a tail, mean that a ' +
  'channel is early or late. Then the bursts together, a pair at a time (mute the others): each should ' +
  'stand in the middle. Swap the poles of one: it should turn vague and thin.';

const BY_MICROPHONE =
  'By microphone: put it where the middle of the head is and leave it there. Record the clicks in ' +
  'turn, or the file of each channel alone, all with one device and at one level: the time from the ' +
  'middle of each second to its click is the way of the sound plus what the loop takes, the same for ' +
  'all. Measured impulse responses, one file a channel, are read by the sheet “Measured”.';
