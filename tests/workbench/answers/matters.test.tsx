import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createEvaluator, type PairSensitivity, sensitivityOf } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import type { PlanOption } from '../../../src/plan/types';
import { formatLength, formatTime } from '../../../src/plan/units';
import { CAUSES, effectsOf, largestEffect } from '../../../src/workbench/answers/matters/causes';
import { ChangeBar } from '../../../src/workbench/answers/matters/change-bar';
import { MattersTable } from '../../../src/workbench/answers/matters/matters-table';
import { mattersSentence } from '../../../src/workbench/answers/matters/matters-words';
import { wayWords } from '../../../src/workbench/answers/matters/way-words';

const change = (difference: number, differenceTime = difference / 343) =>
  ({ difference, differenceTime, sign: 1 }) as const;
const none = { alongU: null, alongV: null };

const pair = (fields: Partial<PairSensitivity>): PairSensitivity => ({
  pair: 'midrange',
  seat: 'front-left',
  moves: 'mirrored',
  ...none,
  alone: { left: none, right: none },
  seatTravel: null,
  temperature: null,
  ...fields,
});

const wording = {
  step: '10 mm',
  warmth: '10 °C',
  length: (mm: number) => formatLength(mm, 'mm'),
  time: (ms: number) => formatTime(ms, 3),
  pair: () => 'mids',
  speed: 343,
};

function stageOf(edit: (option: PlanOption) => PlanOption = (option) => option) {
  const demo = demoPlan();
  const option = edit(demo.options[0] as PlanOption);
  const plan = { ...demo, options: [option] };
  const answer = createEvaluator()(plan);
  if (!answer.ok || !answer.options[0]) throw new Error('the demo is refused');
  return { plan, cabin: answer.cabin, option, result: answer.options[0] };
}

describe('what matters most', () => {
  it('is said with the cause, the pair and how much', () => {
    const most = pair({ seatTravel: change(-8), alongU: change(3), temperature: change(0, 0.01) });
    expect(mattersSentence(most, wording)).toBe(
      '10 mm of seat travel changes the mids more than anything else: 8 mm.',
    );
  });

  it('counts temperature by time, since no path changes with it', () => {
    const warm = pair({ seatTravel: change(-4), temperature: change(0, -0.0343) });
    expect(mattersSentence(warm, wording)).toBe(
      '10 °C of temperature changes the mids more than anything else: 0.034 ms, as much as 12 mm.',
    );
  });

  it('counts one speaker off by itself, and says so when nothing is known', () => {
    const off = pair({
      seatTravel: change(1),
      alone: { left: none, right: { alongU: null, alongV: change(9) } },
    });
    expect(largestEffect(off)?.cause).toBe('right-v');
    expect(mattersSentence(off, wording)).toMatch(/^The right one 10 mm off across the panel/);
    expect(mattersSentence(pair({}), wording)).toBe('What matters to the mids cannot be told.');
  });
});

describe('the reason where there is no change', () => {
  it('is the one the engine gives for that cause, or for the whole pair', () => {
    const reasons = ['left along u: it is at the edge', 'seat travel: it does not slide'];
    const effects = effectsOf(pair({ reasons }));
    const why = (id: string) => effects.find(({ cause }) => cause === id)?.reason;
    expect(effects.map(({ cause }) => cause)).toEqual(CAUSES);
    expect(why('left-u')).toBe('it is at the edge');
    expect(why('seat')).toBe('it does not slide');
    expect(why('right-v')).toBeNull();
    const half = effectsOf(pair({ moves: null, reasons: ['the left speaker is missing'] }));
    expect(half.every(({ reason }) => reason === 'the left speaker is missing')).toBe(true);
  });

  it('is that an untied pair does not move as one', () => {
    const [both] = effectsOf(pair({ moves: 'left', alongU: change(4) }));
    expect(both).toMatchObject({ change: null, reason: 'the two do not move as mirror images' });
  });
});

describe('which way a step goes in the car', () => {
  it('is along the door for the midbass, and up its card', () => {
    const { option, cabin } = stageOf();
    const of = (id: string, along: 'u' | 'v', sign: number) =>
      wayWords(
        option.speakers.find((one) => one.id === id),
        cabin.panels,
        along,
        sign,
      );
    expect(of('midbass-left', 'u', 1)).toBe('rearward');
    expect(of('midbass-left', 'u', -1)).toBe('forward');
    expect(of('midbass-right', 'v', 1)).toBe('up');
    expect(of('tweeter-left', 'v', -1)).toBe('forward and down');
    for (const along of ['u', 'v'] as const)
      expect(of('tweeter-right', along, 1)).toBe(of('tweeter-left', along, 1));
    expect(of('nobody', 'u', 1)).toBe('');
  });
});

describe('the table of what matters', () => {
  const html = (stage: ReturnType<typeof stageOf>, unit: 'mm' | 'in' = 'mm') =>
    renderToStaticMarkup(
      <MattersTable
        pairs={sensitivityOf(stage, 'front-left')}
        stage={stage}
        unit={unit}
        step="10 mm"
        warmth="10 °C"
      />,
    );

  it('has a signed number, a bar and a way for every cause and pair of the demo', () => {
    const stage = stageOf();
    const table = html(stage);
    const pairs = sensitivityOf(stage, 'front-left');
    expect(table.match(/class="change-bar"/g)).toHaveLength(CAUSES.length * pairs.length);
    const seat = pairs[0]?.seatTravel;
    expect(seat && table).toContain(`−${Math.abs(seat?.difference ?? 0).toFixed(1)} mm`);
    expect(table).toMatch(/−\d+ µs/);
    expect(table).not.toMatch(/NaN|-\d/);
    expect(html(stage, 'in')).toMatch(/[+−]0\.\d\d in/);
  });

  it('shows a dash with its reason where the pair has one side only', () => {
    const table = html(
      stageOf((option) => ({
        ...option,
        speakers: option.speakers.filter(({ id }) => id !== 'midrange-right'),
      })),
    );
    expect(table.match(/–<span class="matters-way">/g)).toHaveLength(CAUSES.length);
    expect(table).toContain('The right speaker of the pair mids is missing.');
  });
});

describe('a bar', () => {
  it('tells its sign by side and filling, and its length by the share', () => {
    const bar = (share: number) => renderToStaticMarkup(<ChangeBar share={share} />);
    expect(bar(1)).toContain('class="change-more" x="38" y="1.5" width="37"');
    expect(bar(-0.5)).toContain('class="change-less" x="19.5" y="1.5" width="18.5"');
  });
});
