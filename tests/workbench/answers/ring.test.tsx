import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import {
  createEvaluator,
  dimensionLine,
  type Mount,
  type RingForm,
  type RingInput,
  ringShape,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { aimSpeaker, mountSpeaker, type PlanRecipe, setRing } from '../../../src/plan/edits';
import { problemsOf } from '../../../src/store/fit-of-board';
import { createPlanStore } from '../../../src/store/plan-store';
import { ringAt, standoffFor, wedgeOf } from '../../../src/workbench/answers/ring/ring-board';
import {
  boardWords,
  flangeWords,
  ringMeasures,
  steepWords,
  thickWords,
} from '../../../src/workbench/answers/ring/ring-words';
import { SectionDrawing } from '../../../src/workbench/answers/ring/section-drawing';

const evaluate = createEvaluator();

function stageOf(...recipes: PlanRecipe[]) {
  const store = createPlanStore(demoPlan());
  for (const recipe of recipes) store.edit('change', recipe);
  const { plan } = store.getState();
  const answer = evaluate(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option] = plan.options;
  const [result] = answer.options;
  if (!option || !result) throw new Error('the demo has no option');
  return { plan, cabin: answer.cabin, option, result };
}

type Board = ReturnType<typeof stageOf>;
const speaker = (stage: Board, id: string) => {
  const found = stage.option.speakers.find((one) => one.id === id);
  if (!found) throw new Error(`there is no ${id}`);
  return found;
};

const INPUT: RingInput = {
  outer: 120,
  bore: 92,
  leastThickness: 4,
  rimRadius: 3.2,
  seat: { kind: 'sunk', recess: 106, depth: 4 },
  screws: { circle: 100, count: 4 },
};

function leaning(deg: number, standoff: number) {
  const a = (deg * Math.PI) / 180;
  const place = {
    position: [0, 0, standoff] as const,
    axis: [Math.sin(a), 0, Math.cos(a)] as const,
    normal: [0, 0, 1] as const,
    standoff,
  };
  const answer = ringShape(INPUT, place);
  if (!answer.ok) throw new Error(answer.message);
  return { place, form: answer.ring };
}

describe('a ring in words', () => {
  test('every measure to turn it by, as the closed form has it', () => {
    const { form } = leaning(20, 40);
    const told = Object.fromEntries(
      ringMeasures(INPUT, form, 'mm', 12).map(({ name, value }) => [name, value]),
    );
    // By hand: 40 / cos 20° = 42.57 in the middle, tan 20° = 0.36397 more each mm outward.
    expect(told).toMatchObject({
      'Outside diameter': '120.0 mm',
      'Recess for the flange': '106.0 mm, 4.0 mm deep',
      'Outer edge, thin side': '20.7 mm',
      'Outer edge, thick side': '64.4 mm',
      'At the bore, thin side': '25.8 mm',
      'At the bore, thick side': '59.3 mm',
      'In the middle': '42.6 mm',
      'Saw cut of the back': '20.0°',
      'Its back on the panel': '127.7 mm × 120.0 mm',
      'Hole in the panel': '97.9 mm × 92.0 mm',
      'Middle of that hole': '14.6 mm off the spot, to the thick side',
      Screws: '4 on 100.0 mm',
      // 42.57 − 4 ∓ 50 cos 45° tan 20°.
      'Ring under the screws': '25.7 mm to 51.4 mm',
    });
    expect(ringMeasures(INPUT, form, 'in', 12)[0]?.value).toBe('4.724 in');
    expect(boardWords(form, INPUT, 'mm')).toContain('Glue 4 boards of 18 mm');
    expect(boardWords(form, INPUT, 'mm')).toContain('saw its back at 20.0°');
  });

  test('a body wholly before its panel has no hole cut for it', () => {
    const { form } = leaning(20, 40);
    const told = ringMeasures(INPUT, form, 'mm', 0);
    expect(told.find(({ name }) => name === 'Hole in the panel')?.value).toBe(
      'None: the body stands wholly before the panel. Only wires and fixings go through.',
    );
    expect(told.filter(({ name }) => name.startsWith('Middle of'))).toEqual([
      { name: 'Middle of its back', value: '14.6 mm off the spot, to the thick side' },
    ]);
  });

  test('one without a wedge has one thickness and no thick side', () => {
    const { form, place } = leaning(0, 12);
    const names = ringMeasures(INPUT, form, 'mm', 12).map(({ name }) => name);
    expect(names).toContain('Thickness');
    expect(names.filter((name) => /thin|thick side/.test(name))).toEqual([]);
    expect(thickWords(form, place)).toBeNull();
    expect(boardWords(form, INPUT, 'mm')).toContain('Take one board');
  });

  test('its thick side is told by the clock, seen from the cabin', () => {
    const { form, place } = leaning(20, 40);
    // A level panel, seen from above: it leans rearward, so it is thick toward the front.
    expect(thickWords(form, place)).toBe(
      'Its thick side goes to 12 o’clock as seen from the cabin, 12 being to the front.',
    );
    const upright = { ...place, normal: [1, 0, 0] as const, axis: [0.94, 0.342, 0] as const };
    // A board that looks rearward is looked at forward: the car's left is on the left.
    expect(thickWords({ ...form, thickSide: [0, -1, 0] } as RingForm, upright)).toContain(
      'to 9 o’clock as seen from the cabin, 12 being up',
    );
  });

  test('a flange that overhangs its ring is told, with the diameter that would hold it', () => {
    const proud: RingInput = { ...INPUT, seat: { kind: 'proud' } };
    expect(flangeWords(proud, 106, 'mm')).toBeNull();
    expect(flangeWords(proud, 118, 'mm')).toBe(
      'The flange reaches 2.2 mm beyond the flat of the ring’s front all round: make it 124.4 mm outside or more.',
    );
    expect(flangeWords(INPUT, 118, 'mm')).toBeNull();
  });

  test('a steep one is said to be', () => {
    expect(steepWords(leaning(29, 60).form)).toBeNull();
    expect(steepWords(leaning(31, 60).form)).toContain('31° is over the limit of 30°');
  });
});

describe('the sheet of rings', () => {
  const toward: PlanRecipe = aimSpeaker('a', 'midbass-left', {
    kind: 'point',
    point: [700, 0, 500],
  });

  test('asks for the stand-off a pair’s rings want, and then they stand', () => {
    const before = stageOf(toward, setRing('a', 'midbass-left', {}));
    const left = speaker(before, 'midbass-left');
    expect(wedgeOf(before, left)).toBeGreaterThan(20);
    expect(ringAt(before, left)?.answer.ok).toBe(false);
    expect(problemsOf(before, left.id).map(({ kind }) => kind)).toContain('ring');
    const both = ['midbass-left', 'midbass-right'].map((id) => speaker(before, id));
    const standoff = standoffFor(before, both) as number;
    expect(standoff).toBeGreaterThan(8);
    const after = stageOf(
      toward,
      setRing('a', 'midbass-left', {}),
      mountSpeaker('a', 'midbass-left', { ...(left.mount as Mount), standoff }),
    );
    for (const { id } of both) {
      const ring = ringAt(after, speaker(after, id));
      expect(ring?.answer.ok).toBe(true);
      expect(problemsOf(after, id).map(({ kind }) => kind)).not.toContain('ring');
    }
  });

  test('the drawing tells its measures to whoever does not see it', () => {
    const { form } = leaning(20, 40);
    const drawn = renderToStaticMarkup(
      <SectionDrawing input={INPUT} form={form} unit="mm" width={500} name="left mid" />,
    );
    expect(drawn).toContain(
      'aria-label="Section of the ring of the left mid: 120.0 mm outside, bore 92.0 mm, ' +
        '20.7 mm at its thin and 64.4 mm at its thick side, wedge 20.0°"',
    );
    expect(drawn).not.toMatch(/NaN|undefined/);
    expect(drawn.match(/class="ring-dimension"/g)).toHaveLength(4);
  });
});

describe('a measure in a drawing', () => {
  test('is never written upside down', () => {
    for (let deg = 0; deg < 360; deg += 15) {
      const a = (deg * Math.PI) / 180;
      const { turn } = dimensionLine(
        [
          [0, 0],
          [200 * Math.cos(a), 200 * Math.sin(a)],
        ],
        20,
        '10 mm',
        { arrow: 5, gap: 3, letter: 6.5 },
      );
      expect(turn).toBeGreaterThanOrEqual(-90);
      expect(turn).toBeLessThanOrEqual(90);
    }
  });
});
