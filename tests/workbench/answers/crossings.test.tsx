import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createEvaluator, type Stage, sumsAt } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { setCrossover } from '../../../src/plan/edits';
import type { Plan, PlanOption } from '../../../src/plan/types';
import { formatNumber } from '../../../src/plan/units';
import { createPlanStore } from '../../../src/store/plan-store';
import { freeHandOvers } from '../../../src/workbench/answers/crossings/add-crossing';
import { CrossingFields } from '../../../src/workbench/answers/crossings/crossing-fields';
import {
  type CrossingResult,
  frequencyList,
  nullWords,
  orderIn,
  ordersOf,
  polesWords,
  sumWords,
} from '../../../src/workbench/answers/crossings/crossing-words';
import { sumSeries } from '../../../src/workbench/answers/crossings/sum-chart';
import { SumsTable } from '../../../src/workbench/answers/crossings/sums-table';

const result = (deviationDb: number, nulls: number[]): CrossingResult => ({
  atCrossover: {
    frequencyHz: 3200,
    deviationDb,
    lowDb: -6,
    highDb: -6,
    sumDb: deviationDb,
    idealDb: 0,
    phaseDeg: 0,
  },
  nulls: nulls.map((frequencyHz) => ({ frequencyHz, deviationDb: -20 })),
  curve: [],
});

function stageOf(change: (option: PlanOption) => PlanOption = (option) => option): {
  stage: Stage;
  option: PlanOption;
} {
  const demo = demoPlan();
  const [first] = demo.options;
  if (!first) throw new Error('the demo has no option');
  const option = change(first);
  const plan: Plan = { ...demo, options: [option] };
  const answer = createEvaluator()(plan);
  if (!answer.ok || !answer.options[0]) throw new Error('the demo is refused');
  return { stage: { plan, cabin: answer.cabin, option, result: answer.options[0] }, option };
}

describe('the sum of a hand-over in words', () => {
  it('tells how far it is from ideal at the crossover, and where it cancels', () => {
    expect(sumWords(result(-0.42, [2100]))).toBe('−0.4 dB from ideal at 3.2 kHz; null at 2.1 kHz');
    expect(sumWords(result(2.96, []))).toBe('+3.0 dB from ideal at 3.2 kHz; no null');
    expect(sumWords(result(-0.04, []))).toBe('Ideal at 3.2 kHz; no null');
  });

  it('names a few nulls, and of a comb of them only the ends', () => {
    expect(nullWords([900, 2700])).toBe('nulls at 900 Hz and 2.7 kHz');
    expect(frequencyList([900, 1800, 2700])).toBe('900 Hz, 1.8 kHz and 2.7 kHz');
    expect(nullWords([500, 1500, 2500, 3500, 4500])).toBe(
      'nulls at 5 places from 500 Hz to 4.5 kHz',
    );
  });

  it('says whose poles are swapped only where they differ', () => {
    const mid = { name: 'mid', swapped: false };
    const tweeter = { name: 'tweeter', swapped: true };
    expect(polesWords(mid, tweeter)).toBe('mid as it is, tweeter swapped');
    expect(polesWords(mid, mid)).toBe('both as they are');
    expect(polesWords(tweeter, tweeter)).toBe('both swapped');
  });
});

describe('the fields of a crossover', () => {
  it('offer Linkwitz-Riley in even orders, and go to the next one up from an odd one', () => {
    expect(ordersOf('linkwitz-riley')).toEqual([2, 4, 6, 8]);
    expect(ordersOf('butterworth')).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(orderIn('linkwitz-riley', 3)).toBe(4);
    expect(orderIn('linkwitz-riley', 7)).toBe(8);
    expect(orderIn('butterworth', 3)).toBe(3);
  });

  it('say when it is proposed, and lead back to the proposal when it is not', () => {
    const { stage, option } = stageOf();
    const [, listed] = sumsAt(stage, 'front-left').filter(({ side }) => side === 'left');
    if (!listed) throw new Error('the demo has no second hand-over');
    expect(listed.crossing.proposed).toBe(false);
    const fields = (of: PlanOption, crossing = listed.crossing) =>
      renderToStaticMarkup(
        <CrossingFields option={of} crossing={crossing} name="mids to tweeters" />,
      );
    expect(fields(option)).toContain('Use the proposed one again');
    expect(fields(option)).toContain('Linkwitz-Riley, order 4, at 2.5 kHz');
    const proposed = { ...listed.crossing, proposed: true };
    expect(fields(option, proposed)).toContain('Proposed, where their bands meet.');
    const bandless = option.speakers.map(({ bandHz: _, ...speaker }) => speaker);
    const out = fields({ ...option, speakers: bandless });
    expect(out).toContain('Take it out');
    expect(out).toContain('none is proposed');
  });

  it('change the plan as one step that can be undone', () => {
    const store = createPlanStore(demoPlan());
    const before = store.getState().plan;
    const fields = { family: 'butterworth', order: 3, frequencyHz: 3000 } as const;
    store.edit('change', setCrossover('a', 'midrange', 'tweeter', fields));
    const changed = store.getState().plan.options[0]?.crossovers;
    expect(changed?.find(({ above }) => above === 'tweeter')).toMatchObject(fields);
    store.undo();
    expect(store.getState().plan).toEqual(before);
  });
});

describe('hand-overs that could be added', () => {
  it('are those of pairs that do not hand over to each other yet, the lower pair first', () => {
    const { option } = stageOf();
    expect(freeHandOvers(option).map(({ key }) => key)).toEqual(['midbass tweeter']);
    // √(300 Hz · 2500 Hz), between the ends of their bands.
    expect(freeHandOvers(option)[0]?.frequencyHz).toBe(866);
  });
});

describe('the table of all hand-overs', () => {
  it('has the numbers of the study for both sides, and where the filter comes from', () => {
    const { stage, option } = stageOf();
    const sums = sumsAt(stage, 'front-right');
    const html = renderToStaticMarkup(
      <SumsTable option={option} sums={sums} nameOf={() => 'a to b'} />,
    );
    expect(sums).toHaveLength(4);
    for (const { result: sum } of sums)
      expect(html).toContain(
        `<td class="strong">${formatNumber(sum?.atCrossover.deviationDb, 1)}</td>`,
      );
    expect(html).toContain('Linkwitz-Riley, order 4, at 300 Hz, listed');
    expect(html.match(/rowSpan="2"/gi)).toHaveLength(2);
  });

  it('shows a dash and the reason where one side has no speaker', () => {
    const { stage, option } = stageOf((whole) => ({
      ...whole,
      speakers: whole.speakers.filter(({ id }) => id !== 'tweeter-right'),
    }));
    const html = renderToStaticMarkup(
      <SumsTable option={option} sums={sumsAt(stage, 'front-left')} nameOf={() => 'a to b'} />,
    );
    expect(html).toContain('<td class="strong">–</td>');
    expect(html).toContain('The right speaker of the pair tweeters is missing.');
  });
});

describe('the curve of a sum', () => {
  const { stage } = stageOf();
  const sums = sumsAt(stage, 'front-right').filter(
    ({ crossing }) => crossing.crossover.above === 'tweeter',
  );

  it('has both sides, a dashed ideal, and a mark at the crossover and at every null', () => {
    const { series, marks, range } = sumSeries(sums, 2500, 'against');
    expect(series.map(({ label, dash }) => [label, dash ?? false])).toEqual([
      ['left', false],
      ['right', false],
      ['ideal', true],
    ]);
    const nulls = sums.flatMap(({ result: sum }) => sum?.nulls ?? []);
    expect(nulls.length).toBeGreaterThan(0);
    expect(marks.map(({ x }) => x)).toEqual([2500, ...nulls.map(({ frequencyHz }) => frequencyHz)]);
    const drawn = series.flatMap(({ ys }) => ys.map(Number));
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(range[0]);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(range[1]);
  });

  it('as levels has each side with the ideal it falls short of', () => {
    const { series } = sumSeries(sums, 2500, 'level');
    expect(series.map(({ label }) => label)).toEqual([
      'left',
      'left ideal',
      'right',
      'right ideal',
    ]);
    const [sum, ideal] = series;
    const middle = sum?.xs.findIndex((hz) => hz >= 2500) ?? -1;
    const short = (sum?.ys[middle] ?? 0) - (ideal?.ys[middle] ?? 0);
    const told = sums[0]?.result?.curve[middle]?.deviationDb ?? 0;
    expect(Math.abs(short - told)).toBeLessThan(1e-9);
  });

  it('is none where neither side has a sum', () => {
    const none = sums.map((sum) => ({ ...sum, result: null }));
    expect(sumSeries(none, 2500, 'against').series).toEqual([]);
    expect(sumSeries(none, 2500, 'level').series).toEqual([]);
  });
});
