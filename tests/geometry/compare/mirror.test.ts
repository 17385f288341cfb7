import { expect, test } from 'vitest';
import {
  compareOptions,
  type Measure,
  measureOf,
  measureOptions,
  type PlanInput,
  trialsOf,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { mirrorSeatId, otherSide } from '../../../src/plan/mirror';
import { stagesOf } from './boards';

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

const turned = ({ kind, seat, side, ...rest }: Measure): string =>
  measureOf(kind, seat && mirrorSeatId(seat), { ...rest, ...(side && { side: otherSide(side) }) })
    .id;

test('the mirrored car gives the mirrored table', () => {
  const [left, right] = (['left', 'right'] as const).map((side) => {
    const measured = measureOptions(stagesOf(plan(side)));
    return compareOptions(measured, 'a', trialsOf(measured, `front-${side}`));
  });
  if (!left || !right) throw new Error('two tables are wanted');
  expect(left.length).toBe(right.length);
  const wrong: string[] = [];
  for (const { measure, cells, alike } of left) {
    const other = right.find((row) => row.measure.id === turned(measure));
    expect(other, measure.id).toBeDefined();
    if (other?.alike !== alike) wrong.push(`${measure.id} alike`);
    cells.forEach((cell, i) => {
      const there = other?.cells[i];
      const [p, q] = [cell.value.value, there?.value.value ?? null];
      const toSides = ['difference', 'levelDifferenceDb', 'imageDeg', 'imageOctaveDeg'];
      const sign = toSides.includes(measure.kind) ? -1 : 1;
      const even = p === null ? q === null : Math.abs(p - sign * (q ?? Number.NaN)) < 1e-6;
      if (!even) wrong.push(`${measure.id} ${i}: ${p} against ${q}`);
      if (cell.best !== there?.best) wrong.push(`${measure.id} ${i}: best`);
      if (cell.beyond !== there?.beyond) wrong.push(`${measure.id} ${i}: beyond`);
      if (cell.value.side && there?.value.side !== otherSide(cell.value.side))
        wrong.push(`${measure.id} ${i}: side`);
    });
  }
  expect(wrong).toEqual([]);
});
