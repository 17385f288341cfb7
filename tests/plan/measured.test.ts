/** Measured arrivals and readings in a plan: edited, kept, refused. */
import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import type { MeasuredArrival } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import {
  addReadings,
  copyOption,
  forgetMeasured,
  keepMeasured,
  type PlanRecipe,
  removeReading,
  removeSpeaker,
} from '../../src/plan/edits';
import { formatRefusal, readPlan, writePlan } from '../../src/plan/schema';
import type { Plan, Reading } from '../../src/plan/types';
import { createPlanStore } from '../../src/store/plan-store';

const arrival = (speaker: string, time: number, more: Partial<MeasuredArrival> = {}) =>
  ({
    speaker,
    seat: 'front-left',
    at: 'head',
    time,
    sd: 0.006,
    method: 'edge',
    sampleRateHz: 48000,
    file: `${speaker}.wav`,
    ...more,
  }) as const satisfies MeasuredArrival;

const TAPE: Reading = {
  from: { kind: 'speaker', speaker: 'tweeter-left' },
  to: { kind: 'reference', reference: 'heel' },
  distance: 912,
  by: 'tape',
};
const SOUND: Reading = {
  from: { kind: 'speaker', speaker: 'tweeter-left' },
  to: { kind: 'head', seat: 'front-left' },
  distance: 934.2,
  by: 'sound',
  sd: 4.1,
};

const changed = (...recipes: PlanRecipe[]): Plan =>
  recipes.reduce((so, recipe) => produce(so, recipe), demoPlan());

describe('what was measured', () => {
  test('is kept on saving and read back as it was, without a word', () => {
    const plan = changed(
      keepMeasured('a', [arrival('tweeter-left', 10.2), arrival('tweeter-right', 11.4)]),
      addReadings('a', [TAPE, SOUND]),
    );
    const answer = readPlan(writePlan(plan));
    expect(answer).toMatchObject({ ok: true, warnings: [] });
    if (answer.ok) expect(answer.plan).toEqual(plan);
  });

  test('keeps fields of others inside it, and names them', () => {
    const plan = changed(keepMeasured('a', [arrival('tweeter-left', 10.2)]));
    const loose = JSON.parse(writePlan(plan));
    loose.options[0].measured[0].microphone = 'cardboard';
    const answer = readPlan(JSON.stringify(loose));
    if (!answer.ok) throw new Error(answer.error.message);
    expect(answer.warnings.join()).toContain('options[0].measured[0].microphone');
    expect(writePlan(answer.plan)).toContain('cardboard');
  });

  test('again at the same place replaces, elsewhere adds, and is forgotten by place', () => {
    const plan = changed(
      keepMeasured('a', [arrival('tweeter-left', 10.2)]),
      keepMeasured('a', [
        arrival('tweeter-left', 10.4),
        arrival('tweeter-left', 9, { at: 'left-ear' }),
      ]),
    );
    expect(plan.options[0]?.measured?.map(({ at, time }) => [at, time])).toEqual([
      ['head', 10.4],
      ['left-ear', 9],
    ]);
    const less = produce(plan, forgetMeasured('a', 'front-left', 'head'));
    expect(less.options[0]?.measured).toHaveLength(1);
    expect(produce(less, forgetMeasured('a', 'front-left', 'left-ear'))).toEqual(demoPlan());
  });

  test('by sound replaces the same way, by tape stands beside it; readings go one by one', () => {
    const plan = changed(
      addReadings('a', [TAPE, SOUND]),
      addReadings('a', [
        { ...SOUND, distance: 940 },
        { ...TAPE, distance: 915 },
      ]),
    );
    expect(plan.options[0]?.readings?.map(({ distance }) => distance)).toEqual([912, 940, 915]);
    const less = produce(plan, removeReading('a', 1));
    expect(less.options[0]?.readings?.map(({ by }) => by)).toEqual(['tape', 'tape']);
    expect(produce(produce(less, removeReading('a', 0)), removeReading('a', 0))).toEqual(
      demoPlan(),
    );
    expect(produce(plan, removeReading('a', 9))).toBe(plan);
  });

  test('goes with its speaker, and does not go along with a copy', () => {
    const plan = changed(
      keepMeasured('a', [arrival('tweeter-left', 10.2), arrival('midbass-left', 11)]),
      addReadings('a', [TAPE]),
    );
    const less = produce(plan, removeSpeaker('a', 'tweeter-left', false));
    expect(less.options[0]?.measured?.map(({ speaker }) => speaker)).toEqual(['midbass-left']);
    expect(less.options[0]?.readings).toBeUndefined();
    const copied = produce(plan, copyOption('a'));
    expect(copied.options[1]?.measured).toBeUndefined();
    expect(copied.options[1]?.readings).toBeUndefined();
  });

  test('is one undo step', () => {
    const store = createPlanStore(demoPlan());
    store.edit('keep', keepMeasured('a', [arrival('tweeter-left', 10.2)]));
    store.undo();
    expect(store.shown()).toEqual(demoPlan());
    store.redo();
    expect(store.shown().options[0]?.measured).toHaveLength(1);
  });

  test.each([
    [
      'a speaker that is not there',
      (o: Loose) => {
        o.measured[0].speaker = 'x';
      },
      'options[0].measured[0].speaker: there is no speaker "x" in this option',
    ],
    [
      'the same place twice',
      (o: Loose) => {
        o.measured.push(o.measured[0]);
      },
      'options[0].measured[1]: the speaker "tweeter-left" is already measured at this place, options[0].measured[0]',
    ],
    [
      'a place that is none',
      (o: Loose) => {
        o.measured[0].at = 'nose';
      },
      'options[0].measured[0].at: must be one of',
    ],
    [
      'a time that is none',
      (o: Loose) => {
        o.measured[0].time = '3';
      },
      'options[0].measured[0].time: must be a number',
    ],
    [
      'no uncertainty',
      (o: Loose) => {
        o.measured[0].sd = 0;
      },
      'options[0].measured[0].sd: must be more than 0',
    ],
    [
      'a distance of nothing',
      (o: Loose) => {
        o.readings[0].distance = 0;
      },
      'options[0].readings[0].distance: must be more than 0',
    ],
    [
      'an end that is none',
      (o: Loose) => {
        o.readings[0].to = { kind: 'door' };
      },
      'options[0].readings[0].to',
    ],
    [
      'both ends alike',
      (o: Loose) => {
        o.readings[0].to = o.readings[0].from;
      },
      'options[0].readings[0].to: must be another point',
    ],
    [
      'both ends alike but for a field nobody knows',
      (o: Loose) => {
        o.readings[0].to = { ...o.readings[0].from, note: 'twice' };
      },
      'options[0].readings[0].to: must be another point',
    ],
  ])('with %s is refused with its place', (_, change, sentence) => {
    const loose = JSON.parse(
      writePlan(
        changed(keepMeasured('a', [arrival('tweeter-left', 10.2)]), addReadings('a', [TAPE])),
      ),
    );
    change(loose.options[0]);
    const answer = readPlan(JSON.stringify(loose));
    if (answer.ok) throw new Error('expected a refusal');
    expect(formatRefusal(answer.error)).toContain(sentence);
  });

  test('at a seat or point the cabin does not have is kept: body styles change', () => {
    const plan = changed(
      keepMeasured('a', [arrival('tweeter-left', 10.2, { seat: 'rear-middle' })]),
      addReadings('a', [{ ...TAPE, to: { kind: 'reference', reference: 'hood ornament' } }]),
    );
    expect(readPlan(writePlan(plan))).toMatchObject({ ok: true, warnings: [] });
  });
});

type Loose = ReturnType<typeof JSON.parse>;
