import { describe, expect, it } from 'vitest';
import { readStepChoice as read, type StepChoice, startingChoice } from '../../src/exchange';

/** mm/ms. */
const SPEED = 343;
const readStepChoice = (choice: StepChoice) => read(choice, SPEED);

describe('the step a processor takes', () => {
  const start = startingChoice(48000);

  it('is one sample at the plan’s own rate to begin with', () => {
    expect(readStepChoice(start)).toEqual({ ok: true, step: { kind: 'samples', rateHz: 48000 } });
    expect(readStepChoice(startingChoice(50000))).toEqual({
      ok: true,
      step: { kind: 'samples', rateHz: 50000 },
    });
  });

  it('reads a typed rate in Hz or kHz', () => {
    const typed = { ...start, rate: 'other' as const, otherRate: '88,2 kHz' };
    expect(readStepChoice(typed)).toEqual({ ok: true, step: { kind: 'samples', rateHz: 88200 } });
  });

  it('reads steps in ms, mm, cm and inches with a decimal comma', () => {
    const amounts = { ms: '0,02', mm: '7,5', cm: '0,5', in: '0,25' };
    const step = (kind: 'ms' | 'mm' | 'cm' | 'in') => readStepChoice({ ...start, kind, amounts });
    expect(step('ms')).toEqual({ ok: true, step: { kind: 'time', ms: 0.02 } });
    expect(step('mm')).toEqual({ ok: true, step: { kind: 'length', mm: 7.5, unit: 'mm' } });
    expect(step('cm')).toEqual({ ok: true, step: { kind: 'length', mm: 5, unit: 'cm' } });
    expect(step('in')).toEqual({ ok: true, step: { kind: 'length', mm: 6.35, unit: 'in' } });
  });

  it('refuses a step of nothing and a limit below zero, and says which field is meant', () => {
    const nothing = readStepChoice({
      ...start,
      kind: 'ms',
      amounts: { ms: '0', mm: '1', cm: '1', in: '1' },
    });
    expect(nothing).toMatchObject({ ok: false, field: 'step' });
    const below = readStepChoice({ ...start, largest: '-1' });
    expect(below).toMatchObject({ ok: false, field: 'largest' });
    expect(readStepChoice({ ...start, largest: 'long' })).toMatchObject({ field: 'largest' });
  });

  const largest = (choice: Partial<StepChoice>) => {
    const answer = readStepChoice({ ...start, ...choice });
    return answer.ok ? answer.largestMs : answer.message;
  };

  it('takes the longest delay in the unit of its steps, and an empty field as no limit', () => {
    expect(largest({ largest: '480' })).toBe(10);
    expect(largest({ kind: 'ms', largest: '12,5' })).toBe(12.5);
    expect(largest({ kind: 'mm', largest: '3430' })).toBeCloseTo(10, 12);
    expect(largest({ kind: 'cm', largest: '343' })).toBeCloseTo(10, 12);
    expect(largest({ kind: 'in', largest: '100' })).toBeCloseTo(2540 / SPEED, 12);
    expect(largest({ largest: '  ' })).toBeUndefined();
  });

  it('takes it in another unit where that is written behind the number', () => {
    expect(largest({ largest: '12,5 ms' })).toBe(12.5);
    expect(largest({ largest: '480 samples' })).toBe(10);
    expect(largest({ kind: 'ms', largest: '343 cm' })).toBeCloseTo(10, 12);
    expect(largest({ kind: 'cm', largest: '135 in' })).toBeCloseTo((135 * 25.4) / SPEED, 12);
    expect(largest({ kind: 'cm', largest: '480 samples' })).toContain('whole samples');
  });
});
