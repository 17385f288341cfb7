import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { pointOnPatch } from '../../../../src/geometry';
import { mountSpeaker, renameOption, setDimension, takeSpot } from '../../../../src/plan/edits';
import { characterOf, characterSentence } from '../../../../src/workbench/answers/search/character';
import { worstOf } from '../../../../src/workbench/answers/search/found';
import { pointOf, weightiest } from '../../../../src/workbench/answers/search/front-axes';
import { sortedFront } from '../../../../src/workbench/answers/search/front-table';
import { changeText, measureText } from '../../../../src/workbench/answers/search/measure-words';
import { spotMarks } from '../../../../src/workbench/answers/search/spot-marks';
import { isStale } from '../../../../src/workbench/answers/search/stale';
import { placeSentence, spotTitle } from '../../../../src/workbench/answers/search/where-words';
import { foundWith, groundOf, proposal, spotAt } from './rig';

const ALL = ['difference', 'offAxisDeg', 'obstructionDb', 'firstReflectionTime'] as const;

describe('what each answer is good and bad at', () => {
  const near = proposal('1', { difference: 20, offAxisDeg: 40 });
  const ahead = proposal('2', { difference: 90, offAxisDeg: 28 });
  const free = proposal('3', { difference: 95, offAxisDeg: 41, obstructionDb: 0 });
  const list = [near, ahead, free];

  it('is told by name and amount, held against the one that is best there', () => {
    expect(characterSentence(near, list, ALL, 'mm')).toBe(
      'Of these: the least difference. Worse: 12° further off the axis than 2.',
    );
    expect(characterSentence(free, list, ALL, 'mm')).toBe(
      'Of these: the least obstruction. Worse: 75 mm more difference than 1.',
    );
  });

  it('calls nothing best that another equals to the last digit shown', () => {
    const twin = proposal('4', { difference: 20.4, offAxisDeg: 40 });
    expect(characterOf(near, [near, twin], ALL)).toEqual({ best: [], worst: null });
    expect(characterSentence(near, [near, twin], ALL, 'mm')).toBe('Much like the others.');
  });

  it('counts no reflection at all as the latest', () => {
    const none = proposal('5', { firstReflectionTime: null });
    const some = proposal('6', { firstReflectionTime: 2 });
    expect(characterOf(none, [none, some], ALL).best).toEqual(['firstReflectionTime']);
    expect(characterSentence(some, [none, some], ALL, 'mm')).toBe(
      'Worse: its first reflection comes after 2.00 ms, 5 has none.',
    );
  });

  it('says nothing of one that stands alone', () => {
    expect(characterOf(near, [near], ALL)).toEqual({ best: [], worst: null });
  });
});

describe('measures in words', () => {
  it('carry their units, in inches too', () => {
    expect(measureText('difference', 108.3, 'mm')).toBe('108 mm');
    expect(measureText('difference', 108.3, 'in')).toBe('4.26 in');
    expect(measureText('offAxisDeg', 21.4, 'mm')).toBe('21°');
    expect(measureText('offAxisDeg', null, 'mm')).toBe('–');
    expect(measureText('firstReflectionTime', null, 'mm')).toBe('none');
    expect(changeText('difference', 108, 509, 'mm')).toBe('−401 mm');
    expect(changeText('obstructionDb', 4.8, 0, 'mm')).toBe('+4.8 dB');
    expect(changeText('firstReflectionTime', null, 1, 'mm')).toBe('–');
  });

  it('take the worst of several pairs, none being best for a reflection and worst for an angle', () => {
    expect(
      worstOf([
        { difference: 10, offAxisDeg: 30, obstructionDb: 1, firstReflectionTime: null },
        { difference: 40, offAxisDeg: null, obstructionDb: 0, firstReflectionTime: 0.3 },
      ]),
    ).toEqual({ difference: 40, offAxisDeg: null, obstructionDb: 1, firstReflectionTime: 0.3 });
  });
});

describe('the front', () => {
  const list = [
    proposal('a1', { difference: 50, firstReflectionTime: 0.1 }),
    proposal('a2', { difference: 10, firstReflectionTime: null }),
    proposal('a3', { difference: 30, firstReflectionTime: 0.4 }),
  ];
  const keys = (sorted: readonly { key: string }[]) => sorted.map(({ key }) => key);

  it('is sorted best first by any aim, and turned round', () => {
    expect(keys(sortedFront(list, 'difference', false))).toEqual(['a2', 'a3', 'a1']);
    expect(keys(sortedFront(list, 'difference', true))).toEqual(['a1', 'a3', 'a2']);
    expect(keys(sortedFront(list, 'firstReflectionTime', false))).toEqual(['a2', 'a3', 'a1']);
  });

  it('is drawn over the two aims that weigh most', () => {
    const found = foundWith([]);
    expect(weightiest(found)).toEqual(['difference', 'obstructionDb']);
    const other = { ...found.weights, obstructionDb: 0, firstReflectionTime: 2 };
    expect(weightiest({ ...found, weights: other })).toEqual(['firstReflectionTime', 'difference']);
    const alone = { ...other, difference: 0, offAxisDeg: 0 };
    expect(weightiest({ ...found, weights: alone })).toBeNull();
    expect(pointOf(list[1] as (typeof list)[0], ['difference', 'firstReflectionTime'])).toBeNull();
    expect(pointOf(list[0] as (typeof list)[0], ['difference', 'firstReflectionTime'])).toEqual([
      50, 0.1,
    ]);
  });
});

describe('where an answer is', () => {
  const { cabin } = groundOf();

  it('is told by panel and by lengths along it', () => {
    const spot = spotAt('pillar-left');
    expect(spotTitle(spot)).toBe('A-pillars');
    expect(placeSentence(spot, cabin, 'mm')).toMatch(
      /^left A-pillar, \d+ mm along, \d+ mm across, 15 mm off it$/,
    );
    expect(placeSentence(spot, cabin, 'in')).toMatch(/ in along, .* in across, 0\.59 in off it$/);
  });

  it('is marked on the panel, left and right, the chosen one of the front among the answers', () => {
    const answers = [proposal('1'), proposal('2', {}, 'pillar-left')];
    const other = proposal('a7', {}, 'kick-left');
    const found = foundWith(answers);
    const marks = spotMarks(found, other, cabin);
    expect(marks.map(({ label, chosen }) => [label, chosen])).toEqual([
      ['1L', false],
      ['1R', false],
      ['2L', false],
      ['2R', false],
      ['a7L', true],
      ['a7R', true],
    ]);
    const pillar = cabin.panels.find(({ id }) => id === 'pillar-left');
    expect(marks[2]?.position).toEqual(pillar && pointOnPatch(pillar.patch, 0.4, 0.5));
    expect(spotMarks(found, answers[0] ?? null, cabin)).toHaveLength(4);
    // Of several pairs the chosen set alone, each mark by a name of its own.
    const two = {
      ...proposal('1'),
      spots: ['tweeter', 'midbass'].map((pair) => ({ ...spotAt('kick-left'), pair })),
    };
    const pairs = two.spots.map(({ pair }) => ({ pair, tried: 9, feasible: 9 }));
    const stage = foundWith([two, proposal('2')], { pairs });
    expect(spotMarks(stage, two, cabin).map(({ label }) => label)).toEqual([
      '1L tweeter',
      '1R tweeter',
      '1L midbass',
      '1R midbass',
    ]);
  });
});

describe('answers of an earlier plan', () => {
  const found = foundWith([proposal('1')]);
  const { plan, option } = found;

  it('still hold when an answer is taken, an option renamed or the same plan read again', () => {
    expect(isStale(found, plan)).toBe(false);
    expect(isStale(found, structuredClone(plan))).toBe(false);
    expect(isStale(found, produce(plan, renameOption(option.id, 'Other')))).toBe(false);
    const spot = found.answers[0]?.spots[0];
    if (!spot) throw new Error('no spot');
    expect(isStale(found, produce(plan, takeSpot(option.id, 'tweeter', spot, 1)))).toBe(false);
  });

  it('no longer hold when a speaker moved, the car changed or the option is gone', () => {
    const mount = { panel: 'pillar-left', u: 0.3, v: 0.3 };
    const moved = produce(plan, mountSpeaker(option.id, 'tweeter-left', mount));
    expect(isStale(found, moved)).toBe(true);
    expect(isStale(found, produce(plan, setDimension('seatHeight', 300)))).toBe(true);
    expect(isStale(found, { ...plan, options: plan.options.slice(1) })).toBe(true);
  });
});
