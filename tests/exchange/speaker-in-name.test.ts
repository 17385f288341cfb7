import { describe, expect, test } from 'vitest';
import { speakerInName } from '../../src/exchange/speaker-in-name';
import type { Role, Side, SpeakerInput } from '../../src/geometry';

const speaker = (id: string, role: Role, side?: Side): SpeakerInput => ({
  id,
  role,
  ...(side && { side, pair: role }),
  position: [0, 0, 0],
});

const STAGE = [
  speaker('tweeter-left', 'tweeter', 'left'),
  speaker('tweeter-right', 'tweeter', 'right'),
  speaker('midrange-left', 'midrange', 'left'),
  speaker('midrange-right', 'midrange', 'right'),
  speaker('midbass-left', 'midbass', 'left'),
  speaker('midbass-right', 'midbass', 'right'),
  speaker('subwoofer', 'subwoofer'),
  speaker('centre', 'centre'),
];

describe('the speaker a file’s name speaks of', () => {
  test.each([
    ['tweeter-left.wav', 'tweeter-left'],
    ['2026-11-03 TWEETER LEFT driver seat.wav', 'tweeter-left'],
    ['TW L.wav', 'tweeter-left'],
    ['twR_48k.wav', 'tweeter-right'],
    ['mid_right.txt', 'midrange-right'],
    ['mid bass left.wav', 'midbass-left'],
    ['MB-R.wav', 'midbass-right'],
    ['MidbassLeft.wav', 'midbass-left'],
    ['Hochtöner links.wav', 'tweeter-left'],
    ['Mitteltöner rechts.txt', 'midrange-right'],
    ['sub.wav', 'subwoofer'],
    ['center.wav', 'centre'],
  ])('%s is %s', (name, id) => {
    expect(speakerInName(name, STAGE)).toBe(id);
  });

  test.each(['run 3.wav', 'left.wav', 'tweeter.wav', 'tweeter left right.wav', 'bell.wav', '.wav'])(
    '%s says none for sure',
    (name) => {
      expect(speakerInName(name, STAGE)).toBeNull();
    },
  );

  test('of two tweeters on one side none is taken unless the name has the very id', () => {
    const two = [...STAGE, speaker('tweeter-2-left', 'tweeter', 'left')];
    expect(speakerInName('tw l.wav', two)).toBeNull();
    expect(speakerInName('tweeter 2 left.wav', two)).toBe('tweeter-2-left');
  });
});
