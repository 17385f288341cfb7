import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import {
  closedBoxLevelDb,
  comparePockets,
  createEvaluator,
  POCKET_FREQUENCIES_HZ,
  type PocketPairStudy,
  pocketsOf,
  type Vec3,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { changePocket, removePocket } from '../../../src/plan/edits';
import { createPlanStore } from '../../../src/store/plan-store';
import { withoutPocket } from '../../../src/workbench/answers/pockets/draw-pockets';
import {
  barLength,
  commonScale,
  wordFor,
} from '../../../src/workbench/answers/pockets/drawing-scale';
import { EqualVolume } from '../../../src/workbench/answers/pockets/equal-volume';
import { pocketGroups } from '../../../src/workbench/answers/pockets/pocket-groups';
import { flatWords, pairWords } from '../../../src/workbench/answers/pockets/pocket-words';

const evaluate = createEvaluator();
function onBoard(...recipes: Parameters<ReturnType<typeof createPlanStore>['edit']>[1][]) {
  const store = createPlanStore(demoPlan());
  for (const recipe of recipes) store.edit('change', recipe);
  const { plan } = store.getState();
  const answer = evaluate(plan);
  const [option] = plan.options;
  if (!answer.ok || !option) throw new Error('the demo is refused');
  return { cabin: answer.cabin, option, study: pocketsOf({ cabin: answer.cabin, option }) };
}

const pairOf = (left: number, right: number): PocketPairStudy => {
  const unit = { resonanceHz: 60, q: 0.45, vasLitres: 12 };
  const answer = comparePockets(unit, left, right, POCKET_FREQUENCIES_HZ);
  if (!answer.ok) throw new Error(answer.message);
  return { pair: 'midbass', left: 'l', right: 'r', compared: answer.pair, reasons: [] };
};

describe('two pockets in words', () => {
  test('the smaller one, its resonance against the other’s, and how much less it plays', () => {
    // α 2 and 3: fc 103.9 and 120 Hz, Qtc 0.78 and 0.90.
    const pair = pairOf(6, 4);
    const [first, second] = pairWords(pair);
    expect(first).toBe(
      'The right pocket is 2.0 litres smaller (4.0 against 6.0): its resonance is 16 Hz higher ' +
        '(120 against 104 Hz) and its Qtc 0.90 against 0.78.',
    );
    const worst = pair.compared?.worst;
    if (!worst || !pair.compared) throw new Error('no worst');
    const db =
      closedBoxLevelDb(pair.compared.right, worst.frequencyHz) -
      closedBoxLevelDb(pair.compared.left, worst.frequencyHz);
    expect(db).toBeLessThan(0);
    expect(second).toContain(
      `At ${Math.round(worst.frequencyHz)} Hz it plays ${Math.abs(db).toFixed(1)} dB less`,
    );
  });

  test('change sides when the pockets do', () => {
    const [a, b] = [pairWords(pairOf(6, 4)), pairWords(pairOf(4, 6))];
    expect(
      b.map((text) =>
        text.replaceAll('left', 'X').replaceAll('right', 'left').replaceAll('X', 'right'),
      ),
    ).toEqual(a);
  });

  test('equal ones are said to be, and what cannot be told is not', () => {
    expect(pairWords(pairOf(5, 5.01))).toEqual([
      'Both hold 5.0 litres: what is left apart is not heard.',
    ]);
    expect(pairWords({ ...pairOf(5, 6), compared: null })).toEqual([]);
  });

  test('the volume for the flattest response is said once for both', () => {
    const { study } = onBoard();
    // α = (0.7071/0.4)² − 1 = 2.125: 11 / 2.125.
    expect(flatWords(study.pockets)).toBe(
      'For Qtc 0.707, the flattest response, each would want 5.2 litres net.',
    );
    expect(flatWords([])).toBeNull();
  });
});

describe('the sheet of pockets', () => {
  test('brings the two of a pair together, left before right, and leaves a lone one alone', () => {
    const { option, study } = onBoard();
    const [group, ...more] = pocketGroups(option, study);
    expect(more).toEqual([]);
    expect(group?.title).toBe('Midbasses');
    expect(group?.pockets.map(({ name }) => name)).toEqual(['left pocket', 'right pocket']);
    const alone = onBoard(changePocket('a', 'pocket-right', { speakers: [] }));
    expect(pocketGroups(alone.option, alone.study).map(({ pockets }) => pockets.length)).toEqual([
      1, 1,
    ]);
  });

  test('offers a pocket to one of each pair that has none, midbasses first', () => {
    expect(withoutPocket(onBoard().option).map(({ id }) => id)).toEqual([
      'midrange-left',
      'tweeter-left',
    ]);
    const none = onBoard(removePocket('a', 'pocket-left'), removePocket('a', 'pocket-right'));
    expect(withoutPocket(none.option)[0]?.id).toBe('midbass-left');
  });

  test('tells the depth that makes both hold the same; as deep, they do', () => {
    const { option, cabin, study } = onBoard();
    const [group] = pocketGroups(option, study);
    if (!group) throw new Error('no pockets');
    const html = renderToStaticMarkup(
      <EqualVolume
        option={option}
        cabin={cabin}
        pockets={group.pockets}
        unit="mm"
        locked={false}
      />,
    );
    const depth = Number(
      /the right pocket would be ([\d.]+) mm deep outside, not 60\.0/.exec(html)?.[1],
    );
    // The door has 75 mm.
    expect(html).toContain(
      `That is ${(depth - 75).toFixed(1)} mm more than is free behind the panel.`,
    );
    const equal = onBoard(changePocket('a', 'pocket-right', { depth })).study.pockets;
    const apart = (equal[0]?.netLitres ?? 0) - (equal[1]?.netLitres ?? 1);
    expect(Math.abs(apart)).toBeLessThan(0.005);
  });
});

describe('the drawing’s scale', () => {
  const flat = (wide: number, high: number) => ({ size: [wide, high] }) as never;

  test('is the same for both panels and lets each into its width', () => {
    const scale = commonScale([flat(1000, 300), flat(400, 400)], 328);
    expect(scale).toBeCloseTo(0.3, 9);
    expect(400 * commonScale([flat(100, 400)], 5000)).toBeCloseTo(250, 9);
  });

  test('names where front, rear, left, right, up and down are', () => {
    expect(
      (
        [
          [-1, 0.1, 0],
          [0.9, 0, 0.3],
          [0, -1, 0.2],
          [0, 0.7, 0.2],
          [0, 0.1, 1],
        ] as Vec3[]
      ).map(wordFor),
    ).toEqual(['front', 'rear', 'left', 'right', 'up']);
  });

  test('has a bar of a round length, whole inches in inches', () => {
    expect(barLength(0.3, 'mm', 80)).toBe(200);
    expect(barLength(0.3, 'in', 80)).toBeCloseTo(8 * 25.4, 9);
  });
});
