import { describe, expect, it } from 'vitest';
import { type FoundSpot, searchSpots } from '../../../../src/geometry';
import {
  countSentence,
  tallyLines,
  togetherSentence,
  whatWouldHaveToGive,
} from '../../../../src/workbench/answers/search/outcome-words';
import { reasonOf, tallyOf } from '../../../../src/workbench/answers/search/tally';
import { foundWith, groundOf, proposal, spotAt } from './rig';

const refused = (why: string[], offAxisDeg = 30): FoundSpot => ({
  ...spotAt('dash-top-left', { offAxisDeg }),
  feasible: false,
  why,
});
const ANGLE = 'left: 62.1° off axis at front-left, more than 40°';
const DEEP = 'left: 4 mm too deep for the left A-pillar';
const ZONE =
  'right: reaches 12 mm along its axis into the place kept clear for the right demister: not here';
const LINE = 'left: the steering wheel stands between it and front-left';

const answerOf = (all: FoundSpot[]) => ({
  tried: all.length,
  feasible: all.filter(({ feasible }) => feasible).length,
  front: [],
  answers: [],
  all,
});

describe('why spots are not allowed', () => {
  it('is counted by what rules them out, and by what alone does', () => {
    const tally = tallyOf(
      answerOf([
        spotAt('dash-top-left'),
        refused([ANGLE, DEEP]),
        refused([ANGLE], 62.1),
        refused([ANGLE], 44.2),
        refused([ZONE]),
        refused([LINE]),
      ]),
    );
    expect(tally).toMatchObject({ tried: 6, feasible: 1, leastAngleDeg: 44.2 });
    expect(tally.by).toEqual({ keepClear: 1, fit: 1, free: 1, angle: 3, view: 0 });
    expect(tally.alone).toEqual({ keepClear: 1, fit: 0, free: 1, angle: 2, view: 0 });
    expect(tallyLines(tally)[0]?.text).toBe(
      '3 because a listener is too far off the axis, 2 of them for nothing else',
    );
  });

  it('says what would have to give, and never that a keep-clear zone would', () => {
    const give = (...why: FoundSpot[]) => whatWouldHaveToGive(tallyOf(answerOf(why)));
    expect(give(refused([ANGLE], 44.2), refused([LINE]))).toBe(
      'Allow 45° off the axis, or aim otherwise, and the first spot comes free.',
    );
    expect(give(refused([LINE]), refused([LINE]))).toMatch(
      /^Give up the free line and 2 spots are allowed/,
    );
    expect(give(refused([ZONE]))).toMatch(
      /^One spot is ruled out by keep-clear zones alone, and those are never given up/,
    );
    expect(give(refused([ZONE, DEEP]))).toMatch(/^Each spot is ruled out by more than one thing/);
    expect(give(refused([DEEP]))).toMatch(/^One spot is only too tight/);
  });

  it('knows every sentence the engine has', () => {
    const { plan } = groundOf();
    const found = searchSpots(plan, {
      option: 'a',
      pair: 'midrange',
      step: 120,
      require: { fits: true, free: true, maxOffAxisDeg: 15 },
      want: { difference: 1 },
      answers: 0,
      all: true,
    });
    if (!found.ok) throw new Error(found.error.message);
    const { all = [] } = found.answer;
    const sentences = all.flatMap(({ why }) => why);
    expect(sentences.length).toBeGreaterThan(100);
    for (const sentence of sentences) {
      const reason = reasonOf(sentence);
      expect(reason === 'keepClear', sentence).toBe(/: not here$/.test(sentence));
      expect(reason === 'angle', sentence).toBe(/°/.test(sentence));
      expect(reason === 'free', sentence).toBe(/between it and front-/.test(sentence));
    }
    const tally = tallyOf(found.answer);
    expect(tally.feasible + all.filter(({ feasible }) => !feasible).length).toBe(tally.tried);
    expect(tally.by.angle).toBe(
      all.filter(({ measures }) => (measures.offAxisDeg ?? 180) > 15).length,
    );
  });

  it('counts in a sentence, for one pair and for several', () => {
    const name = (pair: string) => `${pair}s`;
    expect(countSentence(foundWith([]), name)).toBe('100 spots tried, 40 allowed.');
    const pairs = [
      { pair: 'tweeter', tried: 100, feasible: 40 },
      { pair: 'midbass', tried: 50, feasible: 5 },
    ];
    expect(countSentence(foundWith([], { pairs, tried: 200, feasible: 200 }), name)).toBe(
      'Spots tried: 100 for the tweeters, 40 allowed; 50 for the midbasss, 5 allowed. ' +
        '200 combinations of the allowed ones.',
    );
  });

  it('says why allowed spots come to no answer, and nothing where they do', () => {
    const pairs = [
      { pair: 'tweeter', tried: 100, feasible: 40 },
      { pair: 'midbass', tried: 50, feasible: 5 },
    ];
    const none = foundWith([], { pairs, tried: 200, feasible: 200, complete: true });
    expect(togetherSentence(none)).toContain('In none of them can all stand together');
    expect(togetherSentence({ ...none, complete: false })).toBe('');
    expect(togetherSentence({ ...none, feasible: 0 })).toBe('');
    expect(togetherSentence({ ...none, pairs: pairs.slice(1) })).toBe('');
    expect(togetherSentence({ ...none, answers: [proposal('1', {})] })).toBe('');
  });
});
