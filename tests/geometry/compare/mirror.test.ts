import { expect, test } from 'vitest';
import {
  type CompareRow,
  compareOptions,
  type Measure,
  measureOf,
  measureOptions,
  type PlanInput,
  trialsOf,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { mirrorSeatId, otherSide } from '../../../src/plan/mirror';
import { boardPlan, onBoards, type Spot, stagesOf } from './boards';

/** Mids on pillars and dash: away from the pedals, whose order no mirror changes. */
function plan(wheelSide: 'left' | 'right'): PlanInput {
  const demo = demoPlan();
  const [a] = demo.options;
  if (!a) throw new Error('the demo has an option');
  const onDash = a.speakers.map((speaker) =>
    speaker.role === 'midrange'
      ? { ...speaker, mount: { panel: `dash-top-${speaker.side}`, u: 0.3, v: 0.5, standoff: 20 } }
      : speaker,
  );
  return {
    ...demo,
    cabin: { ...demo.cabin, wheelSide },
    alignment: { sampleRateHz: 48000, seat: `front-${wheelSide}` },
    options: [a, { ...a, id: 'b', speakers: onDash }],
  };
}

const turned = ({ id: _, kind, seat, side, ...rest }: Measure): string =>
  measureOf(kind, seat && mirrorSeatId(seat), { ...rest, ...(side && { side: otherSide(side) }) })
    .id;

/** Tells every difference between a table and its mirror image. */
function expectMirrored(left: readonly CompareRow[], right: readonly CompareRow[]): void {
  expect(left.length).toBe(right.length);
  const wrong: string[] = [];
  for (const { measure, cells, alike } of left) {
    const other = right.find((row) => row.measure.id === turned(measure));
    expect(other, measure.id).toBeDefined();
    if (other?.alike !== alike) wrong.push(`${measure.id} alike`);
    cells.forEach((cell, i) => {
      const there = other?.cells[i];
      const [p, q] = [cell.value.value, there?.value.value ?? null];
      const sign = TO_SIDES.includes(measure.kind) ? -1 : 1;
      const even = p === null ? q === null : Math.abs(p - sign * (q ?? Number.NaN)) < 1e-6;
      if (!even) wrong.push(`${measure.id} ${i}: ${p} against ${q}`);
      if (cell.best !== there?.best) wrong.push(`${measure.id} ${i}: best`);
      if (cell.beyond !== there?.beyond) wrong.push(`${measure.id} ${i}: beyond`);
      if (cell.value.side && there?.value.side !== otherSide(cell.value.side))
        wrong.push(`${measure.id} ${i}: side`);
    });
  }
  expect(wrong).toEqual([]);
}

const TO_SIDES: readonly Measure['kind'][] = [
  'difference',
  'levelDifferenceDb',
  'imageDeg',
  'imageOctaveDeg',
];

test('the mirrored car gives the mirrored table', () => {
  const [left, right] = (['left', 'right'] as const).map((side) =>
    compareOptions(measureOptions(stagesOf(plan(side))), 'a', null),
  );
  expectMirrored(left ?? [], right ?? []);
});

test('and is as sure of it', () => {
  const A: Spot = [0.9, 0.5];
  const B: Spot = [0.2, 0.9];
  const C: Spot = [0.6, 0.2];
  const tables = ([-1, 1] as const).map((side) => {
    const turn = <T>(left: T, right: T): [T, T] => (side < 0 ? [left, right] : [right, left]);
    const options = [
      [...onBoards('midrange', ...turn(A, C)), ...onBoards('tweeter', ...turn(B, B))],
      [...onBoards('midrange', ...turn(B, A)), ...onBoards('tweeter', ...turn(C, A))],
    ].map((speakers) =>
      speakers.map((one) => ({ ...one, bandHz: [300, 5000] as const, diaphragm: 58 })),
    );
    const measured = measureOptions(
      stagesOf(boardPlan(options, { seats: [{ id: 'seat', head: [1500, side * 370, 1000] }] })),
    );
    return compareOptions(measured, 'a', trialsOf(measured, 'seat'));
  });
  const sure = (rows: readonly CompareRow[]) =>
    rows.filter(({ cells }) => cells.some(({ beyond }) => beyond)).length;
  expect(sure(tables[0] ?? [])).toBeGreaterThan(5);
  expectMirrored(tables[0] ?? [], tables[1] ?? []);
});
