import { describe, expect, test } from 'vitest';
import type { Arrival, SeatResult, SpeakerInput } from '../../../src/geometry';
import { list, pairWords, type Wording } from '../../../src/workbench/answers/pair-words';
import { wordingFor } from '../../../src/workbench/answers/wording';

/** mm/ms: what makes 283.1 mm 0.823 ms. */
const SPEED = 344;

const speaker = (side: 'left' | 'right', pair = 'mid'): SpeakerInput => ({
  id: `${pair}-${side}`,
  role: 'midrange',
  pair,
  side,
  position: [0, 0, 0],
});

function arrival(id: string, path: number, blockedBy: string[] = []): Arrival {
  const line = blockedBy.length > 0 ? ('blocked' as const) : ('clear' as const);
  const time = path / SPEED;
  const ear = { direct: path, path, time, line, blockedBy };
  return {
    ...ear,
    speaker: id,
    offAxisDeg: 0,
    offAxisHorizontalDeg: 0,
    offAxisVerticalDeg: 0,
    levelDb: 0,
    ears: { left: ear, right: ear },
  };
}

const seat = (...arrivals: Arrival[]): SeatResult => ({
  id: 'front-left',
  head: [0, 0, 0],
  arrivals,
  pairs: [],
  delays: [],
});

const cabin = {
  obstacles: [{ id: 'wheel', name: 'steering wheel' }],
  panels: [{ id: 'pillar-left', name: 'left A-pillar' }],
} as unknown as Parameters<typeof wordingFor>[0];

const pair = [speaker('left'), speaker('right')];
const wording = (unit: 'mm' | 'in' = 'mm'): Wording => wordingFor(cabin, pair, unit);

describe('the answer in words', () => {
  test('says which of a pair is nearer, by how much, and the delay that mends it', () => {
    const [line] = pairWords(
      pair,
      seat(arrival('mid-left', 1000), arrival('mid-right', 1283.1)),
      wording(),
    );
    expect(line?.answer).toBe('Left mid is 283 mm nearer; delay it 0.82 ms.');
    expect(line?.blocked).toEqual([]);
  });

  test('names the right one when the right one is nearer', () => {
    const [line] = pairWords(
      pair,
      seat(arrival('mid-left', 1300), arrival('mid-right', 1000)),
      wording(),
    );
    expect(line?.answer).toBe('Right mid is 300 mm nearer; delay it 0.87 ms.');
  });

  test('counts in inches when asked to', () => {
    const [line] = pairWords(
      pair,
      seat(arrival('mid-left', 1000), arrival('mid-right', 1254)),
      wording('in'),
    );
    expect(line?.answer).toBe('Left mid is 10.00 in nearer; delay it 0.74 ms.');
  });

  test('equal paths arrive together, and no delay of 0.00 ms is ever advised', () => {
    for (const difference of [0, 0.4, 1.7]) {
      const [line] = pairWords(
        pair,
        seat(arrival('mid-left', 1000), arrival('mid-right', 1000 + difference)),
        wording(),
      );
      expect(line?.answer).toBe('Left and right mid arrive together.');
    }
    const [apart] = pairWords(
      pair,
      seat(arrival('mid-left', 1000), arrival('mid-right', 1001.8)),
      wording(),
    );
    expect(apart?.answer).toContain('delay it 0.01 ms');
  });

  test('says by what the line is blocked, nearest the speaker first', () => {
    const [line] = pairWords(
      pair,
      seat(arrival('mid-left', 1000, ['wheel', 'pillar-left']), arrival('mid-right', 1283)),
      wording(),
    );
    expect(line?.blocked).toEqual([
      'The line from the left mid is blocked by the steering wheel and the left A-pillar.',
    ]);
  });

  test('a speaker without a twin tells its distance and time', () => {
    const sub: SpeakerInput = { id: 'sub', role: 'subwoofer', position: [0, 0, 0] };
    const [line] = pairWords([sub], seat(arrival('sub', 1720)), wording());
    expect(line?.answer).toBe('Subwoofer is 1720 mm away; its sound takes 5.00 ms.');
    expect(line?.kind).toBe('alone');
  });

  test('every speaker is spoken of once, pairs once between them', () => {
    const others = [...pair, speaker('left', 'tweeter'), speaker('right', 'tweeter')];
    const lines = pairWords(
      others,
      seat(...others.map((one, i) => arrival(one.id, 1000 + 40 * i))),
      wordingFor(cabin, others, 'mm'),
    );
    expect(lines.flatMap((line) => line.speakers)).toEqual(others.map((one) => one.id));
  });

  test('an arrival that is not known is said to be unknown, not made up', () => {
    const [line] = pairWords(pair, seat(arrival('mid-left', 1000)), wording());
    expect(line?.kind).toBe('unknown');
  });

  test('lists read like lists', () => {
    expect(list(['a'])).toBe('a');
    expect(list(['a', 'b'])).toBe('a and b');
    expect(list(['a', 'b', 'c'])).toBe('a, b and c');
  });
});
