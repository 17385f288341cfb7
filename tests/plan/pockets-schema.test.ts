/** Pockets and small signals in a plan file: read, kept, refused. */
import { describe, expect, test } from 'vitest';
import { planPocket } from '../../src/geometry';
import { formatRefusal, readPlan, writePlan } from '../../src/plan/schema';
import { cabinOf } from '../geometry/fit/boards';
import { smallPlan } from '../store/fixtures';

type Loose = ReturnType<typeof JSON.parse>;

const POCKET = {
  id: 'pocket-left',
  panel: 'board-left',
  outline: [
    [0.1, 0.4],
    [0.5, 0.4],
    [0.5, 0.8],
    [0.1, 0.8],
  ],
  depth: 120,
  lies: 'before',
  wall: 6,
  speakers: ['midrange-left'],
};

const withPocket = (change: (plan: Loose) => void = () => undefined): string => {
  const plan: Loose = structuredClone(smallPlan());
  plan.options[0].speakers[0].smallSignal = { resonanceHz: 62, q: 0.42, vasLitres: 13.5 };
  plan.options[0].pockets = [structuredClone(POCKET)];
  change(plan);
  return JSON.stringify(plan);
};

const refusal = (change: (plan: Loose) => void): string => {
  const answer = readPlan(withPocket(change));
  if (answer.ok) throw new Error('expected a refusal');
  return formatRefusal(answer.error);
};

describe('a plan with a pocket', () => {
  test('is read and written again as it was, without a word', () => {
    const answer = readPlan(withPocket());
    expect(answer).toMatchObject({ ok: true, warnings: [] });
    if (!answer.ok) return;
    expect(answer.plan.options[0]?.pockets).toEqual([POCKET]);
    expect(answer.plan.options[0]?.speakers[0]?.smallSignal).toEqual({
      resonanceHz: 62,
      q: 0.42,
      vasLitres: 13.5,
    });
    const again = readPlan(writePlan(answer.plan));
    expect(again.ok && again.plan).toEqual(answer.plan);
    expect(again.ok && writePlan(again.plan)).toBe(writePlan(answer.plan));
  });

  test('may leave out side, walls and speakers, and keeps fields it does not know', () => {
    const answer = readPlan(
      withPocket((plan) => {
        const { lies: _, wall: __, speakers: ___, ...rest } = POCKET;
        plan.options[0].pockets = [{ ...rest, filling: 'wool' }];
      }),
    );
    expect(answer).toMatchObject({ ok: true });
    if (!answer.ok) return;
    expect(answer.warnings.join()).toContain('options[0].pockets[0].filling');
    expect(JSON.parse(writePlan(answer.plan)).options[0].pockets[0].filling).toBe('wool');
  });

  test('on a panel the cabin does not have is kept, and the engine says so', () => {
    const answer = readPlan(
      withPocket((plan) => {
        plan.options[0].pockets[0].panel = 'kick-left';
      }),
    );
    if (!answer.ok) throw new Error(answer.error.message);
    const [option] = answer.plan.options;
    const pocket = option?.pockets?.[0];
    if (!option || !pocket) throw new Error('the pocket is gone');
    expect(planPocket({ cabin: cabinOf(answer.plan), option }, pocket)).toEqual({
      ok: false,
      message: 'there is no panel "kick-left" in this cabin',
    });
  });
});

describe('faults 5 and 6: a pocket that makes no sense', () => {
  const here = 'options[0].pockets[0]';
  test.each<[string, (pocket: Loose, plan: Loose) => void]>([
    [`${here}.depth: must be more than 0 and at most 2000, got -3`, (p) => (p.depth = -3)],
    [`${here}.depth: must be a number, got the text "120"`, (p) => (p.depth = '120')],
    [`${here}.depth: must be a number, got null`, (p) => (p.depth = Number.NaN)],
    [`${here}.wall: must be between 0 and 200, got 1e+308`, (p) => (p.wall = 1e308)],
    [
      `${here}.lies: must be one of "behind", "before", got the text "under"`,
      (p) => (p.lies = 'under'),
    ],
    [`${here}.outline: must have three corners or more`, (p) => p.outline.splice(2)],
    [`${here}.outline[1][0]: must be between 0 and 1, got 1.4`, (p) => (p.outline[1][0] = 1.4)],
    [`${here}.outline[0][2]: must be two numbers [u, v], got 0`, (p) => p.outline[0].push(0)],
    [
      `${here}.outline: must not cross itself`,
      (p) => p.outline.reverse() && p.outline.splice(0, 2, p.outline[1], p.outline[0]),
    ],
    [
      `${here}.outline: must have at most 64 corners`,
      (p) =>
        (p.outline = Array.from({ length: 65 }, (_, i) => [
          0.5 + 0.4 * Math.cos(i / 11),
          0.5 + 0.4 * Math.sin(i / 11),
        ])),
    ],
    [`${here}.id: must not be empty`, (p) => (p.id = '')],
    [
      `${here}.speakers[1]: there is no speaker "tweeter-left" in this option`,
      (p) => p.speakers.push('tweeter-left'),
    ],
    [
      'options[0].pockets[1].id: the name "pocket-left" is already used by options[0].pockets[0]',
      (_, plan) => plan.options[0].pockets.push({ ...POCKET, speakers: [] }),
    ],
    [
      'options[0].pockets[1].speakers[0]: the speaker "midrange-left" already has a pocket, options[0].pockets[0].speakers[0]',
      (_, plan) => plan.options[0].pockets.push({ ...POCKET, id: 'other' }),
    ],
    [
      'options[0].speakers[0].smallSignal.q: must be more than 0 and at most 1000, got 0',
      (_, plan) => (plan.options[0].speakers[0].smallSignal.q = 0),
    ],
    [
      'options[0].speakers[0].smallSignal.vasLitres: must be given',
      (_, plan) => delete plan.options[0].speakers[0].smallSignal.vasLitres,
    ],
  ])('%s', (sentence, change) => {
    expect(refusal((plan) => change(plan.options[0].pockets[0], plan))).toBe(sentence);
  });
});
