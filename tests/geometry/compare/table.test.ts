import { describe, expect, test } from 'vitest';
import {
  type CompareRow,
  compareOptions,
  KINDS,
  measureOf,
  measureOptions,
  type PlanInput,
  type Trials,
  trialsOf,
} from '../../../src/geometry';
import { distance } from '../../../src/geometry/vector';
import { ASIDE } from '../study/stages';
import { boardPlan, onBoards, pointOn, stagesOf } from './boards';

function rowsOf(plan: PlanInput, baseline = 'a', trials: Trials | null = null): CompareRow[] {
  return compareOptions(measureOptions(stagesOf(plan)), baseline, trials);
}

const MID = { role: 'midrange' as const, nth: 0 };
const TWEETER = { role: 'tweeter' as const, nth: 0 };

function row(rows: readonly CompareRow[], ...of: Parameters<typeof measureOf>): CompareRow {
  const { id } = measureOf(...of);
  const found = rows.find(({ measure }) => measure.id === id);
  if (!found) throw new Error(`no row ${id} among ${rows.map((one) => one.measure.id).join(', ')}`);
  return found;
}

const near = [0.9, 0.5] as const;
const far = [0.2, 0.9] as const;
const TWO = boardPlan([onBoards('midrange', near), onBoards('midrange', far)]);

describe('two options on two boards, by hand', () => {
  const rows = rowsOf(TWO);
  const apart = (spot: typeof near | typeof far) =>
    distance(pointOn(-1, spot), ASIDE) - distance(pointOn(1, spot), ASIDE);

  test('the difference of each, and that nearer to nothing is better', () => {
    const { cells, alike } = row(rows, 'difference', 'seat', { who: MID });
    expect(cells[0]?.value.value).toBeCloseTo(apart(near), 6);
    expect(cells[1]?.value.value).toBeCloseTo(apart(far), 6);
    expect(Math.abs(apart(near))).toBeLessThan(Math.abs(apart(far)));
    expect(cells[1]?.change).toBeCloseTo(Math.abs(apart(far)) - Math.abs(apart(near)), 6);
    expect(cells.map(({ best }) => best)).toEqual([true, false]);
    expect(cells.map(({ against }) => against)).toEqual(['baseline', 'worse']);
    expect(cells[0]?.value.side).toBe('left');
    expect(alike).toBe(false);
  });

  test('the larger of the two angles, and the side it is on', () => {
    const { cells } = row(rows, 'offAxisDeg', 'seat', { who: MID });
    const angle = (side: -1 | 1) => {
      const [x, y, z] = pointOn(side, near);
      const [dx, dy, dz] = [ASIDE[0] - x, ASIDE[1] - y, ASIDE[2] - z];
      return (Math.acos(dx / Math.sqrt(dx * dx + dy * dy + dz * dz)) * 180) / Math.PI;
    };
    expect(cells[0]?.value.value).toBeCloseTo(Math.max(angle(-1), angle(1)), 6);
    expect(cells[0]?.value.side).toBe('right');
  });

  test('a line that is free in both is alike, and none is best', () => {
    const { cells, alike } = row(rows, 'line', 'seat', { who: MID });
    expect(cells.map(({ value }) => value.value)).toEqual([0, 0]);
    expect(alike).toBe(true);
    expect(cells.some(({ best }) => best)).toBe(false);
  });

  test('nothing throws the sound back: no reflection in either, and that is alike', () => {
    const bare = rowsOf(boardPlan([onBoards('midrange', near), onBoards('midrange', far)]));
    const { cells, alike } = row(bare, 'firstReflectionTime', 'seat', { who: MID });
    expect(cells.map(({ value }) => value)).toEqual([
      { value: null, none: true },
      { value: null, none: true },
    ]);
    expect(alike).toBe(true);
  });
});

test('how far paths of one side differ is the longest less the shortest of that side', () => {
  const plan = boardPlan([
    [...onBoards('midrange', near), ...onBoards('tweeter', far)],
    onBoards('midrange', near),
  ]);
  const rows = rowsOf(plan);
  const { cells } = row(rows, 'pathSpread', 'seat', { side: 'right' });
  const path = (spot: typeof near | typeof far) => distance(pointOn(1, spot), ASIDE);
  expect(cells[0]?.value.value).toBeCloseTo(Math.abs(path(near) - path(far)), 6);
  expect(cells[1]?.value).toEqual({
    value: null,
    reason: 'fewer than two speakers stand on the right',
  });
  expect(cells[1]?.against).toBe('unknown');
});

test('a pair that only one option has is told of there, with a reason in the other', () => {
  const plan = boardPlan([
    onBoards('midrange', near),
    [...onBoards('midrange', near), ...onBoards('tweeter', far)],
  ]);
  const { cells } = row(rowsOf(plan), 'difference', 'seat', { who: TWEETER });
  expect(cells[0]?.value).toEqual({ value: null, reason: 'this option does not have it' });
  expect(cells[1]?.value.value).not.toBeNull();
  expect(cells.some(({ best }) => best)).toBe(false);
});

test('a pair whose right speaker is missing has a reason in place of a difference', () => {
  const [left] = onBoards('midrange', near);
  if (!left) throw new Error('no left speaker');
  const { cells } = row(
    rowsOf(boardPlan([onBoards('midrange', near), [left]])),
    'difference',
    'seat',
    { who: MID },
  );
  expect(cells[1]?.value.value).toBeNull();
  expect(cells[1]?.value.reason).toMatch(/right speaker of the pair "midrange" is missing/);
});

test('the same pair by another id in another option is still the same pair', () => {
  const renamed = onBoards('midrange', far).map((one) => ({
    ...one,
    id: `x-${one.id}`,
    pair: 'some-other-name',
  }));
  const { cells } = row(
    rowsOf(boardPlan([onBoards('midrange', near), renamed])),
    'difference',
    'seat',
    {
      who: MID,
    },
  );
  expect(cells.every(({ value }) => value.value !== null)).toBe(true);
});

test('an option against its own copy: nothing differs, nothing is best, nothing is uncertain', () => {
  const speakers = [...onBoards('midrange', near), ...onBoards('tweeter', far)];
  const plan = boardPlan([speakers, structuredClone(speakers)]);
  const measured = measureOptions(stagesOf(plan));
  const rows = compareOptions(measured, 'a', trialsOf(measured, 'seat'));
  expect(rows.length).toBeGreaterThan(15);
  for (const { alike, cells, measure } of rows) {
    expect(alike, measure.id).toBe(true);
    expect(cells.some(({ best }) => best)).toBe(false);
    expect(cells[1]?.change ?? 0).toBe(0);
    expect(cells[1]?.beyond ?? false).toBe(false);
  }
});

test('another baseline turns every difference round, and leaves what is best as it was', () => {
  const plan = boardPlan([
    [...onBoards('midrange', near), ...onBoards('tweeter', far)],
    [...onBoards('midrange', far, [0.3, 0.8]), ...onBoards('tweeter', near)],
  ]);
  const measured = measureOptions(stagesOf(plan));
  const trials = trialsOf(measured, 'seat');
  const [one, other] = [
    compareOptions(measured, 'a', trials),
    compareOptions(measured, 'b', trials),
  ];
  const turned = { better: 'worse', worse: 'better' } as Record<string, string>;
  let told = 0;
  one.forEach(({ cells: [a, b], measure }, i) => {
    const [c, d] = other[i]?.cells ?? [];
    expect(other[i]?.measure.id).toBe(measure.id);
    if (b?.change === null) return;
    told += 1;
    expect(c?.change, measure.id).toBe(b?.change === 0 ? 0 : -(b?.change ?? Number.NaN));
    expect(c?.against).toBe(turned[b?.against ?? ''] ?? b?.against);
    expect(c?.uncertainty).toEqual(b?.uncertainty);
    expect(c?.beyond).toBe(b?.beyond);
    expect([c?.best, d?.best]).toEqual([a?.best, b?.best]);
  });
  expect(told).toBeGreaterThan(10);
});

test('what differs by less than its last digit is as good', () => {
  const a = onBoards('midrange', near);
  const b = onBoards('midrange', [near[0], near[1] + 0.0002]);
  const { cells, alike } = row(rowsOf(boardPlan([a, b])), 'difference', 'seat', { who: MID });
  expect(Math.abs(cells[1]?.change ?? 0)).toBeGreaterThan(0);
  expect(Math.abs(cells[1]?.change ?? 0)).toBeLessThan(KINDS.difference.resolution / 2);
  expect(alike).toBe(true);
  expect(cells[1]?.against).toBe('alike');
});

test('nearer by less than it is uncertain is not called best', () => {
  const plan = boardPlan([
    onBoards('midrange', near),
    onBoards('midrange', [near[0] - 0.01, near[1]]),
  ]);
  const measured = measureOptions(stagesOf(plan));
  const before = row(compareOptions(measured, 'a', null), 'difference', 'seat', { who: MID });
  expect(before.cells.filter(({ best }) => best)).toHaveLength(1);
  const trials = trialsOf(measured, 'seat');
  const after = row(compareOptions(measured, 'a', trials), 'difference', 'seat', { who: MID });
  expect(after.cells[1]?.beyond).toBe(false);
  expect(after.cells.some(({ best }) => best)).toBe(false);
  expect(after.alike).toBe(false);
});
