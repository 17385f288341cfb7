import { describe, expect, test } from 'vitest';
import type { Arrival, SeatResult, SpeakerInput } from '../../../src/geometry';
import { pairWords } from '../../../src/workbench/answers/pair-words';
import { list, type Wording } from '../../../src/workbench/answers/way-words';
import { wordingFor } from '../../../src/workbench/answers/wording';
import { arrivalOf } from './arrival-of';

/** mm/ms: what makes 283.1 mm 0.823 ms. */
const SPEED = 344;

const speaker = (side: 'left' | 'right', pair = 'mid'): SpeakerInput => ({
  id: `${pair}-${side}`,
  role: 'midrange',
  pair,
  side,
  position: [0, 0, 0],
});

const arrival = (id: string, path: number, fields: Partial<Arrival> = {}): Arrival =>
  arrivalOf(id, { direct: path, path, time: path / SPEED, ...fields });

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
    expect(line?.notes).toEqual([]);
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

  test('says beside it what each of the two goes round or passes close to', () => {
    const [line] = pairWords(
      pair,
      seat(
        arrival('mid-left', 1001, {
          line: 'blocked',
          direct: 1000,
          blockedBy: ['wheel'],
          round: ['wheel'],
          detour: 1,
        }),
        arrival('mid-right', 1283, {
          line: 'grazing',
          grazedBy: ['pillar-left'],
          detour: -4,
        }),
      ),
      wording(),
    );
    expect(line?.answer).toBe('Left mid is 282 mm nearer; delay it 0.82 ms.');
    expect(line?.notes).toEqual([
      { line: 'blocked', text: 'Left mid goes round the steering wheel: +1 mm.' },
      { line: 'grazing', text: 'Right mid passes close to the left A-pillar.' },
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
