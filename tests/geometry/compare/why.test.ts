import { describe, expect, test } from 'vitest';
import {
  type CompareRow,
  compareOptions,
  measureOptions,
  penalty,
  scoreOf,
  searchStage,
  trialsOf,
  type VerdictWeights,
  verdictsOf,
  whyOption,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { boardPlan, onBoards, stagesOf } from './boards';

const AT_SEAT = [{ id: 'seat', weight: 1 }];

describe('the demo: mids on the pillars or in the kick panels', () => {
  const measured = measureOptions(stagesOf(demoPlan()));
  const trials = trialsOf(measured, 'front-left');
  const rows = compareOptions(measured, 'a', trials);
  const why = whyOption(rows, 'b', 'a', 'front-left');
  const kinds = (list: readonly { measure: { kind: string } }[]) =>
    list.map(({ measure }) => measure.kind);

  test('what speaks for the kick panels is the difference, and against them angle and legs', () => {
    const better = why.here.better.find(({ measure }) => measure.kind === 'difference');
    expect(better?.measure.who).toEqual({ role: 'midrange', nth: 0 });
    expect(Math.abs(better?.value.value ?? 0)).toBeLessThan(Math.abs(better?.other.value ?? 0));
    expect(better?.beyond).toBe(true);
    expect(kinds(why.here.worse)).toEqual(
      expect.arrayContaining(['offAxisDeg', 'obstructionDb', 'line']),
    );
    expect(why.alike).toBe(false);
  });

  test('tweeters and midbasses, which both share, are no reason', () => {
    for (const list of [why.here.better, why.here.worse, why.here.unsure])
      for (const { measure } of list) if (measure.who) expect(measure.who.role).toBe('midrange');
  });

  test('asked the other way round, for and against change places', () => {
    const turned = whyOption(compareOptions(measured, 'b', trials), 'a', 'b', 'front-left');
    expect(kinds(turned.here.better)).toEqual(kinds(why.here.worse));
    expect(kinds(turned.here.worse)).toEqual(kinds(why.here.better));
  });

  test('the other seats are told of one by one', () => {
    expect(why.elsewhere.map(({ seat }) => seat)).toEqual([
      'front-right',
      'rear-left',
      'rear-right',
    ]);
    const [right] = why.elsewhere;
    expect(
      [...(right?.reasons.better ?? []), ...(right?.reasons.worse ?? [])].length,
    ).toBeGreaterThan(0);
  });

  test('the weightiest reason comes first', () => {
    for (const list of [why.here.better, why.here.worse]) {
      const weights = list.map(({ weight }) => weight);
      expect(weights).toEqual([...weights].sort((a, b) => b - a));
    }
  });

  test('a sum or an image at another seat is tried there only when that seat is in view', () => {
    const there = rows.find(
      ({ measure }) => measure.kind === 'imageSpreadDeg' && measure.seat === 'rear-left',
    );
    const cell = there?.cells[1];
    if (cell?.change) expect(cell.uncertainty).toHaveProperty('why');
    const here = rows.find(
      ({ measure }) => measure.kind === 'imageSpreadDeg' && measure.seat === 'front-left',
    );
    expect(here?.cells[1]?.uncertainty).toHaveProperty('standard');
  });

  test('mids that reach over the pillar and into the dash are counted, and said', () => {
    const plan = structuredClone(demoPlan());
    for (const { role, mount } of plan.options[0]?.speakers ?? [])
      if (role === 'midrange' && mount) Object.assign(mount, { v: 0.12, standoff: 30 });
    const measured = measureOptions(stagesOf(plan));
    const misfits = row(compareOptions(measured, 'a', null), 'misfits');
    expect(misfits.cells.map(({ value }) => value.value)).toEqual([2, 0]);
    expect(misfits.cells[0]?.value.problems?.[0]?.sentence).toMatch(/mm/);
    const verdicts = verdictsOf(
      measured,
      { difference: 1 },
      [{ id: 'front-left', weight: 1 }],
      null,
    );
    expect(verdicts.map(({ best }) => best)).toEqual([false, true]);
  });
});

const row = (rows: readonly CompareRow[], kind: string): CompareRow => {
  const found = rows.find(({ measure }) => measure.kind === kind);
  if (!found) throw new Error(`no row of ${kind}`);
  return found;
};

describe('the verdict', () => {
  const weights: VerdictWeights = {
    difference: 1,
    offAxisDeg: 0.5,
    obstructionDb: 1,
    firstReflectionTime: 0.2,
  };

  test('is weight × penalty over the aims and the pairs, by hand', () => {
    const [one] = measureOptions(
      stagesOf(
        boardPlan([[...onBoards('midrange', [0.9, 0.5]), ...onBoards('tweeter', [0.2, 0.9])]]),
      ),
    );
    if (!one) throw new Error('an option is wanted');
    const by = (kind: string) =>
      [...one.values]
        .filter(([id]) => id.startsWith(`${kind} seat`))
        .map(([, value]) => value.value);
    const wanted =
      by('difference').reduce<number>((sum, value) => sum + penalty('difference', value), 0) +
      0.5 * by('offAxisDeg').reduce<number>((sum, value) => sum + penalty('offAxisDeg', value), 0);
    expect(by('difference')).toHaveLength(2);
    expect(scoreOf(one, one.values, weights, AT_SEAT)).toBeCloseTo(wanted, 9);
  });

  test('gives an option the score the search gave its spots', () => {
    const plan = boardPlan([onBoards('midrange', [0.5, 0.5])]);
    const answer = searchStage(plan, {
      option: 'a',
      pairs: [{ pair: 'midrange', panels: ['board-left'], step: 100, want: weights }],
      seats: AT_SEAT,
      answers: 1,
    });
    if (!answer.ok) throw new Error(answer.error.message);
    const [found] = answer.answer.answers;
    const [spot] = found?.spots ?? [];
    if (!found || !spot) throw new Error('the search found nothing');
    const there = boardPlan([
      onBoards('midrange', [spot.u, spot.v], [spot.partner.u, spot.partner.v]),
    ]);
    const [one] = measureOptions(stagesOf(there));
    if (!one) throw new Error('an option is wanted');
    expect(scoreOf(one, one.values, weights, AT_SEAT)).toBeCloseTo(found.score, 9);
  });

  test('of an option and its copy is the same, and both are best', () => {
    const plan = boardPlan([onBoards('midrange', [0.9, 0.5]), onBoards('midrange', [0.9, 0.5])]);
    const verdicts = verdictsOf(measureOptions(stagesOf(plan)), weights, AT_SEAT, null);
    expect(verdicts.map(({ best }) => best)).toEqual([true, true]);
    expect(verdicts[0]?.score).toBe(verdicts[1]?.score);
  });

  test('does not call one better by less than it is uncertain', () => {
    const plan = boardPlan([onBoards('midrange', [0.9, 0.5]), onBoards('midrange', [0.89, 0.5])]);
    const measured = measureOptions(stagesOf(plan));
    const count = (trials: Parameters<typeof verdictsOf>[3]) =>
      verdictsOf(measured, { difference: 1 }, AT_SEAT, trials).filter(({ best }) => best).length;
    expect(count(null)).toBe(1);
    expect(count(trialsOf(measured, 'seat'))).toBe(2);
  });

  test('weighs only pairs that all options have whole: none comes first by having less', () => {
    const all = { difference: 1, offAxisDeg: 0.5, pathSpread: 1 };
    const mids = onBoards('midrange', [0.9, 0.5]);
    const highs = onBoards('tweeter', [0.2, 0.9]);
    const better = onBoards('tweeter', [0.25, 0.9]);
    const verdictsFor = (...options: Parameters<typeof boardPlan>[0]) =>
      verdictsOf(measureOptions(stagesOf(boardPlan(options))), all, AT_SEAT, null);
    const alone = verdictsFor(highs)[0]?.score;
    const less = verdictsFor([...mids, ...highs], highs);
    // Without the spread, which there is none of with one pair.
    expect(less.map(({ score }) => score)).toEqual([alone, alone]);
    expect(less.map(({ best }) => best)).toEqual([true, true]);
    expect(less.map(({ unweighed }) => unweighed)).toEqual([
      [expect.objectContaining({ role: 'midrange' })],
      [],
    ]);
    // Half a pair is none.
    const half = verdictsFor([...mids, ...highs], [...highs, mids[1] as never]);
    expect(half.map(({ score }) => score)).toEqual([alone, alone]);
    // What all have decides, whatever one has besides.
    const [more, own] = verdictsFor([...mids, ...highs], better);
    expect((more?.score ?? 0) - (own?.score ?? 0)).toBeCloseTo(
      (alone ?? 0) - (verdictsFor(better)[0]?.score ?? 0),
      9,
    );
    expect(more?.best).not.toBe(own?.best);
    // Nothing in common, no score.
    expect(verdictsFor(mids, highs).map(({ score, best }) => [score, best])).toEqual([
      [null, false],
      [null, false],
    ]);
  });

  test('without a pair there is no score, and no best', () => {
    const [left] = onBoards('midrange', [0.5, 0.5]);
    const plan = boardPlan([[{ ...left, id: 'x', pair: undefined, side: undefined } as never], []]);
    const verdicts = verdictsOf(measureOptions(stagesOf(plan)), weights, AT_SEAT, null);
    expect(verdicts.map(({ score, best }) => [score, best])).toEqual([
      [null, false],
      [null, false],
    ]);
  });
});

test('an option that does better at a kink cannot be told from luck, and is said to be unsure', () => {
  const plan = boardPlan([onBoards('midrange', [0.9, 0.5]), onBoards('midrange', [0.89, 0.5])]);
  const measured = measureOptions(stagesOf(plan));
  const why = whyOption(
    compareOptions(measured, 'a', trialsOf(measured, 'seat')),
    'b',
    'a',
    'seat',
  );
  expect(why.here.unsure.map(({ measure }) => measure.kind)).toContain('difference');
  expect(why.here.better).toEqual([]);
});

test('an option against its own copy has no reasons at all', () => {
  const speakers = onBoards('midrange', [0.9, 0.5]);
  const measured = measureOptions(stagesOf(boardPlan([speakers, structuredClone(speakers)])));
  const why = whyOption(
    compareOptions(measured, 'a', trialsOf(measured, 'seat')),
    'b',
    'a',
    'seat',
  );
  expect(why).toMatchObject({ alike: true, here: { better: [], worse: [], unsure: [] } });
});
