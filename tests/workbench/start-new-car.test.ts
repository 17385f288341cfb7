import { describe, expect, it } from 'vitest';
import type { DimensionRank } from '../../src/geometry';
import { readPlan, writePlan } from '../../src/plan/schema';
import { planOf, withReferenceStage } from '../../src/workbench/start/new-car';
import { HOW_MANY, worthMeasuring } from '../../src/workbench/start/worth-measuring';

const car = { template: 'estate', wheelSide: 'right' as const, title: ' ', dimensions: {} };

describe('a new car', () => {
  it('begins as a plan that can be saved and read back', () => {
    const plan = planOf({ ...car, dimensions: { seatHeight: 265 } });
    const read = readPlan(writePlan(plan));
    if (!read.ok) throw new Error(read.error.message);
    expect(read.plan).toEqual(plan);
    expect(read.warnings).toEqual([]);
  });

  it('is named after its body style until it has a title of its own', () => {
    expect(planOf(car).title).toBe('Estate');
    expect(planOf({ ...car, title: ' Blue estate ' }).title).toBe('Blue estate');
  });

  it('is aligned for the seat with the steering wheel', () => {
    expect(planOf(car).alignment.seat).toBe('front-right');
    expect(planOf({ ...car, wheelSide: 'left' }).alignment.seat).toBe('front-left');
  });

  it('is tried with three pairs, and the plan itself stays empty', () => {
    const plan = planOf(car);
    const tried = withReferenceStage(plan);
    expect(tried.options[0]?.speakers.map(({ id }) => id)).toEqual([
      'tweeter-left',
      'tweeter-right',
      'midrange-left',
      'midrange-right',
      'midbass-left',
      'midbass-right',
    ]);
    expect(plan.options[0]?.speakers).toEqual([]);
  });
});

describe('the list of what to measure first', () => {
  const rank = (dimension: DimensionRank['dimension'], path: number, difference: number) =>
    ({
      dimension,
      measured: false,
      uncertainty: 30,
      path: { change: path, speaker: 's', seat: 'front-left' },
      difference: { change: difference, pair: 'p', seat: 'front-left' },
    }) satisfies DimensionRank;

  it('keeps the ranking’s order and leaves out what moves nothing', () => {
    const list = worthMeasuring([
      rank('seatReach', 28, 12),
      rank('cowlWidth', 3, 15),
      rank('consoleLength', 0, 0),
      rank('tailX', 0.2, 0.1),
    ]);
    expect(list.map(({ info }) => info.id)).toEqual(['seatReach', 'cowlWidth']);
  });

  it('is no longer than can be measured in one go', () => {
    const many = Array.from({ length: 30 }, () => rank('seatReach', 28, 12));
    expect(worthMeasuring(many)).toHaveLength(HOW_MANY);
  });
});
