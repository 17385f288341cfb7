import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import {
  type CompareCell as Cell,
  compareOptions,
  createEvaluator,
  type Measure,
  measureOf,
  measureOptions,
  type Reason,
  type Stage,
  trialsOf,
  type Value,
  type Why,
  whyOption,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { changeWords, sureWords } from '../../../src/workbench/answers/compare/change-words';
import {
  baselineOf,
  chosenOptions,
  rivalOf,
} from '../../../src/workbench/answers/compare/chosen-options';
import { CompareCell } from '../../../src/workbench/answers/compare/compare-cell';
import {
  measureName,
  valueNote,
  valueWords,
} from '../../../src/workbench/answers/compare/measure-words';
import {
  reasonWords,
  weightiest,
  whySentences,
} from '../../../src/workbench/answers/compare/why-words';
import { shortAngle, spreadSentences } from '../../../src/workbench/answers/stage/stage-words';

const MID = { role: 'midrange' as const, nth: 0 };
const TWEETER = { role: 'tweeter' as const, nth: 0 };
const at = (kind: Measure['kind'], of: Parameters<typeof measureOf>[2] = {}) =>
  measureOf(kind, 'front-left', of);
const DIFFERENCE = at('difference', { who: MID });

const mm = { unit: 'mm' as const, speed: 343 };
const wording = { ...mm, option: (id: string) => `“${id.toUpperCase()}”` };

const reason = (
  measure: Measure,
  value: Value,
  other: Value,
  more: Partial<Reason> = {},
): Reason => ({
  measure,
  value,
  other,
  change: (value.value ?? 0) - (other.value ?? 0),
  beyond: true,
  weight: 1,
  ...more,
});

const cell = (more: Partial<Cell>): Cell => ({
  option: 'b',
  value: { value: -298, side: 'left' },
  best: false,
  change: -133,
  against: 'better',
  uncertainty: { standard: 5 },
  beyond: true,
  ...more,
});

describe('a row and its cells', () => {
  it('is called by what a fitter would call it', () => {
    expect(measureName(DIFFERENCE)).toBe('Left and right mids apart');
    expect(measureName(at('pathSpread', { side: 'left' }))).toBe('Path spread on the left');
    expect(measureName(at('offAxisDeg', { who: { role: 'subwoofer', nth: 0, lone: true } }))).toBe(
      'Off axis, subwoofer',
    );
    expect(measureName(at('crossoverDipDb', { crossing: { below: MID, above: TWEETER } }))).toBe(
      'Deepest dip, mids to tweeters',
    );
    expect(measureName(at('difference', { who: { ...MID, nth: 1 } }))).toBe(
      'Left and right mids 2 apart',
    );
  });

  it('tells how far apart and which side is nearer, in both units', () => {
    const value = { value: -298, side: 'left' as const };
    expect(valueWords(DIFFERENCE, value, mm)).toBe('298 mm');
    expect(valueNote(DIFFERENCE, value, mm)).toBe('0.87 ms, left nearer');
    expect(valueWords(DIFFERENCE, value, { ...mm, unit: 'in' })).toBe('11.73 in');
  });

  it('tells lines, counts and images by words', () => {
    expect(valueWords(at('line', { who: MID }), { value: 2 }, mm)).toBe('blocked');
    expect(valueWords(measureOf('misfits', null), { value: 0 }, mm)).toBe('none');
    expect(valueWords(at('imageDeg'), { value: -12.4 }, mm)).toBe('12° left');
    expect(valueWords(at('imageDeg'), { value: 90, atLimit: true }, mm)).toBe('90° right or more');
    expect(
      valueWords(at('firstReflectionTime', { who: MID }), { value: null, none: true }, mm),
    ).toBe('none');
    expect(valueWords(DIFFERENCE, { value: null, reason: 'x' }, mm)).toBe('–');
  });

  it('says better or worse, and by how much', () => {
    expect(changeWords(DIFFERENCE, { change: -133, against: 'better' }, mm)).toBe(
      'better by 133 mm',
    );
    expect(changeWords(at('line', { who: MID }), { change: 2, against: 'worse' }, mm)).toBe(
      'worse',
    );
    expect(
      changeWords(
        at('firstReflectionTime', { who: MID }),
        { change: Infinity, against: 'better' },
        mm,
      ),
    ).toBe('better');
    expect(changeWords(at('imageDeg'), { change: -4, against: 'other' }, mm)).toBe(
      '4° further left',
    );
    expect(changeWords(DIFFERENCE, { change: 0.2, against: 'alike' }, mm)).toBe('alike');
  });

  it('says of a small difference that a tape cannot tell it, of a large one nothing', () => {
    expect(sureWords(cell({ beyond: false }))).toBe('within what a tape can tell');
    expect(sureWords(cell({ beyond: true }))).toBe('');
    expect(sureWords(cell({ beyond: null, uncertainty: { why: 'x' } }))).toBe(
      'how sure is not known',
    );
    expect(sureWords(cell({ beyond: null, uncertainty: null }))).toBe('');
  });

  it('marks the best by a sign, by weight and by a word, not by colour', () => {
    const html = renderToStaticMarkup(
      <table>
        <tbody>
          <tr>
            <CompareCell measure={DIFFERENCE} cell={cell({ best: true })} wording={mm} />
            <CompareCell measure={DIFFERENCE} cell={cell({})} wording={mm} />
          </tr>
        </tbody>
      </table>,
    );
    expect(html.match(/best-sign/g)).toHaveLength(1);
    expect(html.match(/data-best="true"/g)).toHaveLength(1);
    expect(html).toContain('best: ');
  });
});

describe('a reason', () => {
  const words = (...of: Parameters<typeof reason>) => reasonWords(reason(...of), mm);

  it('is told with both numbers', () => {
    expect(words(DIFFERENCE, { value: -298 }, { value: -431 })).toBe(
      'left and right mids are 298 mm apart instead of 431 mm',
    );
    expect(words(at('offAxisDeg', { who: MID }), { value: 62.4 }, { value: 25 })).toBe(
      'the mids are up to 62° off axis instead of 25°',
    );
    expect(words(at('line', { who: MID }), { value: 2 }, { value: 1 })).toBe(
      'the line from the mids is blocked instead of a near miss',
    );
    expect(
      words(at('firstReflectionTime', { who: MID }), { value: null, none: true }, { value: 0.4 }),
    ).toBe('no panel throws the mids back, where one did after 0.40 ms');
    expect(words(measureOf('misfits', null), { value: 0 }, { value: 2 })).toBe(
      'all speakers fit, where 2 do not',
    );
    expect(words(measureOf('keepClear', null), { value: 1 }, { value: 0 })).toBe(
      '1 speaker stands in places kept clear, against none',
    );
    expect(
      words(measureOf('pillarAddedDeg', null, { side: 'left' }), { value: 1.2 }, { value: 0 }),
    ).toBe('pods add 1.2° to what the left pillar hides instead of 0.0°');
  });

  it('of a difference too small for its digits is told by how much', () => {
    const same = reason(DIFFERENCE, { value: 431.4 }, { value: 430.6 }, { change: 0.8 });
    expect(reasonWords(same, mm)).toBe('left and right mids are apart by 1 mm more');
  });

  it('of each kind comes before a second of one kind', () => {
    const [a, b, c] = [
      reason(at('pathSpread', { side: 'left' }), { value: 9 }, { value: 1 }),
      reason(at('pathSpread', { side: 'right' }), { value: 8 }, { value: 1 }),
      reason(DIFFERENCE, { value: 7 }, { value: 1 }),
    ];
    expect(weightiest([a, b, c], 2)).toEqual([a, c]);
    expect(weightiest([a, b, c], 3)).toEqual([a, c, b]);
  });
});

describe('why this one', () => {
  const better = reason(DIFFERENCE, { value: -298 }, { value: -431 });
  const worse = reason(at('offAxisDeg', { who: MID }), { value: 62 }, { value: 25 });
  const why = (more: Partial<Why> = {}): Why => ({
    option: 'b',
    against: 'a',
    here: { better: [better], worse: [worse], unsure: [] },
    elsewhere: [],
    alike: false,
    ...more,
  });
  const verdict = (score: number, more = {}) => ({
    option: score < 1 ? 'b' : 'a',
    score,
    unweighed: [],
    misfits: 0,
    keepClear: 0,
    best: false,
    ...more,
  });
  const told = (of: Why, tried = true) => whySentences(of, 'front-left', null, tried, wording);

  it('says what it is better at, what worse, and that this is more than the uncertainty', () => {
    expect(told(why())).toEqual([
      'At the front left seat “B” is better than “A” in 1 thing: left and right mids are 298 mm apart instead of 431 mm.',
      'It is worse in 1 thing: the mids are up to 62° off axis instead of 25°.',
      'All of these are larger than what tape, seat and temperature leave uncertain.',
    ]);
  });

  it('does not claim to be sure before it is worked out', () => {
    expect(told(why(), false)).toContain('How sure these differences are is not worked out yet.');
  });

  it('says which reason is not known to be sure, and claims no more of the others', () => {
    const here = { better: [{ ...better, beyond: null }], worse: [worse], unsure: [] };
    const sentences = told(why({ here }));
    expect(sentences[0]).toContain('instead of 431 mm (how sure is not known).');
    expect(sentences.join(' ')).not.toContain('All of these');
  });

  it('says when nothing speaks clearly, and that what differs is within what a tape can tell', () => {
    const here = { better: [], worse: [], unsure: [better, worse] };
    expect(told(why({ here }))).toEqual([
      'At the front left seat nothing speaks clearly for “B” or for “A”.',
      '2 differences are within what a tape can tell.',
    ]);
  });

  it('says that a copy is alike, and nothing else', () => {
    expect(told(why({ alike: true }))).toEqual([
      'Nothing that is told here differs between “B” and “A”, at any seat.',
    ]);
  });

  it('counts what changes clearly at the other seats', () => {
    const elsewhere = [
      {
        seat: 'front-right',
        reasons: { better: [better], worse: [worse, { ...worse, beyond: null }], unsure: [] },
      },
      { seat: 'rear-left', reasons: { better: [], worse: [], unsure: [better] } },
    ];
    expect(told(why({ elsewhere }))).toContain(
      'Elsewhere it is better in 1 and worse in 1 at the front right seat.',
    );
    expect(told(why({ elsewhere: elsewhere.slice(1) }))).toContain(
      'At the other seats nothing changes clearly.',
    );
  });

  it('gives the verdict by weights with both scores, and what does not fit', () => {
    const last = (of: Parameters<typeof whySentences>[2]) =>
      whySentences(why(), 'front-left', of, true, wording).at(-1);
    expect(last({ own: verdict(0.82), other: verdict(1.1), sure: true })).toBe(
      'By your weights it comes first of the two, 0.82 against 1.10, where less is better.',
    );
    expect(last({ own: verdict(0.82, { misfits: 2 }), other: verdict(1.1), sure: true })).toBe(
      'By your weights it comes first of the two, 0.82 against 1.10, where less is better; but 2 speakers of “B” do not fit.',
    );
    expect(last({ own: verdict(0.82), other: verdict(1.1), sure: false })).toBe(
      'By your weights the two cannot be told apart (0.82 and 1.10).',
    );
    expect(
      last({ own: verdict(1.3, { option: 'b', keepClear: 1 }), other: verdict(1.1), sure: true }),
    ).toBe(
      'By your weights it comes second of the two, 1.30 against 1.10, where less is better; but 1 speaker of “B” stands in places kept clear.',
    );
  });

  it('says which pairs are not weighed, and that there is no verdict where none is', () => {
    const sentences = (own: object, other: object) =>
      whySentences(
        why(),
        'front-left',
        { own: verdict(0.82, own), other: verdict(1.1, other), sure: true },
        true,
        wording,
      );
    const tweeters = { role: 'tweeter', nth: 0 };
    expect(sentences({}, { unweighed: [MID, tweeters] }).at(-1)).toBe(
      'Weighed are only the pairs that every option has, so not the mids and tweeters of “A”, nor the spread.',
    );
    expect(sentences({ score: null, unweighed: [MID] }, { score: null }).at(-1)).toBe(
      'There is no verdict by your weights: no pair is in all options.',
    );
  });

  it('for the demo says the numbers the engine has', () => {
    const plan = demoPlan();
    const answer = createEvaluator()(plan);
    if (!answer.ok) throw new Error('the demo is refused');
    const stages = plan.options.map(
      (option, i): Stage => ({
        plan,
        cabin: answer.cabin,
        option,
        result: answer.options[i] as Stage['result'],
      }),
    );
    const measured = measureOptions(stages);
    const trials = trialsOf(measured, 'front-left');
    const found = whyOption(compareOptions(measured, 'a', trials), 'b', 'a', 'front-left');
    const sentences = told(found);
    expect(sentences.length).toBeGreaterThanOrEqual(3);
    expect(sentences.length).toBeLessThanOrEqual(5);
    const apart = answer.options.map((option) =>
      Math.round(
        Math.abs(option.seats[0]?.pairs.find(({ pair }) => pair === 'midrange')?.difference ?? 0),
      ),
    );
    expect(sentences[0]).toContain(
      `left and right mids are ${apart[1]} mm apart instead of ${apart[0]} mm`,
    );
  });
});

describe('which options are compared', () => {
  it('is all of them up to six, always with the one on the board', () => {
    expect(chosenOptions(['a', 'b'], null, 'a')).toEqual(['a', 'b']);
    expect(chosenOptions([...'abcdefgh'], null, 'h')).toEqual([...'abcdeh']);
    expect(chosenOptions(['a', 'b', 'c'], ['a', 'b'], 'c')).toEqual(['a', 'b', 'c']);
    expect(chosenOptions(['a', 'b', 'c'], ['a', 'c'], 'c')).toEqual(['a', 'c']);
  });

  it('falls back to all of them where those chosen are gone', () => {
    expect(chosenOptions(['a', 'b', 'c'], ['x', 'y'], 'b')).toEqual(['a', 'b', 'c']);
    expect(baselineOf(['a', 'b'], 'gone')).toBe('a');
    expect(baselineOf(['a', 'b'], 'b')).toBe('b');
  });

  it('tells the baseline itself against the best of the others', () => {
    const verdicts = [
      { option: 'a', score: 1 },
      { option: 'b', score: 3 },
      { option: 'c', score: 2 },
    ];
    expect(rivalOf('a', 'a', verdicts)).toBe('c');
    expect(rivalOf('b', 'a', verdicts)).toBe('a');
    expect(rivalOf('a', 'a', verdicts.slice(0, 1))).toBeNull();
  });
});

describe('the whole stage', () => {
  it('tells the spread of paths of each side in a sentence', () => {
    const options = [{ id: 'a', title: 'Pods', speakers: [] }];
    const row = (side: 'left' | 'right', value: number | null) => ({
      measure: at('pathSpread', { side }),
      alike: false,
      cells: [cell({ option: 'a', value: { value } })],
    });
    expect(spreadSentences(options, [row('left', 366), row('right', 248)], 'mm')).toEqual([
      'With “Pods” the paths from the speakers of one side differ by up to 366 mm on the left and 248 mm on the right.',
    ]);
    expect(spreadSentences(options, [row('left', null)], 'mm')).toEqual([
      'With “Pods” no side has two speakers whose paths could differ.',
    ]);
  });

  it('tells angles by a letter', () => {
    expect(shortAngle(-12.4)).toBe('12° L');
    expect(shortAngle(0.3)).toBe('ahead');
    expect(shortAngle(90, true)).toBe('90° R+');
  });
});
