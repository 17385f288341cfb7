import { describe, expect, test } from 'vitest';
import type { SpeakerInput } from '../../../src/geometry';
import { groupsOf } from '../../../src/workbench/answers/groups';

const one = (id: string, fields: Partial<SpeakerInput> = {}): SpeakerInput => ({
  id,
  role: 'midrange',
  ...fields,
});

describe('the speakers a sheet is about', () => {
  test('pairs stand left before right, whichever was listed first', () => {
    const groups = groupsOf([
      one('r', { pair: 'mid', side: 'right' }),
      one('sub'),
      one('l', { pair: 'mid', side: 'left' }),
    ]);
    expect(groups.map(({ id, members }) => [id, members.map((m) => m.id)])).toEqual([
      ['mid', ['l', 'r']],
      ['sub', ['sub']],
    ]);
  });

  test('half a pair stands alone under its own name', () => {
    const groups = groupsOf([one('l', { pair: 'mid', side: 'left' })]);
    expect(groups).toEqual([{ id: 'l', members: [expect.objectContaining({ id: 'l' })] }]);
  });

  test('every speaker stands in one group only, also where three claim one pair', () => {
    const three = ['a', 'b', 'c'].map((id, i) =>
      one(id, { pair: 'mid', side: i === 1 ? 'right' : 'left' }),
    );
    const ids = groupsOf(three).flatMap(({ members }) => members.map(({ id }) => id));
    expect(ids.sort()).toEqual(['a', 'b', 'c']);
  });
});
