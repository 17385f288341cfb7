import { describe, expect, test } from 'vitest';
import type { OptionResult, SpeakerInput } from '../../../src/geometry';
import { groupSpeakers } from '../../../src/workbench/speakers/group-speakers';
import { widestDifference } from '../../../src/workbench/speakers/widest-difference';

const one = (id: string, pair?: string, side?: 'left' | 'right'): SpeakerInput => ({
  id,
  role: 'tweeter',
  position: [0, 0, 0],
  ...(pair && { pair }),
  ...(side && { side }),
});

describe('the list of speakers', () => {
  test('puts left before right, pairs in the order they came', () => {
    const groups = groupSpeakers([
      one('b-right', 'b', 'right'),
      one('a-left', 'a', 'left'),
      one('sub'),
      one('b-left', 'b', 'left'),
    ]);
    expect(groups.map((group) => group.speakers.map(({ id }) => id))).toEqual([
      ['b-left', 'b-right'],
      ['a-left'],
      ['sub'],
    ]);
    expect(groups.map((group) => group.pair)).toEqual(['b', 'a', null]);
  });

  test('a lone speaker named like a pair is not taken for it', () => {
    const groups = groupSpeakers([one('b'), one('b-left', 'b', 'left')]);
    expect(groups).toHaveLength(2);
  });
});

describe('the widest difference of an option', () => {
  const result = {
    seats: [
      { id: 'front-left', pairs: [{ difference: -283 }, { difference: 40 }] },
      { id: 'front-right', pairs: [{ difference: null }] },
    ],
  } as unknown as OptionResult;

  test('is the largest of its pairs at the seat, whatever the sign', () => {
    expect(widestDifference(result, 'front-left')).toBe(283);
  });

  test('is unknown where no pair is whole', () => {
    expect(widestDifference(result, 'front-right')).toBeNull();
    expect(widestDifference(undefined, 'front-left')).toBeNull();
  });
});
